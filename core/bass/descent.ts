/**
 * Place, delay and level of one subwoofer at a time, until none of them betters the set: a good set of
 * driven subwoofers, not proved the best.
 */

import { offer, type BestSets, type KeptSet } from './best-sets';
import { addPlace, noSums, sumCost, turn, type CostSpace, type Sums } from './cost';
import { PLAIN_DRIVE, settled, type DelayAndLevel, type DriveGrid } from './drives';

/** Most steps for each subwoofer. */
const MOST_TURNS = 12;
/** Less than this, in units of the space, is rounding. */
const LEAST_GAIN = 1e-9;
const SETS_PER_SLICE = 400;

/**
 * From `start`, change one subwoofer at a time to the place of `choice` and the drive of `grid` that
 * cost least beside the others; an empty choice leaves every place as it is. Offers each set that it
 * meets. Yields now and then.
 */
export function* descend(
  space: CostSpace,
  start: KeptSet,
  choice: readonly number[],
  grid: DriveGrid,
  best: BestSets,
): Generator<number, void> {
  const others = noSums(space);
  const spare = noSums(space);
  const count = start.places.length;
  const places = [...start.places];
  let drives = settled(places.map((_, n) => start.drives[n] ?? PLAIN_DRIVE));
  let least = start.cost;
  let since = 0;
  offer(best, places, least, drives);
  for (let step = 0, unchanged = 0; step < MOST_TURNS * count && unchanged < count; step++) {
    const n = step % count;
    sumOthers(space, places, drives, n, spare, others);
    const free = choice.length > 0 ? choice.filter((p) => !isTaken(places, n, p)) : [places[n]!];
    let found: { readonly place: number; readonly drive: DelayAndLevel } | null = null;
    for (const delayMs of grid.delaysMs) {
      for (const levelDb of grid.levelsDb) {
        // The others the other way, instead of this one: the same but for what is common to all.
        turn(space, others, 10 ** (-levelDb / 20), -delayMs, spare);
        for (const place of free) {
          const cost = sumCost(space, spare, place, Math.max(least, best.limit));
          if (cost <= best.limit) {
            offer(
              best,
              places.map((other, m) => (m === n ? place : other)),
              cost,
              settled(drives.map((other, m) => (m === n ? { delayMs, levelDb } : other))),
            );
          }
          if (cost >= least - LEAST_GAIN) continue;
          least = cost;
          found = { place, drive: { delayMs, levelDb } };
        }
        since += free.length;
        if (since < SETS_PER_SLICE) continue;
        since = 0;
        yield step / (MOST_TURNS * count);
      }
    }
    unchanged += 1;
    if (!found) continue;
    places[n] = found.place;
    drives[n] = found.drive;
    drives = settled(drives);
    unchanged = 0;
  }
}

const isTaken = (places: readonly number[], n: number, place: number): boolean =>
  places.some((other, m) => m !== n && other === place);

/** `into` becomes the sum of all but the subwoofer of number `without`. */
function sumOthers(
  space: CostSpace,
  places: readonly number[],
  drives: readonly DelayAndLevel[],
  without: number,
  spare: Sums,
  into: Sums,
): void {
  const none = noSums(space);
  into.re.fill(0);
  into.im.fill(0);
  for (const [m, place] of places.entries()) {
    if (m === without) continue;
    const { levelDb, delayMs } = drives[m] ?? PLAIN_DRIVE;
    addPlace(space, none, place, spare);
    turn(space, spare, 10 ** (levelDb / 20), delayMs, spare);
    for (let at = 0; at < spare.re.length; at++) {
      into.re[at] = into.re[at]! + spare.re[at]!;
      into.im[at] = into.im[at]! + spare.im[at]!;
    }
  }
}
