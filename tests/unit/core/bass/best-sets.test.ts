import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bestSets, offer, type BestSets } from '../../../../core/bass/best-sets';
import { costSpace, unitDb2, type CostSpace } from '../../../../core/bass/cost';
import { descend } from '../../../../core/bass/descent';
import { everyDrivenPair } from '../../../../core/bass/driven-pairs';
import { pairDrives, PLAIN_DRIVE, type DriveGrid } from '../../../../core/bass/drives';
import { everySet } from '../../../../core/bass/every-set';
import { measureSet } from '../../../../core/bass/measure';
import { startFrom } from '../../../../core/bass/start';
import type { Transfer } from '../../../../core/bass/transfer';
import { finish } from '../../../../core/quantity/slices';
import { given } from '../../support/rooms';
import { allSets, anyTransfer } from './transfers';

const GRID: DriveGrid = { delaysMs: [0, 4, 8], levelsDb: [0, -4] };
const PLACES = 7;

/** Every kept set costs what the measures say of it, and they rise. */
function expectTrue(best: BestSets, space: CostSpace, transfer: Transfer): void {
  best.sets.forEach(({ places, drives, cost }, n) => {
    const set = places.map((place, m) => ({ place, ...(drives[m] ?? PLAIN_DRIVE) }));
    const { costDb2 } = given(measureSet(transfer, set, space.weight));
    expect(Math.abs(cost * unitDb2(space) - costDb2)).toBeLessThan(1e-6 * (1 + costDb2));
    expect(cost).toBeGreaterThanOrEqual(best.sets[n - 1]?.cost ?? 0);
  });
  expect(new Set(best.sets.map(({ places }) => places.join())).size).toBe(best.sets.length);
}

describe('the best sets', () => {
  it('of all are kept to the last one, none ruled out in error', () => {
    const cases = fc.tuple(anyTransfer(PLACES), fc.constantFrom(1, 2, 3, 4));
    fc.assert(
      fc.property(cases, fc.integer({ min: 1, max: 6 }), ([transfer, count], most) => {
        const space = costSpace(transfer, 0.25);
        const best = bestSets(most);
        finish(everySet(space, PLACES, count, best));
        const every = allSets(PLACES, count)
          .map((set) => set.map((place) => ({ place })))
          .map((set) => given(measureSet(transfer, set)).costDb2)
          .sort((a, b) => a - b);
        expect(best.sets).toHaveLength(Math.min(most, every.length));
        best.sets.forEach(({ cost }, n) => {
          const wanted = every[n] ?? NaN;
          expect(Math.abs(cost * unitDb2(space) - wanted)).toBeLessThan(1e-6 * (1 + wanted));
        });
        expectTrue(best, space, transfer);
      }),
      { numRuns: 200 },
    );
  });

  it('keep a set once, with the cheapest of its drives', () => {
    const best = bestSets(2);
    const late = { delayMs: 3, levelDb: 0 };
    offer(best, [4, 1], 9, [late, PLAIN_DRIVE]);
    offer(best, [1, 4], 7);
    offer(best, [1, 4], 8);
    expect(best.sets).toEqual([{ places: [1, 4], drives: [], cost: 7 }]);
    expect(best.limit).toBe(Infinity);
    offer(best, [5, 2], 6, [late, PLAIN_DRIVE]);
    offer(best, [0, 3], 8);
    expect(best.sets.map(({ places }) => places)).toEqual([
      [2, 5],
      [1, 4],
    ]);
    expect(best.sets[0]?.drives).toEqual([PLAIN_DRIVE, late]);
    expect(best.limit).toBe(7);
  });
});

describe('a set that was kept', () => {
  it('by a start costs what it says, and no exchange of one place betters the best', () => {
    fc.assert(
      fc.property(anyTransfer(PLACES), fc.constantFrom(2, 3, 4), (transfer, count) => {
        const space = costSpace(transfer, 0.25);
        const best = bestSets(10);
        const met = new Set<number>();
        startFrom(space, PLACES, count, 0, best, met);
        expectTrue(best, space, transfer);
        const { places, cost } = given(best.sets[0]);
        for (const other of allSets(PLACES, count)) {
          if (other.filter((place) => !places.includes(place)).length !== 1) continue;
          const set = other.map((place) => ({ place }));
          const { costDb2 } = given(measureSet(transfer, set));
          expect(costDb2).toBeGreaterThan(cost * unitDb2(space) * (1 - 1e-9) - 1e-9);
        }
        expect(met.size).toBeGreaterThanOrEqual(best.sets.length);
      }),
      { numRuns: 100 },
    );
  });

  it('by a descent costs what it says with its drives, and the best settles', () => {
    fc.assert(
      fc.property(anyTransfer(PLACES), fc.constantFrom(2, 3), (transfer, count) => {
        const space = costSpace(transfer, 0.25);
        const start = bestSets(1);
        finish(everySet(space, PLACES, count, start));
        const best = bestSets(12);
        const every = Array.from({ length: PLACES }, (_, place) => place);
        finish(descend(space, given(start.sets[0]), every, GRID, best));
        expectTrue(best, space, transfer);
        const found = given(best.sets[0]);
        expect(found.cost).toBeLessThanOrEqual(given(start.sets[0]).cost);
        const again = bestSets(1);
        finish(descend(space, found, every, GRID, again));
        expect(given(again.sets[0]).cost).toBeGreaterThanOrEqual(found.cost * (1 - 1e-9) - 1e-6);
      }),
      { numRuns: 60 },
    );
  });

  it('by a descent without a choice of places has only other drives', () => {
    fc.assert(
      fc.property(anyTransfer(PLACES), (transfer) => {
        const space = costSpace(transfer, 0.25);
        const start = bestSets(1);
        startFrom(space, PLACES, 3, 2, start, new Set());
        const best = bestSets(5);
        finish(descend(space, given(start.sets[0]), [], GRID, best));
        expectTrue(best, space, transfer);
        expect(best.sets.map(({ places }) => places)).toEqual([given(start.sets[0]).places]);
      }),
      { numRuns: 60 },
    );
  });

  it('of two with drives costs what it says', () => {
    fc.assert(
      fc.property(anyTransfer(PLACES), (transfer) => {
        const space = costSpace(transfer, 0.25);
        const best = bestSets(9);
        finish(everyDrivenPair(space, PLACES, pairDrives(GRID), best));
        expectTrue(best, space, transfer);
      }),
      { numRuns: 60 },
    );
  });
});
