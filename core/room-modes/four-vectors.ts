/**
 * Work on four vectors at once, written out so that sums stay in registers: each entry of a factor is
 * fetched once for four of them. A block of four vectors is stored row by row.
 */

import { expectAtLeast } from '../quantity/shape';

/**
 * Forward substitution of four vectors with one front's factor. `local` holds size x 4 values: those
 * of the unknowns that go, then room where what the others lose is put.
 */
export function forwardFour(
  factor: Float64Array,
  offset: number,
  size: number,
  going: number,
  local: Float64Array,
): void {
  expectFront(factor, offset, size, going, local);
  for (let i = 1; i < size; i++) {
    const last = Math.min(i, going);
    const row = offset + i * going;
    let s0 = 0,
      s1 = 0,
      s2 = 0,
      s3 = 0;
    if (i >= going && i + 1 < size) {
      let u0 = 0,
        u1 = 0,
        u2 = 0,
        u3 = 0;
      const next = row + going;
      for (let j = 0; j < last; j++) {
        const l = factor[row + j]!;
        const m = factor[next + j]!;
        const x0 = local[4 * j]!;
        s0 += l * x0;
        u0 += m * x0;
        const x1 = local[4 * j + 1]!;
        s1 += l * x1;
        u1 += m * x1;
        const x2 = local[4 * j + 2]!;
        s2 += l * x2;
        u2 += m * x2;
        const x3 = local[4 * j + 3]!;
        s3 += l * x3;
        u3 += m * x3;
      }
      const at = 4 * i;
      local[at] = s0;
      local[at + 1] = s1;
      local[at + 2] = s2;
      local[at + 3] = s3;
      local[at + 4] = u0;
      local[at + 5] = u1;
      local[at + 6] = u2;
      local[at + 7] = u3;
      i++;
      continue;
    }
    for (let j = 0; j < last; j++) {
      const l = factor[row + j]!;
      s0 += l * local[4 * j]!;
      s1 += l * local[4 * j + 1]!;
      s2 += l * local[4 * j + 2]!;
      s3 += l * local[4 * j + 3]!;
    }
    const at = 4 * i;
    if (i < going) {
      local[at] = local[at]! - s0;
      local[at + 1] = local[at + 1]! - s1;
      local[at + 2] = local[at + 2]! - s2;
      local[at + 3] = local[at + 3]! - s3;
    } else {
      local[at] = s0;
      local[at + 1] = s1;
      local[at + 2] = s2;
      local[at + 3] = s3;
    }
  }
}

function expectFront(
  factor: Float64Array,
  offset: number,
  size: number,
  going: number,
  local: Float64Array,
): void {
  expectAtLeast('The factor of a front', factor, offset + size * going);
  expectAtLeast('The vectors of a front', local, 4 * size);
}

/** Rows of a factor that are gone through together, so that they stay in the cache. */
const ROWS = 24;

/** Backward substitution of four vectors; `local` holds size x 4 values, the first `going` rows change. */
export function backwardFour(
  factor: Float64Array,
  offset: number,
  size: number,
  going: number,
  local: Float64Array,
): void {
  expectFront(factor, offset, size, going, local);
  for (let from = going; from < size; from += ROWS) {
    const to = Math.min(from + ROWS, size);
    for (let j = going - 1; j >= 1; j -= 2) takeTwo(factor, offset, going, local, j, from, to);
    if (going % 2 === 1) takeTwo(factor, offset, going, local, 0, from, to);
  }
  let j = going - 1;
  for (; j >= 1; j -= 2) {
    takeTwo(factor, offset, going, local, j, j + 1, going);
    const m = factor[offset + j * going + j - 1]!;
    for (let at = 4 * j; at < 4 * j + 4; at++) {
      local[at - 4] = local[at - 4]! - m * local[at]!;
    }
  }
  if (j === 0) takeTwo(factor, offset, going, local, 0, 1, going);
}

