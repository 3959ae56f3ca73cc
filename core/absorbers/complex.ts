/**
 * Complex numbers as plain immutable pairs, and the few functions that wave propagation needs. All
 * of them stay finite for any finite input: hyperbolic functions are written with decaying
 * exponentials only, and a division by nothing gives the largest number rather than NaN.
 */

export interface Complex {
  readonly re: number;
  readonly im: number;
}

export const complex = (re: number, im = 0): Complex => ({ re, im });

export const ZERO: Complex = complex(0);
export const ONE: Complex = complex(1);
export const J: Complex = complex(0, 1);

/** What stands for infinity: its square is still a number. */
const LARGEST = 1e150;

export const add = (a: Complex, b: Complex): Complex => ({ re: a.re + b.re, im: a.im + b.im });
export const subtract = (a: Complex, b: Complex): Complex => ({
  re: a.re - b.re,
  im: a.im - b.im,
});
export const multiply = (a: Complex, b: Complex): Complex => ({
  re: a.re * b.re - a.im * b.im,
  im: a.re * b.im + a.im * b.re,
});
export const scale = (a: Complex, factor: number): Complex => ({
  re: a.re * factor,
  im: a.im * factor,
});
/** `j a`: a quarter turn. */
export const timesJ = (a: Complex): Complex => ({ re: -a.im, im: a.re });

/** |a|^2. */
export const squaredSize = (a: Complex): number => a.re * a.re + a.im * a.im;

/** Below this a divisor is nothing. */
const SMALLEST = 1 / LARGEST;

/** `a / b` after Smith, so that no square overflows; the largest number where b is nothing. */
export function divide(a: Complex, b: Complex): Complex {
  if (Math.abs(b.re) < SMALLEST && Math.abs(b.im) < SMALLEST) {
    return a.re === 0 && a.im === 0 ? ZERO : complex(LARGEST);
  }
  if (Math.abs(b.re) >= Math.abs(b.im)) {
    const ratio = b.im / b.re;
    const below = b.re + b.im * ratio;
    return { re: (a.re + a.im * ratio) / below, im: (a.im - a.re * ratio) / below };
  }
  const ratio = b.re / b.im;
  const below = b.re * ratio + b.im;
  return { re: (a.re * ratio + a.im) / below, im: (a.im * ratio - a.re) / below };
}

/** The principal root: its real part is never negative. */
export function squareRoot(a: Complex): Complex {
  const size = Math.hypot(a.re, a.im);
  if (size === 0) return ZERO;
  const half = Math.sqrt((size + Math.abs(a.re)) / 2);
  return a.re >= 0
    ? { re: half, im: a.im / (2 * half) }
    : { re: Math.abs(a.im) / (2 * half), im: a.im < 0 ? -half : half };
}

/** e^a; the exponent's real part is held below 300. */
export function exponential(a: Complex): Complex {
  const size = Math.exp(Math.min(a.re, 300));
  return { re: size * Math.cos(a.im), im: size * Math.sin(a.im) };
}

/** tanh a for any size of a: 1 - 2 e^-2a / (1 + e^-2a) on the side where the exponential decays. */
export function hyperbolicTangent(a: Complex): Complex {
  if (a.re < 0) return scale(hyperbolicTangent(scale(a, -1)), -1);
  const decayed = exponential(scale(a, -2));
  return divide(subtract(ONE, decayed), add(ONE, decayed));
}

/** cot a = j / tanh(j a). */
export const cotangent = (a: Complex): Complex => divide(J, hyperbolicTangent(timesJ(a)));
