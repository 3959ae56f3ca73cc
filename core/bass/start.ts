/** A good set to begin with: places added one by one, each the best; then exchanged one by one. */

import { offer, type BestSets } from './best-sets';
import { addPlace, noSums, sumCost, type CostSpace, type Sums } from './cost';

/** Most rounds of exchange. */
const MOST_ROUNDS = 20;

/**
 * From the place `first` to a set of `count` that no exchange of a single place betters. Offers all
 * complete sets that it meets, and adds a number of their own for each to `met`.
 */
export function startFrom(
  space: CostSpace,
  candidates: number,
  count: number,
  first: number,
  best: BestSets,
  met: Set<number>,
): void {
  const [some, others] = [noSums(space), noSums(space)];
  const chosen = [first];
  /** The place that costs least beside `rest`; -1 where each of them exceeds `limit`. */
  const bestBeside = (rest: readonly number[], limit: number): readonly [number, number] => {
    sumUp(space, rest, some, others);
    const whole = rest.length === count - 1;
    let [place, least] = [-1, limit];
    for (let p = 0; p < candidates; p++) {
      if (rest.includes(p)) continue;
      // A complete set may be worth keeping although it is not the best one here.
      const cost = sumCost(space, others, p, whole ? Math.max(least, best.limit) : least);
      if (whole) {
        met.add(numberOf([...rest, p], space.places));
        if (cost <= best.limit) offer(best, [...rest, p], cost);
      }
      if (cost < least) [place, least] = [p, cost];
    }
    return [place, least];
  };
  let cost = Infinity;
  if (count === 1) {
    bestBeside([], cost);
    return;
  }
  while (chosen.length < count) {
    const [place, found] = bestBeside(chosen, Infinity);
    if (place < 0) return;
    chosen.push(place);
    cost = found;
  }
  for (let round = 0, since = 0; round < MOST_ROUNDS && since < count; round++) {
    for (let n = 0; n < count && since < count; n++) {
      const rest = chosen.filter((_, m) => m !== n);
      const [place, found] = bestBeside(rest, cost);
      since += 1;
      if (place < 0 || place === chosen[n]) continue;
      chosen[n] = place;
      cost = found;
      since = 0;
    }
  }
}

/** A number that no other set of places has. */
const numberOf = (set: readonly number[], places: number): number =>
  [...set].sort((a, b) => a - b).reduce((number, place) => number * places + place, 0);

/** `into` becomes the sum of all `places`; `spare` is overwritten. */
export function sumUp(space: CostSpace, places: readonly number[], spare: Sums, into: Sums): void {
  spare.re.fill(0);
  spare.im.fill(0);
  into.re.fill(0);
  into.im.fill(0);
  places.forEach((place, n) => {
    const [from, to] = (places.length - n) % 2 === 1 ? [spare, into] : [into, spare];
    addPlace(space, from, place, to);
  });
}
