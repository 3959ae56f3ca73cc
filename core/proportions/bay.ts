/** The bay that a room is searched in, and what is wrong with one. */

import { METRES_PER_INCH, roundLength, type LengthUnits } from '../quantity/length';
import { mapSides } from '../room/point';
import { SIZE_LIMITS_M } from '../room/limits';
import { type Bay, type Project, type ShellSize, SIDES } from '../room/project';

/** What a bay has where the person has not said otherwise, in whole centimetres or whole inches. */
interface BayDefaults {
  /** Limits are whole numbers of these, m. */
  readonly wholeM: number;
  /** How far linings may come in, m. */
  readonly comesInM: ShellSize;
  /** Carpenter's step of the search, m: 1 cm or 1/2 in. */
  readonly stepM: number;
}

const DEFAULTS: Readonly<Record<LengthUnits, BayDefaults>> = {
  metric: {
    wholeM: 0.01,
    comesInM: { width: 0.5, length: 0.8, height: 0.15 },
    stepM: 0.01,
  },
  imperial: {
    wholeM: METRES_PER_INCH,
    comesInM: {
      width: 20 * METRES_PER_INCH,
      length: 32 * METRES_PER_INCH,
      height: 6 * METRES_PER_INCH,
    },
    stepM: METRES_PER_INCH / 2,
  },
};

/** Least ceiling height of a habitable room, m: 7 ft (IRC R305.1). No lower than this without being asked. */
export const LEAST_CEILING_M = 2.1336;

/** The project's bay, or one in whole figures of `units` that lets the present room come in a little. */
export function bayOf(project: Project, units: LengthUnits = 'metric'): Bay {
  const { bay, size } = project.room;
  if (bay) return bay;
  const { wholeM, comesInM, stepM } = DEFAULTS[units];
  const least = mapSides(size, (present, side) => {
    const bare = Math.max(
      SIZE_LIMITS_M[side][0],
      side === 'height' ? LEAST_CEILING_M : 0,
      present - comesInM[side],
    );
    // Rounded up, for it may not be less; and no more than what is there.
    return Math.min(present, roundLength(Math.ceil(bare / wholeM - 1e-6) * wholeM));
  });
  return { largest: size, least, stepM, fixed: [], leastFloorM2: 0 };
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
