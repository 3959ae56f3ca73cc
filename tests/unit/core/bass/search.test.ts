import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { pairDrives, settled, DEFAULT_DRIVES, type DriveGrid } from '../../../../core/bass/drives';
import { countSets } from '../../../../core/bass/every-set';
import { SAME_COST_DB2 } from '../../../../core/bass/found-sets';
import { frequencyOrder } from '../../../../core/bass/frequency-order';
import { measureSet, type Driven } from '../../../../core/bass/measure';
import {
  searchSubwoofers,
  type SearchOptions,
  type SubwooferSearch,
} from '../../../../core/bass/search';
import type { Transfer } from '../../../../core/bass/transfer';
import { finish } from '../../../../core/quantity/slices';
import type { Point } from '../../../../core/room/project';
import { given } from '../../support/rooms';
import { sizeOf } from '../room-modes/solve';
import { allSets, anyTransfer, transferIn } from './transfers';

const SMALL_GRID: DriveGrid = { delaysMs: [0, 4, 8], levelsDb: [0, -3] };

const search = (transfer: Transfer, options: SearchOptions): SubwooferSearch =>
  finish(searchSubwoofers(transfer, options));

const costOf = (transfer: Transfer, set: readonly Driven[]): number =>
  given(measureSet(transfer, set)).costDb2;

const plain = (places: readonly number[]): readonly Driven[] => places.map((place) => ({ place }));

/** Stated anew: no more than 2.5 dB under as many subwoofers whose sound adds by energy. */
const isLoud = (transfer: Transfer, set: readonly Driven[]): boolean =>
  set.length === 1 ||
  given(measureSet(transfer, set)).outputDb >= 10 * Math.log10(set.length) - 2.5;

const costs = ({ sets }: SubwooferSearch): readonly number[] =>
  sets.map(({ measures }) => measures.costDb2);

/** Costs without repeats within what the search takes to be the same. */
function distinct(rising: readonly number[]): readonly number[] {
  return rising.reduce<readonly number[]>(
    (kept, cost) => (cost - (kept.at(-1) ?? -Infinity) <= SAME_COST_DB2 ? kept : [...kept, cost]),
    [],
  );
}

function expectNear(found: readonly number[], wanted: readonly number[]): void {
  expect(found).toHaveLength(wanted.length);
  found.forEach((cost, n) =>
    expect(Math.abs(cost - (wanted[n] ?? NaN))).toBeLessThan(1e-6 * (1 + cost)),
  );
}

/** A shell with 14 places around it and two rows of seats; all of it the same from left and right. */
const SIZE = sizeOf([4, 5.2, 2.4]);
const PLACES: readonly Point[] = [
  ...[0.2, 1.1, 2, 2.9, 3.8].flatMap((x): Point[] => [
    [x, 0.2, 0.2],
    [x, 5, 0.2],
  ]),
  ...[1.4, 3.4].flatMap((y): Point[] => [
    [0.2, y, 0.2],
    [3.8, y, 0.2],
  ]),
];
const SEATS: readonly Point[] = [1.2, 2, 2.8].flatMap((x): Point[] => [
  [x, 2.9, 1.1],
  [x, 4.1, 1.3],
]);
const shell = transferIn(SIZE, PLACES, SEATS);

