/** Every set of places, pruned: exact. */

import { offer, type BestSets } from './best-sets';
import { addPlace, noSums, sumCost, type CostSpace } from './cost';

/** Sets between two reports: a few milliseconds even where none is ruled out early. */
const SETS_PER_SLICE = 400;

/** Number of sets of `count` out of `candidates`. */
export function countSets(candidates: number, count: number): number {
  let sets = 1;
  for (let n = 0; n < count; n++) sets = (sets * (candidates - n)) / (n + 1);
  return Math.max(0, Math.round(sets));
}

/**
 * Offer every set of `count` of the first `candidates` places. The sum of all but the last place of a set
 * is made once for all last places. Yields the number of sets looked at.
 */
export function* everySet(
  space: CostSpace,
  candidates: number,
  count: number,
  best: BestSets,
): Generator<number, void> {
  if (count > candidates) return;
  const depth = count - 1;
  const sums = Array.from({ length: count }, () => noSums(space));
  const prefix = Array.from({ length: depth }, (_, n) => n);
  const from = sums[depth] ?? noSums(space);
  let [changed, tried, since] = [0, 0, 0];
  for (;;) {
    for (let n = changed; n < depth; n++) {
      const [before, after] = [sums[n], sums[n + 1]];
      if (before && after) addPlace(space, before, prefix[n]!, after);
    }
    for (let last = (prefix[depth - 1] ?? -1) + 1; last < candidates; last++) {
      const cost = sumCost(space, from, last, best.limit);
      if (cost <= best.limit) offer(best, [...prefix, last], cost);
      since += 1;
      if (since >= SETS_PER_SLICE) {
        tried += since;
        since = 0;
        yield tried;
      }
    }
    // The next prefix: the last of its places that can still move, and all behind it right after it.
    changed = depth - 1;
    while (changed >= 0 && prefix[changed]! >= candidates - count + changed) changed -= 1;
    if (changed < 0) return;
    const moved = prefix[changed]! + 1;
    for (let n = changed; n < depth; n++) prefix[n] = moved + n - changed;
  }
}
