import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { quickLog } from '../../../../core/bass/quick-log';

describe('the logarithm by table', () => {
  it('is within 5e-12 and rounding of the true one over its range', () => {
    const normal = fc.double({ min: 1e-300, max: 1e300, noNaN: true });
    fc.assert(
      fc.property(normal, (x) => {
        const exact = Math.log(x);
        expect(Math.abs(quickLog(x) - exact)).toBeLessThan(5e-12 + 3e-16 * Math.abs(exact));
      }),
      { numRuns: 20_000 },
    );
  });

  it('is so at both ends of each part of the table', () => {
    let largest = 0;
    for (let n = 0; n <= 256; n++)
      for (const by of [1 - 2 ** -52, 1, 1 + 2 ** -52]) {
        const x = 37 * (1 + n / 256) * by;
        largest = Math.max(largest, Math.abs(quickLog(x) - Math.log(x)));
      }
    expect(largest).toBeLessThan(5e-12);
  });
});
