/** What the bass at the seats is judged by: how much seats differ, and the worst peak and dip at one. */

import { levelSpread } from '../response/level-spread';
import type { Band } from './transfer';

/** A frequency and the level there over the mean of the band, dB. */
export interface Extreme {
  readonly frequencyHz: number;
  readonly levelDb: number;
}

export interface SeatFigures {
  readonly bandHz: Band;
  /** Seats that hear something. */
  readonly seats: number;
  /** Root of the mean spatial variance, dB: how far the level at a seat is from that of the others. */
  readonly spreadDb: number;
  readonly meanSpatialVarianceDb2: number;
  /** At the reference seat, smoothed over a third of an octave; null where nothing is heard there. */
  readonly peak: Extreme | null;
  readonly dip: Extreme | null;
}

/** Half of a third of an octave: the smoothing reaches as far to either side. */
const HALF_WINDOW_OCTAVES = 1 / 6;

/**
 * Figures of the levels of each seat over `frequenciesHz` (rising, dB), and of those at the reference
 * place, null where nothing is heard there. Null without seats.
 */
export function seatFigures(
  frequenciesHz: Float64Array,
  levelsDb: readonly Float64Array[],
  referenceDb: Float64Array | null,
): SeatFigures | null {
  const spread = levelSpread(levelsDb);
  const [lowHz, highHz] = [frequenciesHz[0], frequenciesHz.at(-1)];
  if (!spread || lowHz === undefined || highHz === undefined) return null;
  return {
    bandHz: [lowHz, highHz],
    seats: levelsDb.length,
    spreadDb: Math.sqrt(spread.meanSpatialVarianceDb2),
    meanSpatialVarianceDb2: spread.meanSpatialVarianceDb2,
    ...(referenceDb ? extremesOf(frequenciesHz, referenceDb) : { peak: null, dip: null }),
  };
}

/** The smoothed level's highest and lowest point over its mean. */
function extremesOf(
  frequenciesHz: Float64Array,
  levelsDb: Float64Array,
): { readonly peak: Extreme; readonly dip: Extreme } {
  const smooth = smoothed(frequenciesHz, levelsDb);
  const mean = smooth.reduce((sum, level) => sum + level, 0) / smooth.length;
  let [high, low] = [0, 0];
  smooth.forEach((level, f) => {
    if (level > (smooth[high] ?? NaN)) high = f;
    if (level < (smooth[low] ?? NaN)) low = f;
  });
  const at = (f: number): Extreme => ({
    frequencyHz: frequenciesHz[f] ?? NaN,
    levelDb: (smooth[f] ?? NaN) - mean,
  });
  return { peak: at(high), dip: at(low) };
}

/** Level of the mean squared pressure over a third of an octave around each frequency, dB. */
export function smoothed(frequenciesHz: Float64Array, levelsDb: Float64Array): Float64Array {
  const reach = 2 ** HALF_WINDOW_OCTAVES * (1 + 1e-9);
  const squares = levelsDb.map((level) => 10 ** (level / 10));
  return frequenciesHz.map((hz) => {
    let [sum, count] = [0, 0];
    frequenciesHz.forEach((other, f) => {
      if (other > hz * reach || other * reach < hz) return;
      sum += squares[f] ?? 0;
      count += 1;
    });
    return 10 * Math.log10(sum / count);
  });
}
