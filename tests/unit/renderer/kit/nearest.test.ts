import { scaleLinear, scaleLog } from 'd3-scale';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { nearestAt } from '../../../../renderer/kit/chart/nearest';

const x = scaleLog([20, 200], [38, 580]);

describe('the nearest mark', () => {
  it('is the one that any other is farther from, on the scale that it is drawn on', () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: 20, max: 200 }), { minLength: 1, maxLength: 40 }),
        fc.integer({ min: 0, max: 620 }),
        (list, px) => {
          const values = [...list].sort((a, b) => a - b);
          const at = nearestAt(values, x, px) ?? -1;
          const away = (n: number): number => Math.abs(x(values[n] ?? NaN) - px);
          const least = Math.min(...values.map((_, n) => away(n)));
          expect(away(at)).toBe(least);
          expect(at === 0 || values[at - 1] !== values[at]).toBe(true);
        },
      ),
    );
  });

  it('is measured in px: between 20 and 200 Hz the middle of a logarithmic scale is 63 Hz', () => {
    expect(nearestAt([20, 200], x, x(62))).toBe(0);
    expect(nearestAt([20, 200], x, x(65))).toBe(1);
    expect(nearestAt([20, 200], scaleLinear([20, 200], [38, 580]), 290)).toBe(0);
  });

  it('is none where nothing lies within reach', () => {
    expect(nearestAt([], x, 100)).toBe(null);
    expect(nearestAt([50, 100], x, x(50) + 11, 10)).toBe(null);
    expect(nearestAt([50, 100], x, x(50) + 9, 10)).toBe(0);
  });
});
