/** The bay that a room is searched in, and what is wrong with one. */

import { roundLength } from '../quantity/length';
import { SIZE_LIMITS_M, type Bay, type Project, type ShellSize } from '../room/project';

const SIDES = ['width', 'length', 'height'] as const;

/** How far linings may come in where the person has not said otherwise, m. */
const COMES_IN_M: ShellSize = { width: 0.5, length: 0.8, height: 0.15 };
/** No lower than this without being asked: 7 ft, IRC R305.1, m. */
const LEAST_HEIGHT_M = 2.134;

/** The project's bay, or one that lets the present room come in a little. */
export function bayOf(project: Project): Bay {
  const { bay, size } = project.room;
  if (bay) return bay;
  const least = Object.fromEntries(
    SIDES.map((side) => {
      const low = Math.max(
        SIZE_LIMITS_M[side][0],
        side === 'height' ? Math.min(LEAST_HEIGHT_M, size.height) : 0,
        size[side] - COMES_IN_M[side],
      );
      return [side, roundLength(low)];
    }),
  ) as unknown as ShellSize;
  return { largest: size, least, stepM: 0.01, fixed: [], leastFloorM2: 0 };
}

/** The size with each side that may move brought within the bay; the same object where it fits already. */
export function withinBay(size: ShellSize, bay: Bay): ShellSize {
  const fitted = Object.fromEntries(
    SIDES.map((side) => {
      const fitted = Math.min(Math.max(size[side], bay.least[side]), bay.largest[side]);
      return [side, bay.fixed.includes(side) ? size[side] : fitted];
    }),
  ) as unknown as ShellSize;
  return SIDES.every((side) => fitted[side] === size[side]) ? size : fitted;
}
