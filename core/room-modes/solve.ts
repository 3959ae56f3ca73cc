/** Solving with the factor. */

import { expectLength } from '../quantity/shape';
import { cellSpace, fromFaces, solveCell, toFaces } from './cells';
import { FIELDS, type Factor } from './factor';
import { backwardFour, forwardFour } from './four-vectors';

/** Solve (A - shift) x = b for four vectors in place; `block` is count x 4. */
export function solveFour(factor: Factor, block: Float64Array, local: Float64Array): void {
  const { fronts, stays, entries, pivots } = factor;
  expectLength('The block of four vectors', block, 4 * factor.count);
  const cells = cellSpace();
  for (let at = 0; at < fronts.length; at += FIELDS) {
    const first = fronts[at]!;
    const going = fronts[at + 1]!;
    const staying = fronts[at + 2]!;
    const entry = fronts[at + 3]!;
    const stay = fronts[at + 4]!;
    if (going === 0) continue;
    if (fronts[at + 5]) {
      const degrees = [fronts[at + 5] ?? 2, fronts[at + 6] ?? 2, fronts[at + 7] ?? 2] as const;
      copyRows(block, 4 * first, cells.one, 0, 4 * going);
      solveCell(degrees, pivots, first, cells);
      toFaces(degrees, cells.one, entries, entry, stays, stay, block);
      continue;
    }
    copyRows(block, 4 * first, local, 0, 4 * going);
    forwardFour(entries, entry, going + staying, going, local);
    copyRows(local, 0, block, 4 * first, 4 * going);
    for (let i = 0, from = 4 * going; i < staying; i++, from += 4) {
      const to = 4 * stays[stay + i]!;
      block[to] = block[to]! - local[from]!;
      block[to + 1] = block[to + 1]! - local[from + 1]!;
      block[to + 2] = block[to + 2]! - local[from + 2]!;
      block[to + 3] = block[to + 3]! - local[from + 3]!;
    }
  }
  for (let at = fronts.length - FIELDS; at >= 0; at -= FIELDS) {
    const first = fronts[at]!;
    const going = fronts[at + 1]!;
    const staying = fronts[at + 2]!;
    const entry = fronts[at + 3]!;
    const stay = fronts[at + 4]!;
    if (going === 0) continue;
    if (fronts[at + 5]) {
      const degrees = [fronts[at + 5] ?? 2, fronts[at + 6] ?? 2, fronts[at + 7] ?? 2] as const;
      copyRows(block, 4 * first, cells.one, 0, 4 * going);
      fromFaces(degrees, cells.one, entries, entry, stays, stay, block);
      solveCell(degrees, pivots, first, cells);
      copyRows(cells.one, 0, block, 4 * first, 4 * going);
      continue;
    }
    for (let i = 0, row = 0; i < going; i++, row += 4) {
      const inverse = 1 / pivots[first + i]!;
      for (let n = 0; n < 4; n++) local[row + n] = block[4 * first + row + n]! * inverse;
    }
    for (let i = 0, to = 4 * going; i < staying; i++, to += 4) {
      const from = 4 * stays[stay + i]!;
      local[to] = block[from]!;
      local[to + 1] = block[from + 1]!;
      local[to + 2] = block[from + 2]!;
      local[to + 3] = block[from + 3]!;
    }
    backwardFour(entries, entry, going + staying, going, local);
    copyRows(local, 0, block, 4 * first, 4 * going);
  }
}

function copyRows(
  from: Float64Array,
  start: number,
  to: Float64Array,
  at: number,
  count: number,
): void {
  for (let i = 0; i < count; i++) to[at + i] = from[start + i]!;
}

/** Unknowns of the largest front, from the factor alone. */
export function largestLocal({ fronts }: Factor): number {
  let most = 0;
  for (let at = 0; at < fronts.length; at += FIELDS) {
    most = Math.max(most, fronts[at + 1]! + fronts[at + 2]!);
  }
  return most;
}
