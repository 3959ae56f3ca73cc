/**
 * The best places for one to four subwoofers among candidates, on request with a delay and a level for
 * each: all sets, pruned by the limit that the best ones so far set. Nothing is estimated: a set is
 * ruled out by frequencies that alone cost more already. A set that is even because it cancels (see
 * `allowed-sets.ts`) cannot win.
 */

import { scaled } from '../quantity/slices';
import { allowedSets } from './allowed-sets';
import { bestSets, type BestSets } from './best-sets';
import { costSpace, unitDb2, type CostSpace } from './cost';
import { descend } from './descent';
import { everyDrivenPair } from './driven-pairs';
import { pairDrives, type DriveGrid } from './drives';
import { countSets, everySet } from './every-set';
import { frequencyOrder } from './frequency-order';
import { groupSets, SAME_COST_DB2, type FoundSet } from './found-sets';
import { DEFAULT_WEIGHT, measureSet, type Driven, type SetMeasures } from './measure';
import { startFrom } from './start';
import type { Transfer } from './transfer';

export interface SearchOptions {
  /** Subwoofers in a set. */
  readonly count: 1 | 2 | 3 | 4;
  /** Only the first so many places of the transfer may be chosen; all where it is not given. */
  readonly candidates?: number;
  /** What there is now, by places of the transfer. */
  readonly present?: readonly Driven[];
  /** Delays and levels to try; none where it is not given. */
  readonly drives?: DriveGrid;
  readonly weight?: number;
  /** False for two places of which boxes would run into each other. */
  readonly fits?: (a: number, b: number) => boolean;
  /** Sets in the answer. */
  readonly most?: number;
  /**
   * Where there are more sets (times drives) than this, only exchanges from some starts are made. With 0
   * that is a first answer, within some tenths of a second.
   */
  readonly mostTried?: number;
}

export interface SubwooferSearch {
  /** Best first. */
  readonly sets: readonly FoundSet[];
  readonly present: SetMeasures | null;
  /** Sets of places that were looked at, times drives where each was tried with each; of how many. */
  readonly tried: number;
  readonly total: number;
  /**
   * How much less than the first set any other could cost at most: 0 where all were tried. Null where
   * nothing is proved.
   */
  readonly provenGapDb2: number | null;
  /**
   * `every`: each set with each drive. `descent`: from the best sets without drives, one subwoofer at a
   * time was given another place, delay and level, which proves nothing about other sets.
   */
  readonly drives: 'none' | 'every' | 'descent';
}

export const MOST_SETS = 8;
/** Around 10 s. */
export const MOST_TRIED = 4_000_000;
/** Sets kept for each set of the answer: a room that is symmetric both ways has four alike. */
const KEPT_PER_SET = 4;
const STARTS = 12;
/** Descents after all sets were tried, and for a first answer. */
const DESCENTS = 12;
const FIRST_DESCENTS = 2;

/** Search. Yields the share done every few milliseconds. */
export function* searchSubwoofers(
  transfer: Transfer,
  options: SearchOptions,
): Generator<number, SubwooferSearch> {
  const { count, weight = DEFAULT_WEIGHT, most = MOST_SETS, mostTried = MOST_TRIED } = options;
  const candidates = Math.min(options.candidates ?? transfer.places, transfer.places);
  const present = measureSet(transfer, options.present ?? [], weight);
  // A single subwoofer's delay and level change nothing.
  const grid = count > 1 ? options.drives : undefined;
  const pairs = grid && count === 2 ? pairDrives(grid) : null;
  const sets = candidates >= count && transfer.seats > 0 ? countSets(candidates, count) : 0;
  const total = sets * (pairs?.length ?? 1);
  const all = total <= mostTried;
  const drives = !grid ? 'none' : pairs && all ? 'every' : 'descent';
  if (total === 0) return { sets: [], present, tried: 0, total, provenGapDb2: null, drives };

  const order = yield* scaled(frequencyOrder(transfer, candidates, count, weight), 0, 0.02);
  const space = costSpace(transfer, weight, order);
  let best = bestSets(most * KEPT_PER_SET, allowedSets(transfer, options.fits));
  const met = new Set<number>();
  const starts = Math.min(STARTS, candidates);
  for (let n = 0; n < starts; n++) {
    startFrom(space, candidates, count, Math.floor((n * candidates) / starts), best, met);
    yield 0.02 + (0.08 * (n + 1)) / starts;
  }
  if (all) {
    const work = pairs
      ? everyDrivenPair(space, candidates, pairs, best)
      : everySet(space, candidates, count, best);
    yield* scaled(work, 0.1, drives === 'descent' ? 0.6 : 0.95, total);
  }
  if (grid && drives === 'descent') {
    best = yield* driven(space, candidates, best, grid, all ? DESCENTS : FIRST_DESCENTS);
  }
  const tried = all ? total : met.size;
  return {
    sets: yield* groupSets(transfer, best.sets, weight, most),
    present,
    tried,
    total,
    provenGapDb2: tried === total && drives !== 'descent' ? 0 : null,
    drives,
  };
}

/** Descents from the best of different cost, then drives alone for every set that they found. */
function* driven(
  space: CostSpace,
  candidates: number,
  plain: BestSets,
  grid: DriveGrid,
  descents: number,
): Generator<number, BestSets> {
  const best = bestSets(plain.most, plain.allows);
  const every = Array.from({ length: candidates }, (_, place) => place);
  const same = SAME_COST_DB2 / unitDb2(space);
  const from = plain.sets
    .filter(({ cost }, n) => n === 0 || cost - (plain.sets[n - 1]?.cost ?? 0) > same)
    .slice(0, descents);
  for (const [n, start] of from.entries()) {
    const at = 0.6 + (0.3 * n) / from.length;
    yield* scaled(descend(space, start, every, grid, best), at, at + 0.3 / from.length);
  }
  const found = [...best.sets];
  for (const [n, start] of found.entries()) {
    const at = 0.9 + (0.05 * n) / found.length;
    yield* scaled(descend(space, start, [], grid, best), at, at);
    yield at;
  }
  return best;
}
