/**
 * Elimination of a front, written out so that sums stay in registers.
 */

import { expectAtLeast } from '../quantity/shape';

/** Columns of a front that are eliminated together. */
const PANEL = 12;

/** Room for a front's work; grows as needed. */
export interface PanelSpace {
  left: Float64Array;
  right: Float64Array;
}

export const panelSpace = (): PanelSpace => ({
  left: new Float64Array(0),
  right: new Float64Array(0),
});

/**
 * Eliminate the first `going` unknowns of the symmetric front (lower half, row by row, `size` wide):
 * L D LT without exchange of rows. L goes to `factor` (size x going, row by row, unit diagonal), D
 * to `pivots`; what is left in the front's lower right is the Schur complement.
 */
export function eliminate(
  front: Float64Array,
  size: number,
  going: number,
  factor: Float64Array,
  offset: number,
  pivots: Float64Array,
  firstPivot: number,
  space: PanelSpace,
): void {
  expectAtLeast('The front', front, size * size);
  expectAtLeast('The factor', factor, offset + size * going);
  expectAtLeast('The pivots', pivots, firstPivot + going);
  const width = size + 4;
  if (space.left.length < width * PANEL) {
    space.left = new Float64Array(width * PANEL);
    space.right = new Float64Array(width * PANEL);
  }
  const { left, right } = space;
  for (let from = 0; from < going; from += PANEL) {
    const to = Math.min(from + PANEL, going);
    const depth = to - from;
    for (let i = from; i < size; i++) {
      const row = (i - from) * depth;
      const last = Math.min(i, to - 1);
      for (let j = from; j <= last; j++) {
        let sum = front[i * size + j]!;
        const other = (j - from) * depth;
        for (let t = 0; t < j - from; t++) sum -= left[row + t]! * right[other + t]!;
        left[row + j - from] = sum;
        if (i === j) {
          pivots[firstPivot + j] = sum;
          right[row + j - from] = 1;
        } else right[row + j - from] = sum / pivots[firstPivot + j]!;
        factor[offset + i * going + j] = right[row + j - from]!;
      }
    }
    subtractProduct(front, size, from, to, left, right, depth);
  }
}

/** front[i, j] -= left[i] . right[j] for to <= j <= i, in tiles of four by four. */
export function subtractProduct(
  front: Float64Array,
  size: number,
  from: number,
  to: number,
  left: Float64Array,
  right: Float64Array,
  depth: number,
): void {
  for (let i = to; i < size; i += 4) {
    const rows = Math.min(4, size - i);
    const l0 = (i - from) * depth;
    const l1 = l0 + (rows > 1 ? depth : 0);
    const l2 = l0 + (rows > 2 ? 2 * depth : 0);
    const l3 = l0 + (rows > 3 ? 3 * depth : 0);
    for (let j = to; j < i + rows; j += 2) {
      const r0 = (j - from) * depth;
      const r1 = r0 + (j + 1 < size ? depth : 0);
      let s00 = 0,
        s01 = 0,
        s10 = 0,
        s11 = 0,
        s20 = 0,
        s21 = 0,
        s30 = 0,
        s31 = 0;
      for (let t = 0; t < depth; t++) {
        const b0 = right[r0 + t]!;
        const b1 = right[r1 + t]!;
        const a0 = left[l0 + t]!;
        s00 += a0 * b0;
        s01 += a0 * b1;
        const a1 = left[l1 + t]!;
        s10 += a1 * b0;
        s11 += a1 * b1;
        const a2 = left[l2 + t]!;
        s20 += a2 * b0;
        s21 += a2 * b1;
        const a3 = left[l3 + t]!;
        s30 += a3 * b0;
        s31 += a3 * b1;
      }
      const two = j + 1 < size;
      let at = i * size + j;
      front[at] = front[at]! - s00;
      if (two) front[at + 1] = front[at + 1]! - s01;
      if (rows > 1) {
        at += size;
        front[at] = front[at]! - s10;
        if (two) front[at + 1] = front[at + 1]! - s11;
      }
      if (rows > 2) {
        at += size;
        front[at] = front[at]! - s20;
        if (two) front[at + 1] = front[at + 1]! - s21;
      }
      if (rows > 3) {
        at += size;
        front[at] = front[at]! - s30;
        if (two) front[at + 1] = front[at + 1]! - s31;
      }
    }
  }
}
