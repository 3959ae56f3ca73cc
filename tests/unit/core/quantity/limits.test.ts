import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { formatLength, parseLength } from '../../../../core/quantity/length';
import { insideLimit, insideLimits, limitText } from '../../../../core/quantity/limits';

describe('a limit in whole units', () => {
  it.each([
    [1, 'low', 'imperial', `3' 4"`],
    [30, 'high', 'imperial', `98'`],
    [12, 'high', 'imperial', `39'`],
    [0.02, 'low', 'imperial', `1"`],
    [0.003, 'low', 'imperial', `1/8"`],
    [0.5, 'high', 'imperial', `1' 7"`],
    [0, 'low', 'imperial', `0"`],
    [1, 'low', 'metric', '1.00 m'],
    [30, 'high', 'metric', '30.00 m'],
    [0.0127, 'low', 'metric', '0.013 m'],
    [4.191, 'high', 'metric', '4.191 m'],
    [4.1911, 'high', 'metric', '4.19 m'],
  ] as const)('%d m as the %s one, %s, is said as %s', (limitM, side, units, text) => {
    expect(limitText(insideLimit(limitM, side, units), units)).toBe(text);
  });

  it('that stands on the tape is said as it is', () => {
    expect(limitText(insideLimit(4.191, 'high', 'imperial'), 'imperial')).toBe(`13' 9"`);
    expect(limitText(insideLimit(0.33179, 'high', 'imperial'), 'imperial')).toBe(`1' 1 1/16"`);
  });

  it('lies inside the range, is read back as said, and has no odd sixteenths of its own', () => {
    const limit = fc.integer({ min: 1, max: 3_000_000 }).map((n) => n / 1e5);
    const units = fc.constantFrom('metric' as const, 'imperial' as const);
    fc.assert(
      fc.property(limit, limit, units, (a, b, unit) => {
        const [lowM, highM] = a < b ? [a, b] : [b, a];
        const [low, high] = insideLimits(lowM, highM, unit);
        expect(low).toBeGreaterThanOrEqual(lowM);
        expect(high).toBeLessThanOrEqual(highM);
        expect(low).toBeLessThanOrEqual(high);
        const read = parseLength(limitText(high, unit), unit);
        expect(read.ok && Math.abs(read.metres - high)).toBeLessThan(0.0008);
        const apart = highM - lowM > 1 && lowM > 0.1 && unit === 'imperial';
        const onTape = (m: number): boolean =>
          Math.abs((m / 0.0254) * 16 - Math.round((m / 0.0254) * 16)) < 4e-3;
        if (apart && !onTape(highM)) expect(formatLength(high, unit)).not.toContain('/');
        if (apart && !onTape(lowM)) expect(formatLength(low, unit)).not.toContain('/');
      }),
    );
  });
});