describe('the search without drives', () => {
  it('finds the best of all sets, small instances one by one', () => {
    const cases = fc.tuple(anyTransfer(7), fc.constantFrom(1, 2, 3, 4), fc.constantFrom(1, 2));
    fc.assert(
      fc.property(cases, ([transfer, count, most]) => {
        const every = allSets(7, count)
          .map(plain)
          .filter((set) => isLoud(transfer, set))
          .map((set) => costOf(transfer, set));
        const found = search(transfer, { count, most });
        const rising = distinct(every.sort((a, b) => a - b));
        expectNear(costs(found), rising.slice(0, most));
        expect(found.tried).toBe(countSets(7, count));
        expect([found.total, found.provenGapDb2, found.drives]).toEqual([found.tried, 0, 'none']);
      }),
      { numRuns: 300 },
    );
  });

  it.each([1, 2, 3, 4] as const)('finds the best %i of all places in a shell', (count) => {
    const every = allSets(PLACES.length, count)
      .map(plain)
      .filter((set) => isLoud(shell, set))
      .map((set) => costOf(shell, set));
    const found = search(shell, { count });
    expectNear(costs(found), distinct(every.sort((a, b) => a - b)).slice(0, 8));
    found.sets.forEach(({ subwoofers, measures }) =>
      expect(measures).toEqual(measureSet(shell, subwoofers)),
    );
  });

  it('gives mirror images as one, and no set twice', () => {
    const { sets } = search(shell, { count: 2 });
    const mirrored = (set: readonly Driven[]): string =>
      set
        .map(({ place }) => {
          const [x = 0, y = 0] = PLACES[place] ?? [];
          return PLACES.findIndex((at) => Math.abs(at[0] - (4 - x)) < 1e-9 && at[1] === y);
        })
        .sort((a, b) => a - b)
        .join();
    const named = (set: readonly Driven[]): string => set.map(({ place }) => place).join();
    sets.forEach(({ subwoofers, equals }, n) => {
      const image = mirrored(subwoofers);
      const twins = equals.map(named);
      if (image === named(subwoofers)) expect(twins).toEqual([]);
      else expect(twins).toEqual([image]);
      const before = sets[n - 1]?.measures.costDb2 ?? -Infinity;
      expect(sets[n]?.measures.costDb2).toBeGreaterThan(before + SAME_COST_DB2);
    });
    expect(sets.some(({ equals }) => equals.length > 0)).toBe(true);
    const all = sets.flatMap(({ subwoofers, equals }) => [subwoofers, ...equals].map(named));
    expect(new Set(all).size).toBe(all.length);
  });

  it('gives the mirrored answer in a mirrored room', () => {
    const seats: readonly Point[] = [
      [1, 2.6, 1.1],
      [1.7, 2.7, 1.1],
      [2.9, 3.9, 1.2],
    ];
    const flip = ([x, y, z]: Point): Point => [4 - x, y, z];
    const here = search(transferIn(SIZE, PLACES, seats), { count: 2 });
    const there = search(transferIn(SIZE, PLACES.map(flip), seats.map(flip)), { count: 2 });
    expect(here.sets.map(({ subwoofers }) => subwoofers)).toEqual(
      there.sets.map(({ subwoofers }) => subwoofers),
    );
    expectNear(costs(here), costs(there));
    // Without the flip of the seats the answer is another one: the room is not symmetric about them.
    const other = search(transferIn(SIZE, PLACES.map(flip), seats), { count: 2 });
    expect(other.sets[0]?.subwoofers).not.toEqual(here.sets[0]?.subwoofers);
  });

  it('chooses among the candidates and measures what is there now', () => {
    const present = [{ place: 12, delayMs: 3 }, { place: 13 }];
    const found = search(shell, { count: 2, candidates: 6, present });
    found.sets.forEach(({ subwoofers, equals }) =>
      [subwoofers, ...equals].flat().forEach(({ place }) => expect(place).toBeLessThan(6)),
    );
    expect(found.present).toEqual(measureSet(shell, present));
    expect(found.total).toBe(15);
  });

  it('weighs the average as it is told', () => {
    const flat = search(shell, { count: 3, weight: 10 });
    const even = search(shell, { count: 3, weight: 0 });
    expect(given(flat.sets[0]).measures.deviationDb).toBeLessThan(
      given(even.sets[0]).measures.deviationDb,
    );
    expect(given(even.sets[0]).measures.costDb2).toBe(
      given(even.sets[0]).measures.meanSpatialVarianceDb2,
    );
  });

  it('says what it has not proved where it may not try all', () => {
    const around = Array.from({ length: 28 }, (_, n): Point => {
      const along = 0.2 + (n % 14) * 0.36;
      return [n < 14 ? 0.2 : 3.8, along, 0.2];
    });
    const transfer = transferIn(SIZE, around, SEATS);
    const exact = search(transfer, { count: 4 });
    const first = search(transfer, { count: 4, mostTried: 0 });
    expect(first.tried).toBeLessThan(first.total);
    expect(first.tried).toBeGreaterThan(0);
    expect(first.provenGapDb2).toBeNull();
    expect(given(costs(first)[0])).toBeGreaterThanOrEqual(given(costs(exact)[0]) - 1e-9);
    // A search from one set alone would be far off.
    expect(given(costs(first)[0])).toBeLessThan(given(costs(exact)[0]) * 1.5);
  });

  it('has no answer with too few places or without seats', () => {
    const none = { sets: [], present: null, tried: 0, total: 0, provenGapDb2: null };
    expect(search(shell, { count: 4, candidates: 3 })).toEqual({ ...none, drives: 'none' });
    expect(search({ ...shell, seats: 0 }, { count: 1 })).toEqual({ ...none, drives: 'none' });
  });

  it('gives no set whose boxes run into each other, and the best of all others', () => {
    const fits = (a: number, b: number): boolean => Math.abs(a - b) > 2;
    const every = allSets(PLACES.length, 3)
      .filter((set) => set.every((a, n) => set.slice(n + 1).every((b) => fits(a, b))))
      .map(plain)
      .filter((set) => isLoud(shell, set))
      .map((set) => costOf(shell, set));
    const found = search(shell, { count: 3, fits });
    expectNear(costs(found), distinct(every.sort((a, b) => a - b)).slice(0, 8));
    expect(costs(found)).not.toEqual(costs(search(shell, { count: 3 })));
  });

  it('gives no set that is even because it cancels', () => {
    // Two places in step, and a third that is their reverse to a hundredth: that pair is silent and even.
    const seats = 3;
    const frequenciesHz = Float64Array.of(20, 40, 80);
    const loud = [1, 3, 0.5, 2, 0.7, 1.4, 0.6, 2.5, 1.1];
    const re = frequenciesHz.reduce<number[]>((all, _, f) => {
      const heard = loud.slice(f * seats, (f + 1) * seats);
      return [...all, ...heard, ...heard.map((p) => p + 0.1), ...heard.map((p) => 0.01 - p)];
    }, []);
    const transfer: Transfer = {
      ...{ frequenciesHz, places: 3, seats },
      re: Float64Array.from(re),
      im: new Float64Array(re.length),
    };
    const silent = plain([0, 2]);
    expect(costOf(transfer, silent)).toBeLessThan(1e-9);
    expect(given(measureSet(transfer, silent)).outputDb).toBeLessThan(-30);
    const { sets } = search(transfer, { count: 2 });
    expect(sets.map(({ subwoofers }) => subwoofers)).toEqual([plain([0, 1])]);
  });

  it('tells rising shares, one at least every 1000 sets', () => {
    const shares = [...searchSubwoofers(shell, { count: 4 })];
    expect(shares.length).toBeGreaterThan(countSets(PLACES.length, 4) / 1000);
    shares.forEach((share, n) => expect(share).toBeGreaterThanOrEqual(shares[n - 1] ?? 0));
    expect(Math.max(...shares)).toBeLessThanOrEqual(1);
  });
});

