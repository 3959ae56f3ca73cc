import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  complex,
  cotangent,
  divide,
  exponential,
  hyperbolicTangent,
  multiply,
  ONE,
  squareRoot,
  ZERO,
  type Complex,
} from '../../../../core/absorbers/complex';

const part = fc.double({ min: -1e6, max: 1e6, noNaN: true });
const any = fc.record({ re: part, im: part });
const small = fc.record({
  re: fc.double({ min: -5, max: 5, noNaN: true }),
  im: fc.double({ min: -5, max: 5, noNaN: true }),
});

function expectNear(found: Complex, expected: Complex, part = 1e-9): void {
  const size = Math.max(1, Math.hypot(expected.re, expected.im));
  expect(Math.abs(found.re - expected.re) / size).toBeLessThan(part);
  expect(Math.abs(found.im - expected.im) / size).toBeLessThan(part);
}

describe('complex numbers', () => {
  it('a root times itself is what it was taken of, and never points to the left', () => {
    fc.assert(
      fc.property(any, (a) => {
        const root = squareRoot(a);
        expect(root.re).toBeGreaterThanOrEqual(0);
        expectNear(multiply(root, root), a);
      }),
    );
    expect(squareRoot(complex(-4))).toEqual(complex(0, 2));
    expect(squareRoot(ZERO)).toEqual(ZERO);
  });

  it('dividing undoes multiplying', () => {
    fc.assert(
      fc.property(any, any, (a, b) => {
        fc.pre(Math.hypot(b.re, b.im) > 1e-3);
        expectNear(divide(multiply(a, b), b), a);
      }),
    );
  });

  it('dividing by nothing is very large and still a number', () => {
    expect(divide(ONE, ZERO).re).toBeGreaterThan(1e100);
    expect(divide(ZERO, ZERO)).toEqual(ZERO);
  });

  it('tanh is sinh by cosh', () => {
    fc.assert(
      fc.property(small, (a) => {
        const up = exponential(a);
        const down = exponential(complex(-a.re, -a.im));
        const cosh = complex(up.re + down.re, up.im + down.im);
        fc.pre(Math.hypot(cosh.re, cosh.im) > 1e-2);
        expectNear(
          hyperbolicTangent(a),
          divide(complex(up.re - down.re, up.im - down.im), cosh),
          1e-7,
        );
      }),
    );
  });

  it('tanh and cot of anything are finite', () => {
    fc.assert(
      fc.property(any, (a) => {
        for (const value of [hyperbolicTangent(a), cotangent(a)]) {
          expect(Number.isFinite(value.re) && Number.isFinite(value.im)).toBe(true);
        }
      }),
    );
    expectNear(hyperbolicTangent(complex(1e6, 3)), ONE);
    expectNear(cotangent(complex(0.5, 1e6)), complex(0, -1));
    expectNear(cotangent(complex(0.7)), complex(1 / Math.tan(0.7)));
    expectNear(cotangent(complex(-0.7)), complex(-1 / Math.tan(0.7)));
  });
});
