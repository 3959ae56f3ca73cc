/**
 * A tail known at a few frequencies, read between them. Its poles lie above the band, so that over the
 * square of the frequency it is a low polynomial: Chebyshev points make the error fall by the factor
 * rho = z + (z2 - 1)^(1/2) for each of them, z the place of the first pole with the band from -1 to 1.
 * With the pole at 1.6 times the band's end rho is 7.9.
 * Source: L. N. Trefethen, Approximation Theory and Approximation Practice, ch. 8 (from memory).
 */

import type { Tail } from '../response/path';

/** Points over the band. */
const POINTS = 7;

/** `tail` at one decay constant, good within the band of `frequenciesHz` (rising). */
export function smoothTail(tail: Tail, frequenciesHz: Float64Array, dampingPerS: number): Tail {
  const low = frequenciesHz[0]! ** 2;
  const high = (frequenciesHz.at(-1) ?? 0) ** 2;
  if (frequenciesHz.length <= POINTS) return (hz) => tail(hz, dampingPerS);
  const points = Float64Array.from({ length: POINTS }, (_, n) =>
    Math.cos(((n + 0.5) * Math.PI) / POINTS),
  );
  const values = Array.from(points, (at) =>
    tail(Math.sqrt((low + high) / 2 + (at * (high - low)) / 2), dampingPerS),
  );
  // Weights of the barycentric formula for these points.
  const weights = points.map(
    (_, n) => (n % 2 === 0 ? 1 : -1) * Math.sin(((n + 0.5) * Math.PI) / POINTS),
  );
  return (hz) => {
    const at = (2 * hz * hz - low - high) / (high - low);
    let [re, im, whole] = [0, 0, 0];
    for (let n = 0; n < POINTS; n++) {
      const off = at - points[n]!;
      const value = values[n] ?? { re: 0, im: 0 };
      if (Math.abs(off) < 1e-12) return value;
      const weight = weights[n]! / off;
      re += weight * value.re;
      im += weight * value.im;
      whole += weight;
    }
    return { re: re / whole, im: im / whole };
  };
}
