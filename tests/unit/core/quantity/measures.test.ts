import { describe, expect, it } from 'vitest';
import { measuresIn } from '../../../../core/quantity/measures';

const metric = measuresIn('metric');
const imperial = measuresIn('imperial');

describe('figures in the units that a person reads', () => {
  // 1 ft = 0.3048 m, 1 lb = 0.45359237 kg exactly: NIST SP 811 Appendix B.
  it.each([
    ['length', 4.03, '4.03 m', '13\' 2 11/16"'],
    ['part', 0.0127, '12.7 mm', '1/2"'],
    ['part', 0.508, '508 mm', '20"'],
    ['part', 0.0889, '88.9 mm', '3 1/2"'],
    ['part', 0.6096, '609.6 mm', '2\' 0"'],
    ['part', 0.6, '60 cm', '23 5/8"'],
    ['about', 0.02, '2 cm', '3/4"'],
    ['about', 0.015, '2 cm', '5/8"'],
    ['about', 0.05, '5 cm', '2"'],
    ['about', 0.3, '30 cm', '12"'],
    ['about', 1.2, '1.2 m', '3\' 11"'],
    ['about', 0.005, '5 mm', '1/4"'],
    ['rounded', 3.789, '3.79 m', '12\' 5"'],
    ['limit', 2.1336, '2.134 m', '7\' 0"'],
    ['limit', 2, '2.00 m', '6\' 7"'],
    ['densities', { low: 30, high: 60 }, '30 to 60 kg/m³', '1.9 to 3.7 lb/cu ft'],
    ['area', 2.97289728, '2.97 m²', '32.0 sq ft'],
    ['area', 24.8, '24.8 m²', '267 sq ft'],
    ['volume', 64.512, '64.5 m³', '2,278 cu ft'],
    ['temperature', 20, '20 °C', '68 °F'],
    ['temperature', -40, '-40 °C', '-40 °F'],
    ['speed', 343.2, '343.2 m/s', '1,126 ft/s'],
    ['mass', 11.3398, '11.3 kg', '25 lb'],
    ['massPerArea', 9.76, '9.8 kg/m²', '2.00 lb/sq ft'],
  ] as const)('%s of %j', (kind, value, metricText, imperialText) => {
    expect((metric[kind] as (si: unknown) => string)(value)).toBe(metricText);
    expect((imperial[kind] as (si: unknown) => string)(value)).toBe(imperialText);
  });
});
