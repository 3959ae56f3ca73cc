/** Lettering set in rows: each label in the first row in which it meets no other. */

export interface RowLabel {
  readonly text: string;
  /** Middle of the label, px. */
  readonly x: number;
}

export interface SetLabel {
  /** Middle of the label, moved to stay between the edges, px. */
  readonly x: number;
  /** Row from 0; null where none of them has a place for it. */
  readonly row: number | null;
}

/** Width of a character of chart lettering at 12 px, px: on the wide side. */
const CHARACTER_PX = 5.9;
const BETWEEN_PX = 7;

export const textWidthPx = (text: string): number => text.length * CHARACTER_PX;

/** Places for `labels` in up to `rows` rows between `leftX` and `rightX`; those first in the list go first. */
export function labelRows(
  labels: readonly RowLabel[],
  rows: number,
  [leftX, rightX]: readonly [number, number],
): readonly SetLabel[] {
  const taken = Array.from({ length: rows }, (): (readonly [number, number])[] => []);
  return labels.map(({ text, x: wantedX }) => {
    const half = textWidthPx(text) / 2;
    const x = Math.max(leftX + half, Math.min(rightX - half, wantedX));
    const [from, to] = [x - half - BETWEEN_PX / 2, x + half + BETWEEN_PX / 2];
    const row = taken.findIndex((spans) => spans.every(([a, b]) => to <= a || from >= b));
    if (row === -1) return { x, row: null };
    taken[row]?.push([from, to]);
    return { x, row };
  });
}
