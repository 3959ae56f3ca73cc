/** The bay that a room is searched in, and what is wrong with one. */

import { roundLength } from '../quantity/length';
import { mapSides } from '../room/point';
import { type Bay, type Project, type ShellSize, SIDES, SIZE_LIMITS_M } from '../room/project';

/** How far linings may come in where the person has not said otherwise, m. */
const COMES_IN_M: ShellSize = { width: 0.5, length: 0.8, height: 0.15 };
/** Least ceiling height of a habitable room, m: 7 ft (IRC R305.1). No lower than this without being asked. */
export const LEAST_CEILING_M = 2.134;

/** The project's bay, or one that lets the present room come in a little. */
export function bayOf(project: Project): Bay {
  const { bay, size } = project.room;
  if (bay) return bay;
  const least = mapSides(size, (present, side) =>
    roundLength(
      Math.max(
        SIZE_LIMITS_M[side][0],
        side === 'height' ? Math.min(LEAST_CEILING_M, size.height) : 0,
        present - COMES_IN_M[side],
      ),
    ),
  );
  return { largest: size, least, stepM: 0.01, fixed: [], leastFloorM2: 0 };
}

/** The size with each side that may move brought within the bay; the same object where it fits already. */
export function withinBay(size: ShellSize, bay: Bay): ShellSize {
  const fitted = mapSides(size, (present, side) =>
    bay.fixed.includes(side)
      ? present
      : Math.min(Math.max(present, bay.least[side]), bay.largest[side]),
  );
  return SIDES.every((side) => fitted[side] === size[side]) ? size : fitted;
}
