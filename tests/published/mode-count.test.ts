import { describe, expect, it } from 'vitest';
import {
  expectedModeCount,
  modeDensityPerHz,
  modesPerThirdOctave,
  THIRD_OCTAVE_REACH_HZ,
} from '../../core/modes/mode-count';
import { shellModes } from '../../core/modes/shell-modes';
import { THIRD_OCTAVES } from '../../core/quantity/bands';

describe('the mean number of modes (Maa 1939, Bolt 1939)', () => {
  it('gives the hall of 50 x 24 x 14 m about 1.8e9 modes up to 10 kHz', () => {
    // Kuttruff, Room Acoustics, ch. 3: about 1.8e9 modes, from memory; c = 340 m/s.
    const hall = { width: 24, length: 50, height: 14 };
    const count = expectedModeCount(hall, 10_000, 340);
    expect(count).toBeGreaterThan(1.75e9);
    expect(count).toBeLessThan(1.85e9);
  });

  it('gives the same hall about 5400 modes per hertz at 1 kHz', () => {
    // Kuttruff, Room Acoustics, ch. 3: about 5400 per hertz, from memory; c = 340 m/s.
    const hall = { width: 24, length: 50, height: 14 };
    const density = modeDensityPerHz(hall, 1000, 340);
    expect(density).toBeGreaterThan(5300);
    expect(density).toBeLessThan(5600);
  });

  // Counted once over all orders in a program of its own; the mean from the three-term formula of
  // Kuttruff, Room Acoustics, ch. 3.
  const COUNTED = [
    { sides: [7, 5, 3], speedMS: 343, hz: 100, counted: 21, mean: 22.57 },
    { sides: [7, 5, 3], speedMS: 343, hz: 200, counted: 128, mean: 129.49 },
    { sides: [6, 5, 2.4], speedMS: 343, hz: 100, counted: 17, mean: 16.96 },
    { sides: [6, 5, 2.4], speedMS: 343, hz: 200, counted: 91, mean: 93.82 },
    { sides: [4.7, 4.1, 3.1], speedMS: 340, hz: 100, counted: 14, mean: 14.44 },
    { sides: [4.7, 4.1, 3.1], speedMS: 340, hz: 200, counted: 81, mean: 79.73 },
    { sides: [6, 4, 2.5], speedMS: 343, hz: 100, counted: 15, mean: 14.59 },
    { sides: [6, 4, 2.5], speedMS: 343, hz: 200, counted: 77, mean: 79.64 },
  ] as const;

  it.each(COUNTED)(
    'room $sides m has $counted modes to $hz Hz where the formula says $mean',
    ({ sides: [length, width, height], speedMS, hz, counted, mean }) => {
      const size = { width, length, height };
      expect(shellModes(size, speedMS, hz)).toHaveLength(counted);
      expect(Math.abs(expectedModeCount(size, hz, speedMS) - mean)).toBeLessThan(0.01);
    },
  );

  it('gives the 6 x 5 x 2.4 m room 0.394 modes per hertz at 100 Hz', () => {
    // Slope of the same formula, worked separately; c = 343 m/s.
    expect(modeDensityPerHz({ width: 5, length: 6, height: 2.4 }, 100, 343)).toBeCloseTo(0.394, 3);
  });
});

describe('modes per third octave', () => {
  const counts = (length: number, width: number, height: number, speedMS: number): number[] =>
    modesPerThirdOctave(shellModes({ width, length, height }, speedMS, THIRD_OCTAVE_REACH_HZ)).map(
      (band) => band.count,
    );

  it('has the nominal and exact midbands of IEC 61260-1', () => {
    // IEC 61260-1 (ISO 266): nominal midbands; exact 19.95 Hz for 20 Hz and 199.53 Hz for 200 Hz.
    expect(THIRD_OCTAVES.map((band) => band.nominalHz)).toEqual([
      20, 25, 31.5, 40, 50, 63, 80, 100, 125, 160, 200,
    ]);
    expect(THIRD_OCTAVES[0]?.exactHz).toBeCloseTo(19.95, 2);
    expect(THIRD_OCTAVES[10]?.exactHz).toBeCloseTo(199.53, 2);
    expect(THIRD_OCTAVES[10]?.highHz).toBeCloseTo(223.87, 2);
  });

  it('counts a mode on the edge of two bands once, in the upper one', () => {
    // IEC 61260-1: the edge between the 63 and the 80 Hz band is 1000 * 10^(-23/20) = 70.79 Hz.
    const edge = THIRD_OCTAVES[5]?.highHz ?? 0;
    expect(edge).toBeCloseTo(70.79, 2);
    const row = modesPerThirdOctave([{ frequencyHz: edge, order: [1, 0, 0], kind: 'axial' }]);
    expect(row.filter((band) => band.count > 0).map((band) => band.nominalHz)).toEqual([80]);
    expect(row[6]?.byKind).toEqual({ axial: 1, tangential: 0, oblique: 0 });
  });

  it('never falls in the 23 x 17 x 9 ft room, which passes the count rule', () => {
    // Handbook for Sound Engineers, ch. 6: this room meets Bonello's first condition. 1130 ft/s.
    const row = counts(7.0104, 5.1816, 2.7432, 344.424);
    for (let i = 1; i < row.length; i++) {
      expect(row[i] ?? 0).toBeGreaterThanOrEqual(row[i - 1] ?? 0);
    }
    // The counts themselves: worked separately over all orders, base-ten band edges.
    expect(row).toEqual([0, 1, 1, 1, 1, 4, 8, 11, 23, 39, 79]);
  });

  // Worked separately over all orders, base-ten band edges, c = 343 m/s.
  it.each([
    { sides: [6, 5, 2.4], row: [0, 0, 2, 1, 0, 3, 6, 10, 15, 33, 55] },
    { sides: [7.0104, 5.1816, 2.7432], row: [0, 1, 1, 1, 1, 6, 6, 11, 24, 39, 78] },
    { sides: [4.8768, 3.6576, 2.4384], row: [0, 0, 1, 0, 1, 3, 3, 6, 11, 20, 33] },
    { sides: [6.36, 4.44, 3], row: [0, 1, 0, 1, 2, 4, 6, 9, 22, 34, 62] },
  ] as const)('in the room $sides m are $row', ({ sides: [length, width, height], row }) => {
    expect(counts(length, width, height, 343)).toEqual(row);
  });
});
