/**
 * Lettering of a chart, spread so that none meets another: each label takes the best of its places that
 * is free, those first in the list first.
 */

export interface LabelPlace {
  /** Where its anchor stands, px. */
  readonly x: number;
  /** Its base line, px; y grows downward. */
  readonly y: number;
  /** Part of the label that stands at x; its middle where it is left out. */
  readonly anchor?: 'start' | 'middle' | 'end';
}

export interface LabelToSpread {
  /** Px. */
  readonly width: number;
  /** Places for it, the best first. */
  readonly places: readonly LabelPlace[];
}

export interface Box {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

export interface SpreadOptions {
  /** No label leaves it: sideways a label is moved to stay within, up and down it takes another place. */
  readonly within: Box;
  /** What no label may cover. */
  readonly avoid?: readonly Box[];
  /** Least distance of two labels in one row, px. */
  readonly gap?: number;
}

/** Of chart lettering at 12 px, over and under its base line, px. */
const ASCENT_PX = 11;
const DESCENT_PX = 1;
/** Width of a character of it, px: on the wide side. */
const CHARACTER_PX = 5.9;

export const textWidthPx = (text: string): number => text.length * CHARACTER_PX;

/** One place a row for a label whose middle should stand at `x`. */
export const inRows = (x: number, baselines: readonly number[]): readonly LabelPlace[] =>
  baselines.map((y) => ({ x, y }));

/** What a label of `width` covers at a place. */
export function labelBox({ x, y, anchor = 'middle' }: LabelPlace, width: number): Box {
  const left = anchor === 'start' ? x : anchor === 'end' ? x - width : x - width / 2;
  return { left, right: left + width, top: y - ASCENT_PX, bottom: y + DESCENT_PX };
}

export const boxesMeet = (a: Box, b: Box): boolean =>
  a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;

/** A place for each label, in the order of the list; null for one that has none. */
export function spreadLabels(
  labels: readonly LabelToSpread[],
  { within, avoid = [], gap = 0 }: SpreadOptions,
): readonly (LabelPlace | null)[] {
  const covered: Box[] = [...avoid];
  return labels.map(({ width, places }) => {
    for (const wanted of places) {
      const place = movedInside(wanted, width, within);
      if (!place) continue;
      const box = labelBox(place, width);
      if (covered.some((other) => boxesMeet(box, other))) continue;
      covered.push({ ...box, left: box.left - gap, right: box.right + gap });
      return place;
    }
    return null;
  });
}

function movedInside(place: LabelPlace, width: number, within: Box): LabelPlace | null {
  const { left, right, top, bottom } = labelBox(place, width);
  if (top < within.top || bottom > within.bottom || width > within.right - within.left) return null;
  const by = Math.max(within.left - left, Math.min(0, within.right - right));
  return by === 0 ? place : { ...place, x: place.x + by };
}
