/** Places on a carpenter's step, measured from the nearer wall: both halves of a room alike. */

import { snapLength } from '../quantity/carpenter-step';
import { roundLength } from '../quantity/length';

/** Lengths are kept to a hundredth of a millimetre: closer ones are the same, m. */
const DUST_M = 1.5e-5;

/**
 * A coordinate on the step by its distance from the nearer of 0 and `endM`, the end having moved to
 * `movedEndM`; the middle stays the middle. It never falls where the old one rises, and equal ones stay
 * equal: what touches keeps touching.
 */
export function fromNearerEnd(
  placeM: number,
  endM: number,
  movedEndM: number,
  stepM: number,
): number {
  const middleM = roundLength(movedEndM / 2);
  const fromEndM = endM - placeM;
  if (Math.abs(placeM - fromEndM) < DUST_M) return middleM;
  return placeM < fromEndM
    ? Math.min(snapLength(placeM, stepM), middleM)
    : roundLength(Math.max(movedEndM - snapLength(fromEndM, stepM), middleM));
}
