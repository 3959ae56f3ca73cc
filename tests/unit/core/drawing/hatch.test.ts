import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { HATCH_M, hatchLines } from '../../../../core/drawing/hatch';

const length = fc.double({ min: -8, max: 8, noNaN: true });
const extent = fc.double({ min: 0.001, max: 9, noNaN: true });

describe('a hatch', () => {
  it('rises to the right from edge to edge, in steps that neighbours share', () => {
    fc.assert(
      fc.property(length, length, extent, extent, (left, low, wide, high) => {
        const rect = { min: [left, low], max: [left + wide, low + high] } as const;
        const onEdge = ([x, y]: readonly [number, number]): boolean =>
          [x - rect.min[0], x - rect.max[0], y - rect.min[1], y - rect.max[1]].some(
            (off) => Math.abs(off) < 1e-9,
          );
        for (const [from, to] of hatchLines(rect)) {
          expect(to[1] - from[1]).toBeCloseTo(to[0] - from[0], 9);
          expect(onEdge(from) && onEdge(to)).toBe(true);
          const step = (from[1] - from[0]) / (HATCH_M * Math.SQRT2);
          expect(step).toBeCloseTo(Math.round(step), 6);
        }
        // No strip wider than a step is left without a line.
        const across = (wide + high) / (HATCH_M * Math.SQRT2);
        expect(hatchLines(rect).length).toBeGreaterThanOrEqual(Math.floor(across) - 1);
      }),
    );
  });

  it('keeps the number of its lines in bounds on a large surface', () => {
    expect(hatchLines({ min: [0, 0], max: [900, 900] }).length).toBeLessThanOrEqual(601);
  });
});
