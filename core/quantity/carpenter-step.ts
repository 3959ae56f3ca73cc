/** The step that a carpenter measures in, and that every drag comes to rest on. */

import { METRES_PER_INCH, roundLength, type LengthUnits } from './length';

/** The carpenter's step that dragging and stepping snap to, m: 5 mm or 1/4 in. */
export function carpenterStepM(units: LengthUnits, fine = false): number {
  if (units === 'metric') return fine ? 0.001 : 0.005;
  return METRES_PER_INCH / (fine ? 16 : 4);
}

/** `lengthM` moved to the nearest step. Range: any finite length. */
export function snapLength(lengthM: number, stepM: number): number {
  return roundLength(Math.round(lengthM / stepM) * stepM);
}