describe('the search with drives', () => {
  it('finds the best of all pairs, delays and levels', () => {
    fc.assert(
      fc.property(anyTransfer(4), (transfer) => {
        const drives = SMALL_GRID.delaysMs.flatMap((delayMs) =>
          SMALL_GRID.levelsDb.map((levelDb) => ({ delayMs, levelDb })),
        );
        // Every drive of both, also those that only delay both: the search leaves them out.
        const every = allSets(4, 2)
          .map(([a = 0, b = 0]) =>
            Math.min(
              ...drives.flatMap((one) =>
                drives
                  .filter(({ levelDb }) => Math.max(one.levelDb, levelDb) === 0)
                  .map((two): readonly Driven[] => [
                    { place: a, ...one },
                    { place: b, ...two },
                  ])
                  .filter((set) => isLoud(transfer, set))
                  .map((set) => costOf(transfer, set)),
              ),
            ),
          )
          .filter((cost) => cost < Infinity);
        const found = search(transfer, { count: 2, drives: SMALL_GRID, most: 2 });
        const rising = distinct(every.sort((a, b) => a - b));
        expectNear(costs(found), rising.slice(0, 2));
        expect([found.provenGapDb2, found.drives]).toEqual([0, 'every']);
        expect(found.total).toBe(6 * pairDrives(SMALL_GRID).length);
      }),
      { numRuns: 150 },
    );
  });

  it('leaves one of a pair undelayed and one at full level', () => {
    const { sets } = search(shell, { count: 2, drives: DEFAULT_DRIVES });
    for (const { subwoofers } of sets) {
      expect(Math.min(...subwoofers.map(({ delayMs = 0 }) => delayMs))).toBe(0);
      expect(Math.max(...subwoofers.map(({ levelDb = 0 }) => levelDb))).toBe(0);
    }
    const best = given(sets[0]);
    expect(best.measures).toEqual(measureSet(shell, best.subwoofers));
    expect(best.measures.costDb2).toBeLessThan(
      given(search(shell, { count: 2 }).sets[0]).measures.costDb2,
    );
  });

  it.each([3, 4] as const)('of %i is a descent that never ends above the plain search', (count) => {
    const exact = search(shell, { count });
    const found = search(shell, { count, drives: SMALL_GRID });
    expect([found.drives, found.provenGapDb2]).toEqual(['descent', null]);
    expect(given(costs(found)[0])).toBeLessThan(given(costs(exact)[0]));
    for (const { subwoofers, measures } of found.sets) {
      expect(measures).toEqual(measureSet(shell, subwoofers));
      expect(Math.min(...subwoofers.map(({ delayMs = 0 }) => delayMs))).toBe(0);
      expect(Math.max(...subwoofers.map(({ levelDb = 0 }) => levelDb))).toBe(0);
      expect(new Set(subwoofers.map(({ place }) => place)).size).toBe(count);
    }
  });

  it('of a pair that may not try all is a descent too', () => {
    const found = search(shell, { count: 2, drives: SMALL_GRID, mostTried: 0 });
    expect([found.drives, found.provenGapDb2]).toEqual(['descent', null]);
    const exact = search(shell, { count: 2, drives: SMALL_GRID });
    expect(given(costs(found)[0])).toBeGreaterThanOrEqual(given(costs(exact)[0]) - 1e-9);
    expect(given(costs(found)[0])).toBeLessThanOrEqual(
      given(costs(search(shell, { count: 2 }))[0]) + 1e-9,
    );
  });

  it('changes nothing for a single one', () => {
    const alone = search(shell, { count: 1, drives: DEFAULT_DRIVES });
    expect(alone).toEqual(search(shell, { count: 1 }));
  });
});

describe('the order of the frequencies', () => {
  it('has each of them once', () => {
    const order = finish(frequencyOrder(shell, PLACES.length, 2, 0.25));
    expect([...order].sort((a, b) => a - b)).toEqual([...shell.frequenciesHz.keys()]);
  });
});

describe('what is common to all drives', () => {
  it('is taken off', () => {
    const drives = [
      { delayMs: 3, levelDb: -6 },
      { delayMs: 5, levelDb: -3 },
    ];
    expect(settled(drives)).toEqual([
      { delayMs: 0, levelDb: -3 },
      { delayMs: 2, levelDb: 0 },
    ]);
  });
});
