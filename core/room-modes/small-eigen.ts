/**
 * Eigenvalues and eigenvectors of a matrix of some ten rows, by the general library: it is solved once
 * for a degree or a source. What is large and repeated has `symmetric.ts`.
 */

import { EigenvalueDecomposition, Matrix } from 'ml-matrix';
import { expectLength } from '../quantity/shape';
import type { SmallEigen } from './symmetric';

/** Of the symmetric `size` x `size` matrix, row by row: values rising, all rows of the vectors. */
export function smallEigen(matrix: Float64Array, size: number): SmallEigen {
  expectLength('The matrix', matrix, size * size);
  const { realEigenvalues, eigenvectorMatrix } = new EigenvalueDecomposition(
    Matrix.from1DArray(size, size, matrix),
    { assumeSymmetric: true },
  );
  return {
    values: Float64Array.from(realEigenvalues),
    rows: Float64Array.from(eigenvectorMatrix.to1DArray()),
  };
}
