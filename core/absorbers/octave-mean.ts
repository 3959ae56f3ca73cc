/**
 * Mean of a coefficient over an octave. A cavity without fill has resonances that are much narrower
 * than the steps of the curve, so the mean takes more points where they change it.
 */

import { exactOctaveHz, type OctaveHz } from '../quantity/bands';

/** Points that every octave is given; an octave of a cavity without fill is given thrice as many. */
export const LEAST_POINTS = 27;

/** No more than this many points are spent on an octave. */
const MOST_POINTS = 729;

/** Two sets of points agree where their means are this near to each other. */
const AGREE = 0.002;

/**
 * Mean of `coefficientAt(hz)` over the octave `octave`, evenly over the logarithm of frequency, from
 * `least` points or more (27, 81 or 243). `known` are its values at the middles of equal parts of the
 * octave, 9 of them. Each next set has thrice the points, among them those of the set before, and the
 * last two sets agree within 0.002 unless even the largest set is not enough.
 */
export function octaveMean(
  octave: OctaveHz,
  known: readonly number[],
  coefficientAt: (hz: number) => number,
  least: number = LEAST_POINTS,
): number {
  const middleHz = exactOctaveHz(octave);
  let count = known.length;
  let sum = known.reduce((total, value) => total + value, 0);
  let mean = sum / count;
  while (count < MOST_POINTS) {
    count *= 3;
    for (let i = 0; i < count; i++) {
      // Every third point was in the set before.
      if (i % 3 === 1) continue;
      sum += coefficientAt(middleHz * 10 ** (0.3 * ((i + 0.5) / count - 0.5)));
    }
    const change = Math.abs(sum / count - mean);
    mean = sum / count;
    if (count >= least && change < AGREE) break;
  }
  return mean;
}
