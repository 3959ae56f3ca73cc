import { describe, expect, it } from 'vitest';
import { THIRD_OCTAVES } from '../../core/quantity/bands';
import type { ShellSize } from '../../core/room/project';
import { modesPerThirdOctave } from '../../core/modes/mode-count';
import { shellModes } from '../../core/modes/shell-modes';
import {
  GOOD_RATIOS,
  inequalityMargin,
  keepsInequality,
  nearestGoodRatio,
  proportionsOf,
  wholeRatioDistance,
} from '../../core/proportions/proportion-rules';
import { thirdOctaveRule } from '../../core/proportions/third-octave-rule';
import { countByBand, unevennessSpace } from '../../core/proportions/unevenness';

const FOOT_M = 0.3048;
const feet = (length: number, width: number, height: number): ShellSize => ({
  width: width * FOOT_M,
  length: length * FOOT_M,
  height: height * FOOT_M,
});
const metres = (length: number, width: number, height: number): ShellSize => ({
  width,
  length,
  height,
});

/** Counts by the literal figures of a separate calculation, c = 343 m/s, base-ten bands 20 to 200 Hz. */
const COUNTED: readonly (readonly [string, ShellSize, readonly number[]])[] = [
  ['6 x 5 x 2.4 m', metres(6, 5, 2.4), [0, 0, 2, 1, 0, 3, 6, 10, 15, 33, 55]],
  ['23 x 17 x 9 ft', feet(23, 17, 9), [0, 1, 1, 1, 1, 6, 6, 11, 24, 39, 78]],
  ['16 x 12 x 8 ft', feet(16, 12, 8), [0, 0, 1, 0, 1, 3, 3, 6, 11, 20, 33]],
  ['6.36 x 4.44 x 3.00 m', metres(6.36, 4.44, 3), [0, 1, 0, 1, 2, 4, 6, 9, 22, 34, 62]],
];

describe('third octaves of known rooms', () => {
  it.each(COUNTED)('%s holds the modes that were counted apart', (_, size, counts) => {
    const modes = shellModes(size, 343, THIRD_OCTAVES.at(-1)?.highHz ?? 0);
    expect(modesPerThirdOctave(modes).map((band) => band.count)).toEqual(counts);
  });

  it.each(COUNTED)('%s is counted alike by the quick way of the search', (_, size, counts) => {
    const space = unevennessSpace();
    countByBand(size.width, size.length, size.height, 343, space);
    expect([...space.counts]).toEqual(counts);
  });
});

describe('the third-octave rule (Bonello 1981)', () => {
  const rule = (size: ShellSize, speed: number) => thirdOctaveRule(shellModes(size, speed, 224));

  it('passes 23 x 17 x 9 ft, as the Handbook for Sound Engineers (p. 133) says it does', () => {
    // At the handbook's 1130 ft/s.
    expect(rule(feet(23, 17, 9), 1130 * FOOT_M)).toEqual({ falling: [], coinciding: [] });
  });

  it('fails 6 x 5 x 2.4 m first at 40 Hz', () => {
    expect(rule(metres(6, 5, 2.4), 343).falling).toEqual([40, 50]);
  });

  it('sees the doubled 70 Hz of 16 x 12 x 8 ft (Handbook for Sound Engineers, p. 130)', () => {
    const { coinciding } = rule(feet(16, 12, 8), 1130 * FOOT_M);
    expect(coinciding.some((hz) => Math.abs(hz - 70.63) < 0.01)).toBe(true);
  });

  it('sees a pair that the edge of two bands runs between', () => {
    // The edge of the bands at 63 and 80 Hz is 1000 * 10^(-1.15) = 70.795 Hz (IEC 61260-1); sides of
    // half a wave of 70.787 and 70.802 Hz put a mode on either side of it.
    const size = { width: 343 / (2 * 70.787), length: 6.1, height: 343 / (2 * 70.802) };
    expect(rule(size, 343).coinciding.some((hz) => Math.abs(hz - 70.787) < 0.001)).toBe(true);
  });
});

describe('the proportion inequality (EBU Tech 3276, ITU-R BS.1116; clause from memory)', () => {
  // Worked by hand from 1.1 W/H <= L/H <= 4.5 W/H - 4, L < 3 H, W < 3 H.
  it.each([
    [1.14, 1.39, false],
    [1.28, 1.54, true],
    [1.6, 2.33, true],
    [1.4, 1.9, true],
    [1.3, 1.9, false],
    [1.26, 1.59, true],
    [1.5, 2.5, true],
    // The last two are strict: at three times the height it does not hold.
    [2, 3, false],
    [5 / 2.4, 2.5, true],
  ])('1 : %f : %f holds: %s', (width, length, holds) => {
    expect(keepsInequality({ width, length })).toBe(holds);
  });

  it('is missed by 0.05 at 1 : 1.3 : 1.9, where 4.5 W/H - 4 is 1.85', () => {
    expect(inequalityMargin({ width: 1.3, length: 1.9 })).toBeCloseTo(-0.05, 10);
  });

  it('leaves no whole ratio within 5 %: 1 : 2 is one, 1 : 1.5 : 2.4 is not', () => {
    expect(wholeRatioDistance(metres(4, 3, 2))).toBe(0);
    expect(wholeRatioDistance(metres(2.4, 1.5, 1))).toBeCloseTo(0.2, 10);
  });
});

describe('published good ratios', () => {
  it('Bolt’s cube roots are 1.2599 and 1.5874', () => {
    const ratio = GOOD_RATIOS.find(({ name }) => name === 'Bolt cube roots');
    expect(ratio?.width).toBeCloseTo(1.2599, 4);
    expect(ratio?.length).toBeCloseTo(1.5874, 4);
  });

  it('6.36 x 4.44 x 3.00 m is Rindel’s point C, 1 : 1.48 : 2.12', () => {
    const { ratio, distance } = nearestGoodRatio(proportionsOf(metres(6.36, 4.44, 3)));
    expect(ratio.name).toBe('Rindel C');
    expect(distance).toBeLessThan(0.001);
  });
});
