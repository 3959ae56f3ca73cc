import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fineFigure, fineText, insideFine } from '../../../../core/quantity/fine-length';
import { parseLength } from '../../../../core/quantity/length';
import { FIGURE_UNITS, parseFigure, shownLimit } from '../../../../core/quantity/typed-figure';

const unit = fc.constantFrom('metric' as const, 'imperial' as const);

describe('a temperature', () => {
  it.each([
    ['68 F', 'imperial', 20],
    ['68 °F', 'metric', 20],
    ['68', 'imperial', 20],
    ['68°f', 'imperial', 20],
    ['20', 'metric', 20],
    ['20 C', 'imperial', 20],
    ['20,5', 'metric', 20.5],
    ['-4 F', 'imperial', -20],
    ['−4', 'imperial', -20],
  ] as const)('typed as %j in %s units is %d °C', (text, units, value) => {
    expect(parseFigure(text, 'temperature', units)).toEqual({ ok: true, value });
  });

  it.each(['warm', '', '68 K', '20 m²', '6 8'])('is not %j', (text) => {
    expect(parseFigure(text, 'temperature', 'metric').ok).toBe(false);
  });

  it('has limits in whole degrees inside the range', () => {
    expect(shownLimit(-20, 'low', FIGURE_UNITS.temperature.imperial, 0)).toBe(-4);
    expect(shownLimit(50, 'high', FIGURE_UNITS.temperature.imperial, 0)).toBe(122);
    expect(shownLimit(900, 'high', FIGURE_UNITS.area.imperial, 0)).toBe(9687);
  });
});

describe('a floor area', () => {
  it.each([
    ['200', 'imperial', 18.580608],
    ['200 sq ft', 'metric', 18.580608],
    ['18.5 m2', 'imperial', 18.5],
    ['18.5 m²', 'metric', 18.5],
  ] as const)('typed as %j in %s units is %d m2', (text, units, value) => {
    expect(parseFigure(text, 'area', units)).toEqual({ ok: true, value });
  });

  it('with a comma before three digits is asked', () => {
    const parsed = parseFigure('1,200 sq ft', 'area', 'imperial');
    expect(parsed.ok ? '' : parsed.sentence).toMatch(/could be 1200 or 1\.200/);
  });
});

describe('figures in either unit system', () => {
  it('come back as they were shown', () => {
    fc.assert(
      fc.property(
        fc.constantFrom('temperature' as const, 'area' as const, 'massPerArea' as const),
        unit,
        fc.integer({ min: 0, max: 90_000 }),
        (quantity, units, hundredths) => {
          const known = FIGURE_UNITS[quantity][units];
          const parsed = parseFigure(`${hundredths / 100} ${known.name}`, quantity, units);
          expect(parsed.ok && Number(known.toShown(parsed.value).toFixed(4)) + 0).toBe(
            hundredths / 100,
          );
        },
      ),
    );
  });
});

describe('a length too fine for metres or feet', () => {
  it.each([
    [0.0127, '12.7 mm', '1/2 in'],
    [0.012, '12 mm', '0.472 in'],
    [0.0889, '88.9 mm', '3 1/2 in'],
    [0.00794, '7.94 mm', '5/16 in'],
    [0.0508, '50.8 mm', '2 in'],
  ])('%d m is %s or %s', (lengthM, metric, imperial) => {
    expect(fineText(lengthM, 'metric')).toBe(metric);
    expect(fineText(lengthM, 'imperial')).toBe(imperial);
  });

  it('is read back as it is shown', () => {
    fc.assert(
      fc.property(fc.integer({ min: 20, max: 30_000 }), unit, (hundredths, units) => {
        const lengthM = hundredths / 1e5;
        const parsed = parseLength(fineFigure(lengthM, units), units, 'fine');
        expect(parsed.ok && Math.abs(parsed.metres - lengthM)).toBeLessThan(2e-5);
      }),
    );
  });

  it('has limits inside the range that can be typed as they are said', () => {
    fc.assert(
      fc.property(fc.integer({ min: 20, max: 30_000 }), unit, (hundredths, units) => {
        const limit = hundredths / 1e5;
        const low = insideFine(limit, 'low', units);
        const high = insideFine(limit, 'high', units);
        expect(low).toBeGreaterThanOrEqual(limit);
        expect(high).toBeLessThanOrEqual(limit);
        expect(low - high).toBeLessThan(0.21 * limit);
      }),
    );
  });
});
