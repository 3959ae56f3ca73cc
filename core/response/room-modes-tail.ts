/**
 * What the real room's modes above the last one add: they are far from resonance, but there is no
 * end of them.
 *
 * Lanczos from the source: with b the source's weights, freed of all modes in the sum, a few
 * steps of (A - s)^-1, s the factor's shift, give the best that can be said with as many unknowns
 * about how the rest of the room answers b: a handful of stand-in modes above the limit, with their
 * share at each receiver. The vectors are freed again after every step, so that rounding does not
 * bring back what was taken out.
 */

import type { Point } from '../room/project';
import { weightsAt } from '../room-modes/evaluate';
import type { Factor } from '../room-modes/factor';
import { largestLocal, solveFour } from '../room-modes/solve';
import type { RoomModes } from '../room-modes/room-modes';
import { smallEigen } from '../room-modes/small-eigen';
import type { SmallEigen } from '../room-modes/symmetric';
import { resonance, type Tail } from './path';

/** Stand-in modes for each source. */
const STEPS = 8;

/** Stand-in modes of one path: plain data that can go between threads. */
export interface StandIns {
  readonly frequenciesHz: Float64Array;
  /** Shape at the source times shape at the receiver, the integral of each square being 1; 1/m3. */
  readonly products: Float64Array;
  readonly speedMS: number;
}

/**
 * Stand-in modes from each source to each receiver, `[source][receiver]`; null where the factor was not kept
 * or a place is not in the free space. Yields the share done.
 */
export function* roomModesTails(
  modes: RoomModes,
  sources: readonly Point[],
  receivers: readonly Point[],
): Generator<number, readonly (readonly (StandIns | null)[])[]> {
  const { factor, mass, speedMS } = modes;
  const at = sources.map((source) => weightsAt(modes, source));
  const to = receivers.map((receiver) => weightsAt(modes, receiver));
  const none = sources.map(() => receivers.map(() => null));
  if (!factor) return none;
  const tails: (readonly (StandIns | null)[])[] = [];
  for (let first = 0; first < sources.length; first += 4) {
    const block = new Float64Array(4 * factor.count);
    for (let n = 0; n < 4; n++) {
      at[first + n]?.rows.forEach((row, i) => {
        const weight = at[first + n]?.weights[i] ?? 0;
        block[4 * row + n] = block[4 * row + n]! + weight / Math.sqrt(mass[row]!);
      });
    }
    const runs = yield* fourRuns(modes, factor, block);
    for (const [n, run] of runs.slice(0, sources.length - first).entries()) {
      const small = smallEigen(run.matrix, STEPS);
      tails.push(
        to.map((receiver) => {
          if (!receiver || !at[first + n]) return null;
          const shares = run.vectors.map((vector) =>
            receiver.rows.reduce(
              (sum, row, i) => sum + (receiver.weights[i]! / Math.sqrt(mass[row]!)) * vector[row]!,
              0,
            ),
          );
          return standIns(small, run.norm, shares, factor.shift, speedMS);
        }),
      );
    }
    yield Math.min(1, (first + 4) / sources.length);
  }
  return tails;
}

/** Lanczos from one vector. */
interface Run {
  readonly vectors: readonly Float64Array[];
  /** STEPS x STEPS. */
  readonly matrix: Float64Array;
  readonly norm: number;
}

/** Four runs side by side, one to a lane of the block. */
function* fourRuns(
  modes: RoomModes,
  factor: Factor,
  block: Float64Array,
): Generator<number, readonly Run[]> {
  const local = new Float64Array(4 * largestLocal(factor) + 8);
  const lane = (n: number): Float64Array =>
    Float64Array.from({ length: factor.count }, (_, row) => block[4 * row + n]!);
  const dot = (a: Float64Array, b: Float64Array): number =>
    a.reduce((sum, value, i) => sum + value * b[i]!, 0);
  free(modes, block);
  const runs = [0, 1, 2, 3].map((n) => {
    const start = lane(n);
    const norm = Math.sqrt(dot(start, start));
    return {
      vectors: [start.map((value) => value / (norm || 1))],
      matrix: new Float64Array(STEPS ** 2),
      norm,
    };
  });
  for (let step = 0; step < STEPS; step++) {
    runs.forEach(({ vectors }, n) => {
      vectors[step]?.forEach((value, row) => (block[4 * row + n] = value));
    });
    solveFour(factor, block, local);
    free(modes, block);
    runs.forEach(({ vectors, matrix }, n) => {
      const next = lane(n);
      for (let b = step; b >= 0; b--) {
        const known = vectors[b];
        if (!known) continue;
        const part = dot(known, next);
        if (b >= step - 1) matrix[b * STEPS + step] = matrix[step * STEPS + b] = part;
        known.forEach((value, row) => (next[row] = next[row]! - part * value));
      }
      const norm = Math.sqrt(dot(next, next));
      if (step + 1 < STEPS) vectors.push(next.map((value) => value / (norm || 1)));
    });
    yield step / STEPS;
  }
  return runs;
}

/** Eigenvalue s + 1/theta, and what source and receiver have of each vector. */
function standIns(
  { values, rows }: SmallEigen,
  norm: number,
  shares: readonly number[],
  shift: number,
  speedMS: number,
): StandIns {
  const least = 1e-12 * Math.max(...values);
  const kept = [...values.keys()].filter((n) => values[n]! > least);
  const toHz = speedMS / (2 * Math.PI);
  return {
    frequenciesHz: Float64Array.from(kept, (n) => toHz * Math.sqrt(shift + 1 / values[n]!)),
    products: Float64Array.from(kept, (n) => {
      const share = shares.reduce((sum, value, i) => sum + value * rows[i * STEPS + n]!, 0);
      return share * rows[n]! * norm;
    }),
    speedMS,
  };
}

/** The stand-in modes as a sum of resonances. */
export function tailOf({ frequenciesHz, products, speedMS }: StandIns): Tail {
  return (frequencyHz, damping) => {
    let [re, im] = [0, 0];
    products.forEach((product, n) => {
      const term = resonance(frequenciesHz[n]!, frequencyHz, damping, speedMS);
      re += product * term[0];
      im += product * term[1];
    });
    return { re, im };
  };
}

/** Take all modes, the one at zero too, out of four vectors (in mass-scaled values). */
function free({ shapes, mass, volumeM3, frequenciesHz }: RoomModes, block: Float64Array): void {
  const count = frequenciesHz.length;
  const parts = new Float64Array(4 * (count + 1));
  mass.forEach((m, row) => {
    const root = Math.sqrt(m / volumeM3);
    for (let n = 0; n < 4; n++) {
      const value = root * block[4 * row + n]!;
      const to = n * (count + 1);
      parts[to + count] = parts[to + count]! + value;
      for (let k = 0; k < count; k++)
        parts[to + k] = parts[to + k]! + value * shapes[row * count + k]!;
    }
  });
  mass.forEach((m, row) => {
    const root = Math.sqrt(m / volumeM3);
    for (let n = 0; n < 4; n++) {
      const from = n * (count + 1);
      let sum = parts[from + count]!;
      for (let k = 0; k < count; k++) sum += parts[from + k]! * shapes[row * count + k]!;
      block[4 * row + n] = block[4 * row + n]! - root * sum;
    }
  });
}
