/** Names of the loudspeakers beside their marks, none over another name or another mark. */

import { spreadLabels, textWidthPx } from '../../kit/chart/spread-labels';

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
/** Reach of a letter over its base line, and of a mark from its middle, px. */
const LETTER_PX = 11;
const MARK_PX = 7;

/** Baselines of `names`, px, in their order; above its mark where no place between the edges is free. */
export function heardNames(
  names: readonly HeardName[],
  [topPx, bottomPx]: readonly [number, number],
): readonly number[] {
  const places = spreadLabels(
    names.map(({ text, x, y, below = false }) => ({
      width: textWidthPx(text) + 2,
      places: (below ? BELOW_FIRST_PX : BASELINES_PX).map((offset) => ({ x, y: y + offset })),
    })),
    {
      within: { left: -Infinity, right: Infinity, top: topPx - LETTER_PX, bottom: bottomPx },
      // No name reaches its own mark.
      avoid: names.map(({ x, y }) => ({
        left: x - MARK_PX,
        right: x + MARK_PX,
        top: y - MARK_PX,
        bottom: y + MARK_PX,
      })),
    },
  );
  return names.map(({ y }, n) => places[n]?.y ?? y - 12);
}
