import { describe, expect, it } from 'vitest';
import { axialModes, axialSpacing } from '../../../../core/modes/axial-spacing';
import type { ShellMode } from '../../../../core/modes/shell-modes';

/** Axial modes at these frequencies; which side they belong to does not matter here. */
const axial = (...frequencies: readonly number[]): readonly ShellMode[] =>
  frequencies.map((frequencyHz, i) => ({ frequencyHz, order: [0, i + 1, 0], kind: 'axial' }));

describe('gaps between axial modes', () => {
  it('are those wider than 20 Hz', () => {
    const { gaps, widestHz } = axialSpacing(axial(30, 50, 71, 80, 110), 200);
    expect(gaps).toEqual([
      { fromHz: 50, toHz: 71, widthHz: 21 },
      { fromHz: 80, toHz: 110, widthHz: 30 },
    ]);
    expect(widestHz).toBe(30);
  });

  it('of exactly 20 Hz are none', () => {
    expect(axialSpacing(axial(30, 50, 70), 200).gaps).toEqual([]);
  });

  it('are judged where they begin at or below the limit, also past it', () => {
    expect(axialSpacing(axial(150, 190, 230, 270), 200).gaps).toEqual([
      { fromHz: 150, toHz: 190, widthHz: 40 },
      { fromHz: 190, toHz: 230, widthHz: 40 },
    ]);
  });

  it('are not closed by tangential or oblique modes', () => {
    const modes: ShellMode[] = [
      ...axial(30, 60),
      { frequencyHz: 45, order: [1, 1, 0], kind: 'tangential' },
    ];
    expect(
      axialSpacing(
        modes.sort((a, b) => a.frequencyHz - b.frequencyHz),
        200,
      ).gaps,
    ).toHaveLength(1);
  });
});

describe('pile-ups of axial modes', () => {
  it('are runs in which each lies closer than 5 Hz to the next', () => {
    const { pileUps, closestHz } = axialSpacing(axial(30, 34, 37, 60, 65, 80, 80), 200);
    expect(
      pileUps.map(({ lowHz, highHz, closestHz: closest, modes }) => [
        lowHz,
        highHz,
        closest,
        modes.length,
      ]),
    ).toEqual([
      [30, 37, 3, 3],
      [80, 80, 0, 2],
    ]);
    expect(closestHz).toBe(0);
  });

  it('at the very limit still count, past it no more', () => {
    expect(axialSpacing(axial(197, 200), 200).pileUps).toHaveLength(1);
    expect(axialSpacing(axial(197, 201), 200).pileUps).toEqual([]);
  });

  it('do not run across the modes that lie apart', () => {
    expect(axialSpacing(axial(30, 40, 50), 200).pileUps).toEqual([]);
  });
});

describe('fewer than two axial modes', () => {
  it('have no spacing', () => {
    expect(axialSpacing(axial(), 200)).toEqual({
      gaps: [],
      pileUps: [],
      closestHz: null,
      widestHz: null,
    });
    expect(axialSpacing(axial(80), 200)).toMatchObject({ closestHz: null, widestHz: null });
  });
});

describe('axial modes of the 6 x 5 x 2.4 m room', () => {
  // Worked by hand from multiples of 343/12, 343/10 and 343/4.8 Hz.
  const size = { width: 5, length: 6, height: 2.4 };

  it('rise from side to side', () => {
    const to200 = axialModes(size, 343).filter((mode) => mode.frequencyHz < 180);
    const expected = [
      28.58, 34.3, 57.17, 68.6, 71.46, 85.75, 102.9, 114.33, 137.2, 142.92, 142.92, 171.5, 171.5,
    ];
    expect(to200).toHaveLength(expected.length);
    to200.forEach((mode, i) => {
      expect(Math.abs(mode.frequencyHz - (expected[i] ?? 0))).toBeLessThan(0.01);
    });
  });

  it('leave three gaps and coincide at 143 and 171.5 Hz', () => {
    const { gaps, pileUps } = axialSpacing(axialModes(size, 343), 172);
    // The last one begins at 171.5 Hz and ends at the seventh mode of the length, 200.08 Hz.
    expect(gaps.map(({ fromHz, widthHz }) => [Math.round(fromHz), widthHz.toFixed(2)])).toEqual([
      [34, '22.87'],
      [114, '22.87'],
      [143, '28.58'],
      [172, '28.58'],
    ]);
    const coincident = pileUps.filter((pileUp) => pileUp.closestHz < 1e-6);
    expect(coincident.map((pileUp) => pileUp.lowHz.toFixed(2))).toEqual(['142.92', '171.50']);
  });
});

describe('a very small room', () => {
  it('of 1 m sides has its gap from 171.6 to 343.2 Hz reported', () => {
    const cube = { width: 1, length: 1, height: 1 };
    expect(axialSpacing(axialModes(cube, 343.2), 200).widestHz).toBeCloseTo(171.6, 6);
  });
});
