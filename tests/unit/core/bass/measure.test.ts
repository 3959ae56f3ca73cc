import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { addPlace, costSpace, noSums, sumCost, turn, unitDb2 } from '../../../../core/bass/cost';
import {
  DEFAULT_WEIGHT,
  drivenLevels,
  measureSet,
  type Driven,
} from '../../../../core/bass/measure';
import type { Transfer } from '../../../../core/bass/transfer';
import { given } from '../../support/rooms';
import { anyTransfer } from './transfers';

/** Two places, two seats, two frequencies; levels 0 and 20 dB, then 20 and 20 dB from the first. */
const SMALL: Transfer = {
  frequenciesHz: Float64Array.of(25, 50),
  places: 2,
  seats: 2,
  re: Float64Array.of(1, 10, 1, 1, 10, 10, 1, 1),
  im: new Float64Array(8),
};

const drive = fc.record({
  place: fc.integer({ min: 0, max: 4 }),
  delayMs: fc.integer({ min: 0, max: 10 }),
  levelDb: fc.integer({ min: -9, max: 0 }),
  inverted: fc.boolean(),
});
const set: fc.Arbitrary<readonly Driven[]> = fc.uniqueArray(drive, {
  minLength: 1,
  maxLength: 4,
  selector: ({ place }) => place,
});

describe('the measures of a set', () => {
  it('are those worked out by hand', () => {
    // Seats 20 dB apart: variance 200; then alike: 0. Averages 10 and 20 dB: deviation 5 dB.
    const measures = given(measureSet(SMALL, [{ place: 0 }]));
    expect(measures.meanSpatialVarianceDb2).toBeCloseTo(100, 9);
    expect(measures.deviationDb).toBeCloseTo(5, 9);
    expect(measures.outputDb).toBeCloseTo(0, 9);
    expect(measures.costDb2).toBeCloseTo(100 + DEFAULT_WEIGHT * 25, 9);
    expect(given(measureSet(SMALL, [{ place: 0 }], 2)).costDb2).toBeCloseTo(150, 9);
  });

  it('are none without subwoofers or without seats', () => {
    expect(measureSet(SMALL, [])).toBeNull();
    expect(measureSet({ ...SMALL, seats: 0 }, [{ place: 0 }])).toBeNull();
  });

  it('of two alike at one place have 6.02 dB more, inverted nothing at all', () => {
    expect(given(measureSet(SMALL, [{ place: 1 }, { place: 1 }])).outputDb).toBeCloseTo(6.0206, 3);
    const silent = given(measureSet(SMALL, [{ place: 1 }, { place: 1, inverted: true }]));
    expect(silent.outputDb).toBeCloseTo(-300, 6);
    expect(silent.costDb2).toBe(0);
  });

  it('delays by a turn of the phase: half a period is the other polarity', () => {
    const half = drivenLevels(SMALL, [{ place: 0 }, { place: 1, delayMs: 20 }]);
    const inverted = drivenLevels(SMALL, [{ place: 0 }, { place: 1, inverted: true }]);
    // 20 ms is half a period of 25 Hz and a whole one of 50 Hz.
    expect(half[1]?.[0]).toBeCloseTo(inverted[1]?.[0] ?? NaN, 6);
    expect(half[1]?.[1]).toBeCloseTo(20 * Math.log10(11), 6);
  });

  it('change neither in spread nor in deviation with one level or delay for all', () => {
    fc.assert(
      fc.property(anyTransfer(5, 2), set, fc.integer({ min: 1, max: 9 }), (transfer, some, by) => {
        const before = given(measureSet(transfer, some));
        const after = given(
          measureSet(
            transfer,
            some.map((one) => ({
              ...one,
              levelDb: (one.levelDb ?? 0) + by,
              delayMs: (one.delayMs ?? 0) + by,
            })),
          ),
        );
        const near = (x: number) => 1e-7 * (1 + Math.abs(x));
        for (const key of ['meanSpatialVarianceDb2', 'deviationDb', 'costDb2'] as const) {
          expect(Math.abs(after[key] - before[key])).toBeLessThan(near(before[key]));
        }
        expect(after.outputDb - before.outputDb).toBeCloseTo(by, 6);
      }),
    );
  });

  it('do not depend on the order of the seats', () => {
    fc.assert(
      fc.property(anyTransfer(5, 2), set, (transfer, some) => {
        const { seats, re, im } = transfer;
        const around = (values: Float64Array): Float64Array =>
          values.map((_, at) => {
            const s = at % seats;
            return values[at - s + ((s + 1) % seats)] ?? NaN;
          });
        const before = given(measureSet(transfer, some));
        const after = given(measureSet({ ...transfer, re: around(re), im: around(im) }, some));
        expect(after.costDb2).toBeCloseTo(before.costDb2, 6);
        expect(after.outputDb).toBeCloseTo(before.outputDb, 6);
      }),
    );
  });
});

describe('the cost as a sum', () => {
  it('is that of the measures, in any order of the frequencies and however driven', () => {
    fc.assert(
      fc.property(anyTransfer(5), set, (transfer, some) => {
        const last = given(some.at(-1));
        const order = Int32Array.from(transfer.frequenciesHz.keys()).reverse();
        const space = costSpace(transfer, 0.4, order);
        const [sums, one, turned] = [noSums(space), noSums(space), noSums(space)];
        for (const { place, levelDb = 0, delayMs = 0, inverted } of some.slice(0, -1)) {
          addPlace(space, noSums(space), place, one);
          const gain = 10 ** ((levelDb - (last.levelDb ?? 0)) / 20);
          turn(
            space,
            one,
            inverted === last.inverted ? gain : -gain,
            delayMs - (last.delayMs ?? 0),
            turned,
          );
          sums.re.forEach((value, at) => (sums.re[at] = value + (turned.re[at] ?? 0)));
          sums.im.forEach((value, at) => (sums.im[at] = value + (turned.im[at] ?? 0)));
        }
        const cost = sumCost(space, sums, last.place, Infinity) * unitDb2(space);
        const measured = given(measureSet(transfer, some, 0.4)).costDb2;
        expect(Math.abs(cost - measured)).toBeLessThan(1e-6 * (1 + measured));
      }),
    );
  });

  it('given up at a limit is above it and never above the whole', () => {
    fc.assert(
      fc.property(
        anyTransfer(3),
        fc.double({ min: 0, max: 60, noNaN: true }),
        (transfer, limit) => {
          const space = costSpace(transfer, 0.25);
          const whole = sumCost(space, noSums(space), 1, Infinity);
          const part = sumCost(space, noSums(space), 1, limit);
          if (whole <= limit) expect(part).toBe(whole);
          else expect(part).toBeGreaterThan(limit);
          expect(part).toBeLessThanOrEqual(whole);
        },
      ),
    );
  });
});
