/** The lines of a hatch: parallel, rising to the right, cut to a rectangle. */

import type { PaperPoint, PaperRect } from './marks';
import { practice } from '../room/practice/practice';

/** Distance of the lines from each other, m. */
export const HATCH_M = practice('hatch-distance');
/** A large surface gets no more lines than this. */
const MOST_LINES = 600;

/** Lines at 45 degrees through fixed places of the paper, so that neighbours are hatched alike. */
export function hatchLines({
  min,
  max,
}: PaperRect): readonly (readonly [PaperPoint, PaperPoint])[] {
  // The line y = x + c meets the rectangle for c between these.
  const [least, most] = [min[1] - max[0], max[1] - min[0]];
  const stepM = Math.max(HATCH_M * Math.SQRT2, (most - least) / MOST_LINES);
  const lines: (readonly [PaperPoint, PaperPoint])[] = [];
  for (let n = Math.ceil(least / stepM); n * stepM <= most; n++) {
    const c = n * stepM;
    const from = Math.max(min[0], min[1] - c);
    const to = Math.min(max[0], max[1] - c);
    if (to - from > 1e-6) {
      lines.push([
        [from, from + c],
        [to, to + c],
      ]);
    }
  }
  return lines;
}
