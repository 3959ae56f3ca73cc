/**
 * The dense linear algebra of the solver beside a general library, of the sizes that rooms have. Part of
 * `npm run bench`; the heads of `symmetric.ts` and `edge-model.ts` quote it.
 */

import { CholeskyDecomposition, EigenvalueDecomposition, Matrix } from 'ml-matrix';
import { finish } from '../../core/quantity/slices';
import { missedPerSlope } from '../../core/room-modes/edge-model';
import { symmetricEigen } from '../../core/room-modes/symmetric';

const RUNS = 5;
/** Rows of the Lanczos problem of a furnished room, and half its band. */
const SIZE = 440;
const HALF_BAND = 7;
/** The highest degree of an element, on every side of an edge. */
const DEGREE = 9;

/** Median of the time that the process itself worked, ms: other work on the machine does not count. */
function workMs(work: () => unknown): number {
  work();
  const times = Array.from({ length: RUNS }, () => {
    const before = process.cpuUsage().user;
    work();
    return (process.cpuUsage().user - before) / 1000;
  });
  return times.sort((a, b) => a - b)[Math.floor(RUNS / 2)] ?? 0;
}

/** A banded symmetric matrix of numbers between -1 and 1, the same every time. */
function banded(): Float64Array {
  const matrix = new Float64Array(SIZE * SIZE);
  let state = 1;
  for (let i = 0; i < SIZE; i++)
    for (let j = Math.max(0, i - HALF_BAND); j <= i; j++) {
      state = (Math.imul(state, 1664525) + 1013904223) | 0;
      matrix[i * SIZE + j] = matrix[j * SIZE + i] = state / 2 ** 31;
    }
  return matrix;
}

export function measureSmallAlgebra(): void {
  const matrix = banded();
  const general = Matrix.from1DArray(SIZE, SIZE, matrix);
  const side = { widthM: 0.4, degree: DEGREE };
  const edge = { air: [side, side], solid: [side, side] } as const;
  const unknowns = (2 * DEGREE + 1) ** 2;
  const dense = Matrix.eye(unknowns, unknowns, 4);
  for (let i = 1; i < unknowns; i++) {
    dense.set(i, i - 1, -1);
    dense.set(i - 1, i, -1);
  }
  const load = Matrix.ones(unknowns, 1);
  const rows: readonly (readonly [string, () => unknown])[] = [
    [
      'eigenvalues, four rows of the vectors',
      () => finish(symmetricEigen(matrix, SIZE, SIZE, SIZE - 4)),
    ],
    ['eigenvalues, all of the vectors', () => finish(symmetricEigen(matrix, SIZE, SIZE, 0))],
    [
      'the same by ml-matrix, which gives all',
      () => new EigenvalueDecomposition(general, { assumeSymmetric: true }),
    ],
    ['an edge of degree 9, all of it', () => missedPerSlope(edge)],
    [
      `Cholesky of its ${unknowns} unknowns by ml-matrix`,
      () => new CholeskyDecomposition(dense).solve(load),
    ],
  ];
  console.log(
    `\nDense linear algebra, ${SIZE} rows; work of this process in ms, median of ${RUNS} runs.`,
  );
  for (const [name, work] of rows)
    console.log(`${name.padEnd(46)}${workMs(work).toFixed(1).padStart(9)}`);
}
