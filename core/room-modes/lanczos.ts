/**
 * Block Lanczos on (A - shift)^-1 with blocks of four: the eigenvalues next to the shift come out
 * first, and up to four that coincide come out together. Every block is made orthogonal to all
 * before it.
 * Source: T. Ericsson, A. Ruhe, Math. Comp. 35 (1980) 1251 (spectral transformation); R. G. Grimes,
 * J. G. Lewis, H. D. Simon, SIAM J. Matrix Anal. 15 (1994) 228 (blocks, and the count of negative
 * pivots as the check that none is missing).
 */

import type { Factor } from './factor';
import { gramFour, subtractFour } from './four-vectors';
import { solveFour } from './solve';
import { symmetricEigen, type SmallEigen } from './symmetric';

export interface LanczosResult {
  /** Eigenvalues from 0 to the limit, rising. */
  readonly values: Float64Array;
  /** Per eigenvalue: its vector's part of each basis vector; column after column. */
  readonly parts: readonly Float64Array[];
  readonly basis: readonly Float64Array[];
  readonly complete: boolean;
  readonly largestResidual: number;
}

const BLOCK = 4;
/** Vectors for each expected mode before the first look at what has settled; 28 more. */
const FIRST_TEST = 1.3;
/** Error of an eigenvalue that is allowed before its square makes it small. */
const TOLERANCE = 5e-4;

/**
 * Eigenpairs with eigenvalue from 0 to `limit`. `expected` is a guess of how many there are.
 * Yields the share done.
 */
export function* lanczos(
  factor: Factor,
  limit: number,
  expected: number,
  localSize: number,
): Generator<number, LanczosResult> {
  const { count, shift } = factor;
  const most = Math.min(count - (count % BLOCK), BLOCK * Math.ceil((4 * expected + 80) / BLOCK));
  const basis: Float64Array[] = [];
  const t = new Float64Array((most + BLOCK) ** 2);
  const stride = most + BLOCK;
  const local = new Float64Array(4 * localSize + 8);
  const between = new Float64Array(16);
  let block = randomBlock(count);
  orthonormalise(block, between);
  let firstTest = BLOCK * Math.ceil((FIRST_TEST * expected + 28) / BLOCK);
  for (let size = BLOCK; ; size += BLOCK) {
    basis.push(block);
    const next = block.slice();
    solveFour(factor, next, local);
    orthogonalise(basis, next, t, stride);
    const sound = orthonormalise(next, between);
    for (let i = 0; i < BLOCK; i++)
      for (let j = 0; j < BLOCK; j++) {
        // next_old = next R: R below the diagonal block, its transpose beside it.
        const r = between[i * 4 + j]!;
        t[(size + i) * stride + size - BLOCK + j] = r;
        t[(size - BLOCK + j) * stride + size + i] = r;
      }
    const last = size + BLOCK > most || !sound;
    if (size >= firstTest || last) {
      const tail = yield* symmetricEigen(t, size, stride, size - BLOCK);
      const judged = judge(tail, between, factor, limit);
      if (judged.converged || last) {
        yield 0.9;
        const all = yield* symmetricEigen(t, size, stride, 0);
        return {
          ...wanted(all, size, shift, limit),
          basis,
          complete: judged.converged,
          largestResidual: judged.largest,
        };
      }
      firstTest = size + BLOCK;
    }
    block = next;
    yield Math.min(0.9, size / (1.5 * expected + 20));
  }
}

/** Numbers between -1 and 1, the same every time (a linear congruence; Numerical Recipes, ch. 7). */
function randomBlock(count: number): Float64Array {
  let state = 1;
  return Float64Array.from({ length: BLOCK * count }, () => {
    state = (Math.imul(state, 1664525) + 1013904223) | 0;
    return state / 2 ** 31;
  });
}

