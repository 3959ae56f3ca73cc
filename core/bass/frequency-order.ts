/**
 * In which order a search looks at the frequencies: first those that together rule out most of a sample
 * of sets. Any order gives the same answer; a good one gives it sooner.
 */

import { drivenLevels, type Driven } from './measure';
import type { Transfer } from './transfer';

/** Sets in the sample. */
const SAMPLE = 160;

/** Sets of the sample between two reports. */
const PER_SLICE = 20;

/**
 * Numbers of the transfer's frequencies for sets of `count` of the first `candidates` places. Yields
 * the share done.
 */
export function* frequencyOrder(
  transfer: Transfer,
  candidates: number,
  count: number,
  weight: number,
): Generator<number, Int32Array> {
  const frequencies = transfer.frequenciesHz.length;
  // What each frequency adds to the cost of each set of the sample.
  const parts: Float64Array[] = [];
  const wholes: number[] = [];
  const draw = numbers(candidates);
  for (let n = 0; n < SAMPLE; n++) {
    const set = Array.from({ length: count }, (): Driven => ({ place: draw() }));
    const part = partsOf(transfer, set, weight);
    parts.push(part);
    wholes.push(part.reduce((sum, value) => sum + value, 0));
    if (n % PER_SLICE === PER_SLICE - 1) yield n / SAMPLE;
  }
  // A set counts as ruled out at the cost of the sample's best.
  const enough = Math.min(...wholes);
  const reached = new Float64Array(SAMPLE);
  const order = new Int32Array(frequencies);
  const taken = new Uint8Array(frequencies);
  for (let k = 0; k < frequencies; k++) {
    let [best, most] = [-1, -1];
    for (let f = 0; f < frequencies; f++) {
      if (taken[f]) continue;
      let gain = 0;
      for (let n = 0; n < SAMPLE; n++) {
        const before = reached[n]!;
        if (before < enough) gain += Math.min(enough, before + (parts[n]?.[f] ?? 0)) - before;
      }
      if (gain > most) [best, most] = [f, gain];
    }
    order[k] = best;
    taken[best] = 1;
    for (let n = 0; n < SAMPLE; n++) reached[n] = reached[n]! + (parts[n]?.[best] ?? 0);
  }
  return order;
}

/** Variance over the seats and weighted square of the average about its mean, at each frequency. */
function partsOf(transfer: Transfer, set: readonly Driven[], weight: number): Float64Array {
  const levels = drivenLevels(transfer, set);
  const seats = levels.length;
  const averages = transfer.frequenciesHz.map(
    (_, f) => levels.reduce((sum, level) => sum + level[f]!, 0) / seats,
  );
  const mean = averages.reduce((sum, value) => sum + value, 0) / averages.length;
  return averages.map((average, f) => {
    const squares = levels.reduce((sum, level) => sum + (level[f]! - average) ** 2, 0);
    return (seats > 1 ? squares / (seats - 1) : 0) + weight * (average - mean) ** 2;
  });
}

/** Whole numbers from 0, the same ones every time. Source: Knuth, Seminumerical Algorithms, 3.3 (from memory). */
function numbers(below: number): () => number {
  let state = 12345;
  return () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return Math.floor((state / 2 ** 32) * below);
  };
}
