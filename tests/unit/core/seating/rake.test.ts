import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { buildableHeights, METRIC_STOCK, NOMINAL_STOCK } from '../../../../core/seating/platforms';
import {
  leastBottomM,
  rakeOf,
  rakesByBottom,
  type RakeInput,
  type RakeRow,
} from '../../../../core/seating/rake';
import { clearanceM } from '../../../../core/seating/sight-line';

const builds = buildableHeights(NOMINAL_STOCK, 1.2);
const few = builds.filter((_, n) => n % 4 === 0).slice(0, 6);

const rowsOf = (ys: readonly number[], eyeHeightM = 1.2, mostM = 1.2): readonly RakeRow[] =>
  ys.map((y, n) => ({ id: `row ${n + 1}`, y, eyeHeightM, mostM }));

const inputOf = (rows: readonly RakeRow[], more: Partial<RakeInput> = {}): RakeInput => ({
  rows,
  stepM: 0.12,
  bottomM: 0.6,
  highestBottomM: 1.4,
  bottomStepM: 0.01,
  builds,
  ...more,
});

/** True where every row sees over every row before it with the floors at these heights. */
function sees({ rows, stepM, bottomM }: RakeInput, floors: readonly number[]): boolean {
  return rows.every((row, k) =>
    rows.every((front, j) => {
      if (row.y - front.y <= 0.05) return true;
      const eye = (floors[j] ?? 0) + front.eyeHeightM;
      const rise = (floors[k] ?? 0) + row.eyeHeightM - eye;
      const line = { distanceM: front.y, overFocusM: eye - bottomM, rowDepthM: row.y - front.y };
      return clearanceM(line, rise) >= stepM - 1e-9;
    }),
  );
}

/** Every choice of floors, one for each row. */
function* choices(rows: readonly RakeRow[], heights: readonly number[]): Generator<number[]> {
  const [first, ...rest] = rows;
  if (!first) {
    yield [];
    return;
  }
  for (const height of heights.filter((at) => at <= first.mostM + 1e-9))
    for (const others of choices(rest, heights)) yield [height, ...others];
}

describe('the rake', () => {
  it('gives the lowest platform that can be built, which the front row does not need', () => {
    const result = rakeOf(inputOf(rowsOf([3, 4.8])));
    if (result.kind !== 'found') throw new Error('blocked');
    const [front, back] = result.rake.rows;
    expect(front?.build.heightM).toBe(0);
    expect(front?.clearanceM).toBeNull();
    // R = 0.6 and C = 0.12 ask for 0.552 m by the formula: the next sum of lumber above it.
    const next = builds.find(({ heightM }) => heightM >= 0.552);
    expect(back?.build.heightM).toBe(next?.heightM);
    expect(back?.clearanceM).toBeGreaterThanOrEqual(0.12);
  });

  it('equals the lowest of all choices, row by row, or finds none where there is none', () => {
    const row = fc.record({
      y: fc.integer({ min: 20, max: 80 }).map((n) => n / 10),
      eyeHeightM: fc.integer({ min: 100, max: 125 }).map((n) => n / 100),
      mostM: fc.integer({ min: 0, max: 120 }).map((n) => n / 100),
    });
    const heights = few.map(({ heightM }) => heightM);
    fc.assert(
      fc.property(
        fc.uniqueArray(row, { minLength: 1, maxLength: 4, selector: ({ y }) => y }),
        fc.constantFrom(0.06, 0.09, 0.12),
        fc.integer({ min: 30, max: 120 }).map((n) => n / 100),
        (some, stepM, bottomM) => {
          const rows = some.map((made, n) => ({ id: `${n}`, ...made })).sort((a, b) => a.y - b.y);
          const input = inputOf(rows, { stepM, bottomM, builds: few });
          const all = [...choices(rows, heights)].filter((floors) => sees(input, floors));
          const result = rakeOf(input);
          if (all.length === 0) {
            expect(result.kind).toBe('blocked');
            return;
          }
          if (result.kind !== 'found') throw new Error(`blocked, but ${all[0]?.join()} does`);
          for (const [n, { build }] of result.rake.rows.entries())
            expect(build.heightM).toBe(Math.min(...all.map((floors) => floors[n] ?? 0)));
        },
      ),
      { numRuns: 60 },
    );
  });

  it('asks for no higher platform as the picture rises', () => {
    const rakes = rakesByBottom(inputOf(rowsOf([2.8, 4.4, 6])));
    expect(rakes.length).toBeGreaterThan(20);
    for (const [n, { rows, bottomM }] of rakes.entries()) {
      const lower = rakes[n - 1];
      if (!lower) continue;
      expect(bottomM).toBeGreaterThan(lower.bottomM);
      for (const [k, { build }] of rows.entries())
        expect(build.heightM).toBeLessThanOrEqual(lower.rows[k]?.build.heightM ?? Infinity);
    }
  });

  it('says which row finds no height, what it needs, and what would help', () => {
    const rows = rowsOf([3, 4.8], 1.2, 0.3);
    const result = rakeOf(inputOf(rows));
    if (result.kind !== 'blocked') throw new Error('found');
    expect(result.block.id).toBe('row 2');
    expect(result.block.neededM).toBeCloseTo(0.552, 9);
    expect(result.block.mostM).toBeCloseTo(0.3, 9);
    expect(result.help.without).toEqual(['row 1', 'row 2']);
    // The highest that can be built within 0.3 m is 12 in of 2x12 and sheathing less, or two of 2x4.
    const highest = builds.filter(({ heightM }) => heightM <= 0.3 + 1e-9).at(-1)?.heightM ?? 0;
    const bottomM = result.help.bottomM ?? NaN;
    const line = { distanceM: 3, rowDepthM: 1.8 };
    expect(clearanceM({ ...line, overFocusM: 1.2 - bottomM }, highest)).toBeGreaterThanOrEqual(
      0.12 - 1e-9,
    );
    expect(clearanceM({ ...line, overFocusM: 1.2 - bottomM + 0.01 }, highest)).toBeLessThan(0.12);
  });

  it('has no help in the picture where the highest does not do', () => {
    const input = inputOf(rowsOf([3, 4.8], 1.2, 0), { highestBottomM: 0.9 });
    expect(leastBottomM(input)).toBeNull();
  });
});

describe('heights that can be built', () => {
  it.each([
    ['nominal', NOMINAL_STOCK],
    ['metric', METRIC_STOCK],
  ] as const)('(%s) rise, begin at the bare floor, and are the sum of their tiers', (_, stock) => {
    const all = buildableHeights(stock, 1);
    expect(all[0]).toEqual({ heightM: 0, tiers: [] });
    for (const [n, { heightM, tiers }] of all.entries()) {
      const sum = tiers.reduce((total, { lumber, sheet }) => {
        return total + lumber.widthM + sheet.thicknessM;
      }, 0);
      expect(heightM).toBeCloseTo(sum, 9);
      expect(heightM).toBeLessThanOrEqual(1.0005);
      if (n > 0) expect(heightM).toBeGreaterThan(all[n - 1]?.heightM ?? Infinity);
    }
  });
});
