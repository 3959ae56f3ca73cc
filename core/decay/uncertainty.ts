/** What the coefficients themselves are worth: their error carried through to the time. */

import type { OctaveHz } from '../quantity/bands';
import { eyringS, type DecayInput } from './reverberation';

export const COEFFICIENT_SOURCE =
  'ISO 12999-2:2020, expanded uncertainty (k = 2, 95 %) of reverberation-room coefficients, typical values in a transcription';

/** Expanded uncertainty of one coefficient: 0.33 at 63 Hz, 0.17 at 125 Hz, about 0.1 above. */
export function coefficientUncertainty(bandHz: OctaveHz): number {
  return bandHz < 125 ? 0.33 : bandHz < 250 ? 0.17 : 0.1;
}

/**
 * The standard's error falls with the coefficient, and its typical values are those of absorbers: of a
 * hard face no more than this share of its coefficient is taken. Own choice: printed tables of hard
 * faces part by about a factor of two.
 */
export const MOST_OF_COEFFICIENT = 0.5;

/**
 * Shortest and longest Eyring time in s from the error of the coefficients at about 95 %: errors of
 * different finishes are independent and add by squares, that of one finish is the same wherever it is.
 */
export function coefficientBandS(
  input: DecayInput,
  surfaces: readonly {
    readonly finish: string;
    readonly areaM2: number;
    readonly coefficient: number;
  }[],
  bandHz: OctaveHz,
): readonly [number, number] {
  const typical = coefficientUncertainty(bandHz);
  const byFinish = new Map<string, number>();
  for (const { finish, areaM2, coefficient } of surfaces) {
    const error = areaM2 * Math.min(typical, MOST_OF_COEFFICIENT * coefficient);
    byFinish.set(finish, (byFinish.get(finish) ?? 0) + error);
  }
  const errorM2 = Math.hypot(...byFinish.values());
  const at = (absorptionM2: number): number => eyringS({ ...input, absorptionM2 });
  return [at(input.absorptionM2 + errorM2), at(Math.max(0, input.absorptionM2 - errorM2))];
}
