import { describe, expect, it } from 'vitest';
import { bandMark, bandName, THIRD_OCTAVES } from '../../../../core/quantity/bands';

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

describe('an octave in words', () => {
  it.each([
    [63, '63 Hz', '63'],
    [500, '500 Hz', '500'],
    [1000, '1 kHz', '1k'],
    [8000, '8 kHz', '8k'],
  ])('of %i Hz is %s, and %s on an axis', (hz, name, mark) => {
    expect(bandName(hz)).toBe(name);
    expect(bandMark(hz)).toBe(mark);
  });
});
