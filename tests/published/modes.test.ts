import { describe, expect, it } from 'vitest';
import { axialModes, axialSpacing } from '../../core/modes/axial-spacing';
import { modeFrequencyHz, type ModeOrder } from '../../core/modes/shell-modes';

/** 1130 ft/s, the speed of sound that the handbook's tables are worked with. */
const HANDBOOK_SPEED_MS = 344.424;

/** 16 ft long, 12 ft wide, 8 ft high. */
const ROOM_16_12_8 = { width: 3.6576, length: 4.8768, height: 2.4384 };
/** 23 ft long, 17 ft wide, 9 ft high. */
const ROOM_23_17_9 = { width: 5.1816, length: 7.0104, height: 2.7432 };

describe('axial modes of the 16 x 12 x 8 ft room', () => {
  // Handbook for Sound Engineers, ch. 6, Table 6-4: 1130 ft/s, first modes of each side.
  const PRINTED: readonly (readonly [ModeOrder, number])[] = [
    [[0, 1, 0], 35.31],
    [[0, 2, 0], 70.63],
    [[0, 3, 0], 105.94],
    [[1, 0, 0], 47.08],
    [[2, 0, 0], 94.17],
    [[3, 0, 0], 141.25],
    [[0, 0, 1], 70.63],
    [[0, 0, 2], 141.25],
    [[0, 0, 3], 211.9],
  ];

  it.each(PRINTED)('mode %j lies at %f Hz', (order, printedHz) => {
    const found = axialModes(ROOM_16_12_8, HANDBOOK_SPEED_MS).find(
      (mode) => mode.order.join() === order.join(),
    );
    expect(Math.abs((found?.frequencyHz ?? 0) - printedHz)).toBeLessThan(
      printedHz > 200 ? 0.05 : 0.01,
    );
  });

  it('is doubled at 70 Hz and tripled at 141 Hz, as the text points out', () => {
    // Handbook for Sound Engineers, ch. 6, text to Table 6-4.
    const axial = axialModes(ROOM_16_12_8, HANDBOOK_SPEED_MS);
    const near = (hz: number): readonly string[] =>
      axial.filter((mode) => Math.abs(mode.frequencyHz - hz) < 0.5).map((m) => m.order.join());
    expect([...near(70.63)].sort()).toEqual(['0,0,1', '0,2,0']);
    expect([...near(141.25)].sort()).toEqual(['0,0,2', '0,4,0', '3,0,0']);
  });

  it('is reported as pile-ups at 70 and 141 Hz', () => {
    const { pileUps, closestHz } = axialSpacing(axialModes(ROOM_16_12_8, HANDBOOK_SPEED_MS), 200);
    expect(pileUps.map((pileUp) => [Math.round(pileUp.lowHz), pileUp.modes.length])).toEqual([
      [71, 2],
      [141, 3],
    ]);
    expect(closestHz).toBeCloseTo(0, 6);
  });
});

describe('axial modes of the 23 x 17 x 9 ft room', () => {
  // The room is the second example of Handbook for Sound Engineers, ch. 6; its figures are worked
  // out from 1130 ft/s: 24.57 Hz is 1130 / (2 * 23).
  const WORKED: readonly (readonly [ModeOrder, number])[] = [
    [[0, 1, 0], 24.57],
    [[1, 0, 0], 33.24],
    [[0, 2, 0], 49.13],
    [[0, 0, 1], 62.78],
    [[2, 0, 0], 66.47],
    [[0, 3, 0], 73.7],
    [[0, 4, 0], 98.26],
    [[3, 0, 0], 99.71],
  ];

  it('begins with these eight, in this order', () => {
    const first = axialModes(ROOM_23_17_9, HANDBOOK_SPEED_MS).slice(0, 8);
    expect(first.map((mode) => mode.order)).toEqual(WORKED.map(([order]) => order));
    first.forEach((mode, i) => {
      expect(Math.abs(mode.frequencyHz - (WORKED[i]?.[1] ?? 0))).toBeLessThan(0.006);
    });
  });

  it('has the close pair that the handbook names, length 4 beside width 3', () => {
    // Handbook for Sound Engineers, ch. 6: the pair (4,0,0) and (0,3,0), length written first.
    const { pileUps } = axialSpacing(axialModes(ROOM_23_17_9, HANDBOOK_SPEED_MS), 110);
    const pair = pileUps.find((pileUp) => pileUp.lowHz > 90);
    expect(pair?.modes.map((mode) => mode.order.join())).toEqual(['0,4,0', '3,0,0']);
    expect(pair?.closestHz).toBeCloseTo(1.45, 2);
  });
});

describe('one figure that anyone can check', () => {
  it('puts the lowest mode of a 10 m corridor at 17.16 Hz in air of 20 C', () => {
    // Half a wave of 343.2 m/s (ISO 9613-1) over 10 m: common practice.
    expect(modeFrequencyHz([0, 1, 0], { width: 2, length: 10, height: 2.4 }, 343.2)).toBeCloseTo(
      17.16,
      10,
    );
  });
});
