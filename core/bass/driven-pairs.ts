/** Every pair of places with every drive, pruned: exact. */

import { offer, type BestSets } from './best-sets';
import { addPlace, noSums, sumCost, turn, type CostSpace } from './cost';
import type { DelayAndLevel } from './drives';

const PAIRS_PER_SLICE = 400;

/**
 * Offer each pair of the first `candidates` places with each of `drives` (of the place of the lower
 * number, then of the other). Yields the number looked at.
 */
export function* everyDrivenPair(
  space: CostSpace,
  candidates: number,
  drives: readonly (readonly [DelayAndLevel, DelayAndLevel])[],
  best: BestSets,
): Generator<number, void> {
  const [none, alone, turned] = [noSums(space), noSums(space), noSums(space)];
  let [tried, since] = [0, 0];
  for (const pair of drives) {
    const [lower, higher] = pair;
    // Against the first subwoofer: what is common to both does not count.
    const gain = 10 ** ((higher.levelDb - lower.levelDb) / 20);
    const delayMs = higher.delayMs - lower.delayMs;
    for (let b = 1; b < candidates; b++) {
      addPlace(space, none, b, alone);
      turn(space, alone, gain, delayMs, turned);
      for (let a = 0; a < b; a++) {
        const cost = sumCost(space, turned, a, best.limit);
        if (cost <= best.limit) offer(best, [a, b], cost, pair);
        since += 1;
      }
      if (since < PAIRS_PER_SLICE) continue;
      tried += since;
      since = 0;
      yield tried;
    }
  }
}
