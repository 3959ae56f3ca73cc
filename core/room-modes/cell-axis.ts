/** One axis of the inside of an element, solved once for each degree. */

import { gllRule } from './gll';
import { smallEigen } from './small-eigen';

/** One axis from -1 to 1: stiffness between the inner points with the weights taken to one. */
export interface CellAxis {
  /** Inner points, p - 1. */
  readonly inner: number;
  readonly values: Float64Array;
  /** Row point, column eigenvector, and the transpose. */
  readonly vectors: Float64Array;
  readonly transposed: Float64Array;
  /** Coupling of each inner point to the low and the high end, weight of the inner point taken out. */
  readonly ends: readonly [Float64Array, Float64Array];
}

const known = new Map<number, CellAxis>();

/** The axis of degree 2 or more; computed once. */
export function cellAxis(degree: number): CellAxis {
  const made = known.get(degree) ?? makeAxis(degree);
  known.set(degree, made);
  return made;
}

function makeAxis(degree: number): CellAxis {
  const { weights, stiffness } = gllRule(degree);
  const inner = degree - 1;
  const matrix = new Float64Array(inner * inner);
  const root = (a: number): number => Math.sqrt(weights[a]!);
  for (let a = 0; a < inner; a++)
    for (let b = 0; b < inner; b++) {
      const entry = stiffness[(a + 1) * (degree + 1) + b + 1]!;
      matrix[a * inner + b] = entry / root(a + 1) / root(b + 1);
    }
  const { values, rows } = smallEigen(matrix, inner);
  const transposed = new Float64Array(inner * inner);
  for (let a = 0; a < inner; a++)
    for (let n = 0; n < inner; n++) transposed[n * inner + a] = rows[a * inner + n]!;
  const end = (at: number): Float64Array =>
    Float64Array.from(
      { length: inner },
      (_, a) => stiffness[(a + 1) * (degree + 1) + at]! / root(a + 1),
    );
  return { inner, values, vectors: rows, transposed, ends: [end(0), end(degree)] };
}