/** Take from `next` its part along the whole basis; the parts along the last block go into `t`. */
function orthogonalise(
  basis: readonly Float64Array[],
  next: Float64Array,
  t: Float64Array,
  stride: number,
): void {
  const rows = next.length / 4;
  const size = BLOCK * basis.length;
  const gram = new Float64Array(16);
  for (let b = basis.length - 1; b >= 0; b--) {
    const known = basis[b];
    if (!known) continue;
    gram.fill(0);
    gramFour(known, next, 0, rows, gram);
    subtractFour(known, gram, next, 0, rows);
    if (b !== basis.length - 1) continue;
    for (let i = 0; i < BLOCK; i++)
      for (let j = 0; j < BLOCK; j++) {
        const part = (gram[i * 4 + j]! + gram[j * 4 + i]!) / 2;
        t[(size - BLOCK + i) * stride + size - BLOCK + j] = part;
      }
  }
}

/**
 * Make the four columns orthonormal by Cholesky of their products, twice. `r` (4 x 4) becomes the
 * upper triangle with old = new r. False where the columns depend on each other.
 */
function orthonormalise(block: Float64Array, r: Float64Array): boolean {
  const rows = block.length / 4;
  const gram = new Float64Array(16);
  const once = new Float64Array(16);
  r.fill(0);
  for (let i = 0; i < 4; i++) r[i * 4 + i] = 1;
  for (let turn = 0; turn < 2; turn++) {
    gram.fill(0);
    gramFour(block, block, 0, rows, gram);
    for (let i = 0; i < 4; i++) {
      for (let j = i; j < 4; j++) {
        let sum = gram[i * 4 + j]!;
        for (let k = 0; k < i; k++) sum -= once[k * 4 + i]! * once[k * 4 + j]!;
        if (i === j && sum <= 1e-20 * gram[i * 4 + i]!) return false;
        once[i * 4 + j] = i === j ? Math.sqrt(sum) : sum / once[i * 4 + i]!;
      }
    }
    for (let row = 0; row < rows; row++)
      for (let j = 0; j < 4; j++) {
        let value = block[row * 4 + j]!;
        for (let k = 0; k < j; k++) value -= block[row * 4 + k]! * once[k * 4 + j]!;
        block[row * 4 + j] = value / once[j * 4 + j]!;
      }
    const product = new Float64Array(16);
    for (let i = 0; i < 4; i++)
      for (let j = i; j < 4; j++)
        for (let k = i; k <= j; k++) {
          product[i * 4 + j] = product[i * 4 + j]! + once[i * 4 + k]! * r[k * 4 + j]!;
        }
    r.set(product);
  }
  return true;
}

interface Judged {
  readonly converged: boolean;
  readonly largest: number;
}

/** Whether all eigenvalues up to the limit have settled and none below the shift is missing. */
function judge(tail: SmallEigen, r: Float64Array, factor: Factor, limit: number): Judged {
  const { values, rows } = tail;
  const size = values.length;
  const floor = 0.02 * limit;
  let [largest, below] = [0, 0];
  for (let n = 0; n < size; n++) {
    const theta = values[n]!;
    const lambda = factor.shift + 1 / theta;
    if (lambda < -floor || lambda > limit) continue;
    if (theta < 0) below++;
    let square = 0;
    for (let i = 0; i < 4; i++) {
      let sum = 0;
      for (let j = i; j < 4; j++) sum += r[i * 4 + j]! * rows[j * size + n]!;
      square += sum * sum;
    }
    const error = Math.sqrt(square) / theta ** 2 / Math.max(Math.abs(lambda), floor);
    largest = Math.max(largest, error);
  }
  return { converged: largest < TOLERANCE && below === factor.below, largest };
}

function wanted(all: SmallEigen, size: number, shift: number, limit: number) {
  const found = [...all.values]
    .map((theta, n) => ({ lambda: shift + 1 / theta, n }))
    .filter(({ lambda }) => lambda <= limit && lambda > -0.02 * limit)
    .sort((a, b) => a.lambda - b.lambda);
  return {
    values: Float64Array.from(found, ({ lambda }) => lambda),
    parts: found.map(({ n }) =>
      Float64Array.from({ length: size }, (_, i) => all.rows[i * size + n]!),
    ),
  };
}
