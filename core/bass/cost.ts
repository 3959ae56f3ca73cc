/**
 * The cost of `measure.ts`, made to be computed for a million sets: over the frequencies in an order of
 * one's choice, given up as soon as it exceeds a limit. In natural logarithms of the squared pressure,
 * times the number of frequencies: all parts are then plain sums.
 *
 * Every frequency adds something that is not negative: the variance over the seats, and (Welford) what
 * the sum of squares of the average about its own mean grows by. So the part over some of the
 * frequencies never exceeds the whole.
 */

import { expectLength } from '../quantity/shape';
import { LEAST_SQUARE } from './measure';
import { quickLog } from './quick-log';
import type { Transfer } from './transfer';

/** A transfer with its frequencies put in order. */
export interface CostSpace {
  readonly frequenciesHz: Float64Array;
  readonly places: number;
  readonly seats: number;
  readonly weight: number;
  /** [frequency][place][seat]. */
  readonly re: Float64Array;
  readonly im: Float64Array;
}

/** Summed pressure of some subwoofers, [frequency][seat] in the order of the space. */
export interface Sums {
  readonly re: Float64Array;
  readonly im: Float64Array;
}

const DB_PER_LN = 10 / Math.LN10;

/** dB2 of one unit of the sum that `sumCost` gives. */
export const unitDb2 = ({ frequenciesHz }: CostSpace): number =>
  DB_PER_LN ** 2 / frequenciesHz.length;

/** `order`: numbers of the transfer's frequencies; as they are where it is not given. */
export function costSpace(transfer: Transfer, weight: number, order?: Int32Array): CostSpace {
  const { places, seats } = transfer;
  const block = places * seats;
  expectLength('The real part of the transfer', transfer.re, transfer.frequenciesHz.length * block);
  expectLength('The imaginary part', transfer.im, transfer.frequenciesHz.length * block);
  const taken = order ?? Int32Array.from(transfer.frequenciesHz.keys());
  const frequenciesHz = Float64Array.from(taken, (f) => transfer.frequenciesHz[f]!);
  const re = new Float64Array(taken.length * block);
  const im = new Float64Array(taken.length * block);
  taken.forEach((f, k) => {
    re.set(transfer.re.subarray(f * block, (f + 1) * block), k * block);
    im.set(transfer.im.subarray(f * block, (f + 1) * block), k * block);
  });
  return { frequenciesHz, places, seats, weight, re, im };
}

/** Sums of nothing yet. */
export function noSums({ frequenciesHz, seats }: CostSpace): Sums {
  const size = frequenciesHz.length * seats;
  return { re: new Float64Array(size), im: new Float64Array(size) };
}

function expectSums({ frequenciesHz, places, seats }: CostSpace, sums: Sums, place: number): void {
  if (place >= places) throw new Error(`There is no place ${place} among ${places}.`);
  expectLength('The real part of the sums', sums.re, frequenciesHz.length * seats);
  expectLength('The imaginary part of the sums', sums.im, frequenciesHz.length * seats);
}

/** `into` becomes `from` and the subwoofer at `place`. */
export function addPlace(space: CostSpace, from: Sums, place: number, into: Sums): void {
  const { places, seats, re, im } = space;
  const step = (places - 1) * seats;
  const count = from.re.length;
  expectSums(space, from, place);
  expectSums(space, into, place);
  for (let at = 0, k = place * seats; at < count; k += step) {
    for (let s = 0; s < seats; s++, at++, k++) {
      into.re[at] = from.re[at]! + re[k]!;
      into.im[at] = from.im[at]! + im[k]!;
    }
  }
}

/** `into` becomes `from` times `gain`, `delayMs` later. */
export function turn(
  space: CostSpace,
  from: Sums,
  gain: number,
  delayMs: number,
  into: Sums,
): void {
  const { frequenciesHz, seats } = space;
  expectSums(space, from, 0);
  expectSums(space, into, 0);
  for (let f = 0, at = 0; f < frequenciesHz.length; f++) {
    const phase = (-2 * Math.PI * frequenciesHz[f]! * delayMs) / 1000;
    const [c, d] = [gain * Math.cos(phase), gain * Math.sin(phase)];
    for (let s = 0; s < seats; s++, at++) {
      const [a, b] = [from.re[at]!, from.im[at]!];
      into.re[at] = a * c - b * d;
      into.im[at] = a * d + b * c;
    }
  }
}

/**
 * Cost of `sums` with the subwoofer at `place` added, in units of `unitDb2`; once it exceeds `limit`,
 * some smaller figure that exceeds it too.
 */
export function sumCost(space: CostSpace, sums: Sums, place: number, limit: number): number {
  const { places, seats, weight, re, im } = space;
  const { re: sumsRe, im: sumsIm } = sums;
  const frequencies = space.frequenciesHz.length;
  expectSums(space, sums, place);
  const perSeat = seats > 1 ? 1 / (seats - 1) : 0;
  const step = (places - 1) * seats;
  let total = 0;
  let mean = 0;
  for (let f = 0, at = 0, k = place * seats; f < frequencies; f++, k += step) {
    let sum = 0;
    let squares = 0;
    for (let s = 0; s < seats; s++, at++, k++) {
      const a = sumsRe[at]! + re[k]!;
      const b = sumsIm[at]! + im[k]!;
      const x = quickLog(a * a + b * b + LEAST_SQUARE);
      sum += x;
      squares += x * x;
    }
    const average = sum / seats;
    const off = average - mean;
    mean += off / (f + 1);
    total += Math.max(0, squares - sum * average) * perSeat + weight * off * (average - mean);
    if (total > limit) return total;
  }
  return total;
}
