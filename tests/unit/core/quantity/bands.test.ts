import { describe, expect, it } from 'vitest';
import { wrapDeg } from '../../../../core/quantity/angle';
import { THIRD_OCTAVES } from '../../../../core/quantity/bands';

describe('third octaves', () => {
  it('follow each other without a gap or an overlap', () => {
    for (let i = 1; i < THIRD_OCTAVES.length; i++) {
      expect(THIRD_OCTAVES[i]?.lowHz).toBeCloseTo(THIRD_OCTAVES[i - 1]?.highHz ?? 0, 9);
    }
  });

  it('carry a nominal midband near the exact one', () => {
    for (const band of THIRD_OCTAVES) {
      expect(Math.abs(band.nominalHz / band.exactHz - 1)).toBeLessThan(0.02);
      expect(band.lowHz).toBeLessThan(band.exactHz);
      expect(band.highHz).toBeGreaterThan(band.exactHz);
    }
  });
});

describe('an azimuth', () => {
  it.each([
    [0, 0],
    [180, 180],
    [-180, 180],
    [190, -170],
    [-190, 170],
    [360, 0],
    [540, 180],
    [-725, -5],
  ])('of %i degrees is %i degrees', (angle, wrapped) => {
    expect(wrapDeg(angle)).toBeCloseTo(wrapped, 9);
  });
});
