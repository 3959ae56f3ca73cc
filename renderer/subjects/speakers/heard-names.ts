/** Names of the loudspeakers beside their marks, none over another name or another mark. */

import { textWidthPx } from '../../kit/chart/label-rows';

export interface HeardName {
  readonly text: string;
  /** Middle of the mark, px; y grows downward. */
  readonly x: number;
  readonly y: number;
  /** Its window lies above it: the name goes below first. */
  readonly below?: boolean;
}

/** From the middle of the mark to the baseline of its name, px: nearest above first. */
const BASELINES_PX = [-12, 20, -25, 33];
const BELOW_FIRST_PX = [20, -12, 33, -25];
const LETTER_PX = 11;
const MARK_PX = 7;

interface Box {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

const boxAround = (x: number, top: number, bottom: number, half: number): Box => ({
  left: x - half,
  right: x + half,
  top,
  bottom,
});

const overlap = (a: Box, b: Box): boolean =>
  a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;

/** Baselines of `names`, px, in their order; above its mark where no place between the edges is free. */
export function heardNames(
  names: readonly HeardName[],
  [topPx, bottomPx]: readonly [number, number],
): readonly number[] {
  const marks = names.map(({ x, y }) => boxAround(x, y - MARK_PX, y + MARK_PX, MARK_PX));
  const taken: Box[] = [];
  return names.map(({ text, x, y, below = false }, n) => {
    const boxAt = (baseline: number): Box =>
      boxAround(x, baseline - LETTER_PX, baseline + 1, textWidthPx(text) / 2 + 1);
    const places = (below ? BELOW_FIRST_PX : BASELINES_PX).map((offset) => y + offset);
    const free = places.find((baseline) => {
      const box = boxAt(baseline);
      return (
        box.top >= topPx - LETTER_PX &&
        box.bottom <= bottomPx &&
        !taken.some((other) => overlap(box, other)) &&
        !marks.some((mark, other) => other !== n && overlap(box, mark))
      );
    });
    const baseline = free ?? y - 12;
    taken.push(boxAt(baseline));
    return baseline;
  });
}
