/** A small search: the one side to bring in so that the axial modes follow each other more evenly. */

import {
  axialModesOf,
  axialSpacing,
  rising,
  CLOSEST_AXIAL_HZ,
  LISTED_TO_HZ,
  WIDEST_AXIAL_GAP_HZ,
  type AxialSpacing,
} from '../modes/axial-spacing';
import type { ShellMode } from '../modes/shell-modes';
import { LEAST_CEILING_M } from '../proportions/bay';
import { roundLength } from '../quantity/length';
import type { Bay, ShellSize, Side } from '../room/project';
import { SIDES } from '../room/project';

/** How far inward a remedy looks, m: what is bought with lining, not digging. */
export const LOOK_INWARD_M = 0.4;
/** Unevenness in Hz that a metre of room is worth, so that near ties go to the larger room. */
const WORTH_HZ_PER_M = 5;
/** A remedy must take away at least this share of the unevenness. */
const WORTHWHILE = 0.2;

/** What is too far apart or too close, in hertz summed: 0 is an even row of modes. */
function unevennessHz(spacing: AxialSpacing, belowHz: number): number {
  const gaps = spacing.gaps
    .filter((gap) => gap.fromHz < belowHz)
    .reduce((sum, gap) => sum + gap.widthHz - WIDEST_AXIAL_GAP_HZ, 0);
  const pileUps = spacing.pileUps
    .filter((pileUp) => pileUp.lowHz < belowHz)
    .reduce((sum, pileUp) => {
      const steps = pileUp.modes.slice(1).map((mode, i) => {
        const before = pileUp.modes[i]?.frequencyHz ?? 0;
        return CLOSEST_AXIAL_HZ - (mode.frequencyHz - before);
      });
      return sum + steps.reduce((a, b) => a + b, 0);
    }, 0);
  return gaps + pileUps;
}

/**
 * The one side to bring in, and by how much, that evens out the axial modes most. Sizes tried are whole
 * multiples of `stepM`, so that they can be read on a tape. Null where none is worth it.
 */
export function nearestEvenerSize(
  size: ShellSize,
  speedMS: number,
  belowHz: number,
  stepM: number,
  bay: Bay,
): { readonly side: Side; readonly size: ShellSize } | null {
  const score = (modes: readonly ShellMode[]): number =>
    unevennessHz(axialSpacing(rising(modes), LISTED_TO_HZ), belowHz);
  const modesOf = (side: Side, lengthM = size[side]): readonly ShellMode[] =>
    axialModesOf(side, lengthM, speedMS);
  const now = score(SIDES.flatMap((side) => modesOf(side)));
  let best = { score: now * (1 - WORTHWHILE), side: null as Side | null, size };
  for (const side of ['length', 'width', 'height'] as const) {
    if (bay.fixed.includes(side)) continue;
    // What the other two sides bring stays; sorted already, one more side is merged in quickly.
    const others = rising(
      SIDES.filter((other) => other !== side).flatMap((other) => modesOf(other)),
    );
    const least = Math.max(bay.least[side], side === 'height' ? LEAST_CEILING_M : 0);
    for (let n = Math.ceil(size[side] / stepM - 1e-6) - 1; ; n--) {
      const value = roundLength(n * stepM);
      if (value < Math.max(least, size[side] - LOOK_INWARD_M)) break;
      // No unevenness is below 0, so a smaller room can only be worth less.
      if ((size[side] - value) * WORTH_HZ_PER_M >= best.score) break;
      const found =
        score([...others, ...modesOf(side, value)]) + (size[side] - value) * WORTH_HZ_PER_M;
      if (found < best.score) best = { score: found, side, size: { ...size, [side]: value } };
    }
  }
  return best.side === null ? null : { side: best.side, size: best.size };
}
