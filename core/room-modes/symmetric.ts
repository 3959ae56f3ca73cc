/**
 * Eigenvalues of a small dense symmetric matrix, and chosen rows of its eigenvectors: Householder to
 * three diagonals, then implicit QL. Only the rows that are asked for are carried along.
 *
 * Kept beside ml-matrix for the problem of some 440 rows that Lanczos solves again and again: with the
 * four rows that its test asks for 7 times as fast (193 ms against 1423), with all of them about as fast,
 * and in slices. Measured by `npm run bench`.
 * Source: J. H. Wilkinson, C. Reinsch, Linear Algebra (1971), II/2 and II/3.
 */

import { expectAtLeast } from '../quantity/shape';

export interface SmallEigen {
  /** Not sorted. */
  readonly values: Float64Array;
  /** Row r, column n: entry `rows[r]` of eigenvector n. */
  readonly rows: Float64Array;
}

/** Work between two yields, multiplications. */
const SLICE = 4e6;

/**
 * Eigen of the symmetric `size` x `size` matrix (row by row, `stride` wide; kept): all values, and of the
 * vectors the rows from `firstRow` on. Yields the share done.
 */
export function* symmetricEigen(
  matrix: Float64Array,
  size: number,
  stride: number,
  firstRow: number,
): Generator<number, SmallEigen> {
  expectAtLeast('The matrix', matrix, (size - 1) * stride + size);
  const a = new Float64Array(size * size);
  for (let i = 0; i < size; i++)
    for (let j = 0; j <= i; j++) a[i * size + j] = matrix[i * stride + j]!;
  const count = size - firstRow;
  // Row r of the vectors is column r here, so that a turn of two columns runs along memory.
  const turned = new Float64Array(size * count);
  for (let r = 0; r < count; r++) turned[(firstRow + r) * count + r] = 1;
  const d = new Float64Array(size);
  const e = new Float64Array(size + 1);
  const v = new Float64Array(size);
  const p = new Float64Array(size);
  const sums = new Float64Array(count);
  let work = 0;
  for (let k = 0; k + 1 < size; k++) {
    let norm = 0;
    for (let i = k + 1; i < size; i++) {
      v[i] = a[i * size + k]!;
      norm += v[i]! ** 2;
    }
    d[k] = a[k * size + k]!;
    const alpha = v[k + 1]! > 0 ? -Math.sqrt(norm) : Math.sqrt(norm);
    e[k] = alpha;
    const rest = norm - v[k + 1]! ** 2;
    if (rest <= 1e-32 * norm || norm === 0) {
      e[k] = v[k + 1]!;
      continue;
    }
    v[k + 1] = v[k + 1]! - alpha;
    const beta = 2 / (rest + v[k + 1]! ** 2);
    reflect(a, size, k + 1, v, p, beta);
    sums.fill(0);
    for (let j = k + 1; j < size; j++) {
      const [by, from] = [v[j]!, j * count];
      if (by === 0) continue;
      for (let r = 0; r < count; r++) sums[r] = sums[r]! + by * turned[from + r]!;
    }
    for (let j = k + 1; j < size; j++) {
      const [by, to] = [beta * v[j]!, j * count];
      if (by === 0) continue;
      for (let r = 0; r < count; r++) turned[to + r] = turned[to + r]! - by * sums[r]!;
    }
    work += (size - k) * (2 * (size - k) + 2 * count);
    if (work > SLICE) {
      work = 0;
      yield (0.5 * k) / size;
    }
  }
  d[size - 1] = a[size * size - 1]!;
  yield* implicitQl(d, e, turned, count);
  const rows = new Float64Array(count * size);
  for (let r = 0; r < count; r++)
    for (let j = 0; j < size; j++) rows[r * size + j] = turned[j * count + r]!;
  return { values: d, rows };
}

/** a becomes H a H with H = 1 - beta v vT, from row `from` on; the lower half is kept. */
function reflect(
  a: Float64Array,
  size: number,
  from: number,
  v: Float64Array,
  p: Float64Array,
  beta: number,
): void {
  p.fill(0);
  for (let i = from; i < size; i++) {
    const [row, vi] = [i * size, v[i]!];
    let sum = 0;
    for (let j = from; j < i; j++) {
      const value = a[row + j]!;
      sum += value * v[j]!;
      p[j] = p[j]! + value * vi;
    }
    p[i] = p[i]! + sum + a[row + i]! * vi;
  }
  let overlap = 0;
  for (let i = from; i < size; i++) {
    p[i] = beta * p[i]!;
    overlap += p[i]! * v[i]!;
  }
  const half = (beta * overlap) / 2;
  for (let i = from; i < size; i++) p[i] = p[i]! - half * v[i]!;
  for (let i = from; i < size; i++) {
    const [row, vi, pi] = [i * size, v[i]!, p[i]!];
    for (let j = from; j <= i; j++) {
      a[row + j] = a[row + j]! - vi * p[j]! - pi * v[j]!;
    }
  }
}

/** Implicit QL on diagonal d and off-diagonal e (e[i] between i and i + 1); turns the rows of z. */
function* implicitQl(
  d: Float64Array,
  e: Float64Array,
  z: Float64Array,
  width: number,
): Generator<number, void> {
  const size = d.length;
  let work = 0;
  e[size - 1] = 0;
  for (let l = 0; l < size; l++) {
    for (let turn = 0; turn < 80; turn++) {
      let m = l;
      for (; m + 1 < size; m++) {
        const scale = Math.abs(d[m]!) + Math.abs(d[m + 1]!);
        if (Math.abs(e[m]!) <= 2.3e-16 * scale) break;
      }
      if (m === l) break;
      let g = (d[l + 1]! - d[l]!) / (2 * e[l]!);
      let r = Math.sqrt(g * g + 1);
      g = d[m]! - d[l]! + e[l]! / (g + (g < 0 ? -r : r));
      let [s, c, p] = [1, 1, 0];
      let i = m - 1;
      for (; i >= l; i--) {
        const f = s * e[i]!;
        const b = c * e[i]!;
        r = Math.sqrt(f * f + g * g);
        e[i + 1] = r;
        if (r === 0) {
          d[i + 1] = d[i + 1]! - p;
          e[m] = 0;
          break;
        }
        s = f / r;
        c = g / r;
        g = d[i + 1]! - p;
        r = (d[i]! - g) * s + 2 * c * b;
        p = s * r;
        d[i + 1] = g + p;
        g = c * r - b;
        const [low, high] = [i * width, (i + 1) * width];
        for (let k = 0; k < width; k++) {
          const [x, y] = [z[low + k]!, z[high + k]!];
          z[high + k] = s * x + c * y;
          z[low + k] = c * x - s * y;
        }
      }
      if (r === 0 && i >= l) continue;
      d[l] = d[l]! - p;
      e[l] = g;
      e[m] = 0;
      work += 4 * (m - l) * width;
      if (work > SLICE) {
        work = 0;
        yield 0.5 + (0.5 * l) / size;
      }
    }
  }
}