/** Take what rows `from` to `to` give from unknowns j and j - 1 (from 0 alone where j is 0). */
function takeTwo(
  factor: Float64Array,
  offset: number,
  going: number,
  local: Float64Array,
  j: number,
  from: number,
  to: number,
): void {
  const step = j > 0 ? 1 : 0;
  let s0 = 0;
  let s1 = 0;
  let s2 = 0;
  let s3 = 0;
  let u0 = 0;
  let u1 = 0;
  let u2 = 0;
  let u3 = 0;
  for (let i = 4 * from, at = offset + from * going + j; i < 4 * to; i += 4, at += going) {
    const l = factor[at]!;
    const m = factor[at - step]!;
    const x0 = local[i]!;
    s0 += l * x0;
    u0 += m * x0;
    const x1 = local[i + 1]!;
    s1 += l * x1;
    u1 += m * x1;
    const x2 = local[i + 2]!;
    s2 += l * x2;
    u2 += m * x2;
    const x3 = local[i + 3]!;
    s3 += l * x3;
    u3 += m * x3;
  }
  const at = 4 * j;
  local[at] = local[at]! - s0;
  local[at + 1] = local[at + 1]! - s1;
  local[at + 2] = local[at + 2]! - s2;
  local[at + 3] = local[at + 3]! - s3;
  if (step === 0) return;
  local[at - 4] = local[at - 4]! - u0;
  local[at - 3] = local[at - 3]! - u1;
  local[at - 2] = local[at - 2]! - u2;
  local[at - 1] = local[at - 1]! - u3;
}

/** a^T b of two blocks of `rows` x 4, into `into` (4 x 4, row: column of a). */
export function gramFour(
  a: Float64Array,
  b: Float64Array,
  from: number,
  to: number,
  into: Float64Array,
): void {
  expectAtLeast('The first block', a, 4 * to);
  expectAtLeast('The second block', b, 4 * to);
  expectAtLeast('The product', into, 16);
  for (let half = 0; half < 4; half += 2) {
    let s0 = 0,
      s1 = 0,
      s2 = 0,
      s3 = 0,
      u0 = 0,
      u1 = 0,
      u2 = 0,
      u3 = 0;
    for (let at = 4 * from; at < 4 * to; at += 4) {
      const p = a[at + half]!;
      const q = a[at + half + 1]!;
      const b0 = b[at]!;
      s0 += p * b0;
      u0 += q * b0;
      const b1 = b[at + 1]!;
      s1 += p * b1;
      u1 += q * b1;
      const b2 = b[at + 2]!;
      s2 += p * b2;
      u2 += q * b2;
      const b3 = b[at + 3]!;
      s3 += p * b3;
      u3 += q * b3;
    }
    const at = 4 * half;
    into[at] = into[at]! + s0;
    into[at + 1] = into[at + 1]! + s1;
    into[at + 2] = into[at + 2]! + s2;
    into[at + 3] = into[at + 3]! + s3;
    into[at + 4] = into[at + 4]! + u0;
    into[at + 5] = into[at + 5]! + u1;
    into[at + 6] = into[at + 6]! + u2;
    into[at + 7] = into[at + 7]! + u3;
  }
}

/** b -= a c, a and b blocks of `rows` x 4, c 4 x 4. */
export function subtractFour(
  a: Float64Array,
  c: Float64Array,
  b: Float64Array,
  from: number,
  to: number,
): void {
  expectAtLeast('The block', a, 4 * to);
  expectAtLeast('The block that is changed', b, 4 * to);
  expectAtLeast('The factors', c, 16);
  for (let half = 0; half < 4; half += 2) {
    const c00 = c[half]!,
      c01 = c[half + 1]!;
    const c10 = c[4 + half]!,
      c11 = c[5 + half]!;
    const c20 = c[8 + half]!,
      c21 = c[9 + half]!;
    const c30 = c[12 + half]!,
      c31 = c[13 + half]!;
    for (let at = 4 * from; at < 4 * to; at += 4) {
      const a0 = a[at]!,
        a1 = a[at + 1]!,
        a2 = a[at + 2]!,
        a3 = a[at + 3]!;
      b[at + half] = b[at + half]! - a0 * c00 - a1 * c10 - a2 * c20 - a3 * c30;
      b[at + half + 1] = b[at + half + 1]! - a0 * c01 - a1 * c11 - a2 * c21 - a3 * c31;
    }
  }
}
