/**
 * Which sets may win: those whose boxes have room beside each other, and that do not get even by
 * cancelling. What is not allowed is not kept, and so never lowers the limit that others are given up at:
 * the search stays exact among the sets that are allowed.
 */

import type { DelayAndLevel } from './drives';
import { meanLevels, type Driven } from './measure';
import type { Transfer } from './transfer';
import { practice } from '../room/practice/practice';

/**
 * How far the output of a set may stay under that of as many subwoofers whose sound adds by energy, neither
 * helping nor cancelling (10 lg of their number over one of them alone), dB. It is not measured by the loudest set: that stands in the corners, and would rule out the even ones.
 */
export const MOST_CANCELLED_DB = practice('most-cancelled');

/** Least output of `count` subwoofers over one of them alone, dB. */
export const leastOutputDb = (count: number): number =>
  count === 1 ? -Infinity : 10 * Math.log10(count) - MOST_CANCELLED_DB;

export type Allows = (places: readonly number[], drives: readonly DelayAndLevel[]) => boolean;

/** `fits` is false for two places whose boxes run into each other. */
export function allowedSets(
  transfer: Transfer,
  fits: (a: number, b: number) => boolean = () => true,
): Allows {
  const alone = new Map<number, number>();
  const aloneDb = (place: number): number => {
    const known = alone.get(place) ?? meanLevels(transfer, [{ place }]);
    alone.set(place, known);
    return known;
  };
  return (places, drives) => {
    if (places.some((a, n) => places.slice(0, n).some((b) => !fits(a, b)))) return false;
    if (places.length === 1) return true;
    const set = places.map((place, n): Driven => ({ place, ...drives[n] }));
    const one = places.reduce((sum, place) => sum + aloneDb(place), 0) / places.length;
    return meanLevels(transfer, set) - one >= leastOutputDb(places.length);
  };
}
