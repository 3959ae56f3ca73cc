/** How good a set of subwoofers is: the figures that are shown, and the one that ranks. */

import type { Drive } from '../response/drive';
import { levelSpread } from '../response/level-spread';
import type { Transfer } from './transfer';
import { practice } from '../room/practice/practice';

/** A subwoofer at a place of the transfer, and how it is driven. */
export interface Driven extends Partial<Drive> {
  /** Number of the place. */
  readonly place: number;
}

export interface SetMeasures {
  /** Mean over frequency of the variance of the level over seats, divisor N - 1; see `LevelSpread`. */
  readonly meanSpatialVarianceDb2: number;
  /** Standard deviation over frequency of the level averaged over the seats, dB. */
  readonly deviationDb: number;
  /**
   * Mean level over seats and frequencies, less that of one subwoofer of the set alone at 0 dB (mean
   * over the set), dB.
   */
  readonly outputDb: number;
  readonly costDb2: number;
}

/**
 * What a dB2 of variance over frequency of the average weighs against one of mean spatial variance: an
 * equaliser can mend the first and not the second.
 */
export const DEFAULT_WEIGHT = practice('bass-variance-weight');

/** Added to the squared pressure, so that what cancels to nothing is -300 dB and not endless. */
export const LEAST_SQUARE = 1e-30;

/** Level at each seat over the frequencies, dB re the free field of one source at 1 m. */
export function drivenLevels(transfer: Transfer, set: readonly Driven[]): readonly Float64Array[] {
  const { frequenciesHz, places, seats, re, im } = transfer;
  const drives = set.map(({ place, delayMs = 0, levelDb = 0, inverted = false }) => ({
    place,
    delayS: delayMs / 1000,
    gain: 10 ** (levelDb / 20) * (inverted ? -1 : 1),
  }));
  return Array.from({ length: seats }, (_, seat) =>
    frequenciesHz.map((hz, f) => {
      let [sumRe, sumIm] = [0, 0];
      for (const { place, delayS, gain } of drives) {
        const at = (f * places + place) * seats + seat;
        const phase = -2 * Math.PI * hz * delayS;
        const [c, s] = [gain * Math.cos(phase), gain * Math.sin(phase)];
        const [a, b] = [re[at] ?? NaN, im[at] ?? NaN];
        sumRe += a * c - b * s;
        sumIm += a * s + b * c;
      }
      return 10 * Math.log10(sumRe * sumRe + sumIm * sumIm + LEAST_SQUARE);
    }),
  );
}

/**
 * The measures of `set`; null without subwoofers or seats. The cost is the mean spatial variance and
 * `weight` times the variance over frequency (divisor: their number) of the average over the seats.
 * Source of the mean spatial variance: T. Welti, A. Devantier, JAES 54 (2006) 347.
 */
export function measureSet(
  transfer: Transfer,
  set: readonly Driven[],
  weight = DEFAULT_WEIGHT,
): SetMeasures | null {
  const spread = levelSpread(drivenLevels(transfer, set));
  if (!spread || set.length === 0) return null;
  const level = mean(spread.meanDb);
  const variance = mean(spread.meanDb.map((value) => (value - level) ** 2));
  const alone = set.map(({ place }) => meanLevels(transfer, [{ place }]));
  return {
    meanSpatialVarianceDb2: spread.meanSpatialVarianceDb2,
    deviationDb: Math.sqrt(variance),
    outputDb: level - mean(Float64Array.from(alone)),
    costDb2: spread.meanSpatialVarianceDb2 + weight * variance,
  };
}

/** Mean level over seats and frequencies, dB re the free field of one source at 1 m. */
export const meanLevels = (transfer: Transfer, set: readonly Driven[]): number =>
  mean(Float64Array.from(drivenLevels(transfer, set), mean));

const mean = (values: Float64Array): number =>
  values.reduce((sum, value) => sum + value, 0) / values.length;
