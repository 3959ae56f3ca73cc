/** Solving with the factor. */

import { cellSpace, fromFaces, solveCell, toFaces } from './cells';
import { FIELDS, type Factor } from './factor';
import { backwardFour, forwardFour } from './four-vectors';

/** Solve (A - shift) x = b for four vectors in place; `block` is count x 4. */
export function solveFour(factor: Factor, block: Float64Array, local: Float64Array): void {
  const { fronts, stays, entries, pivots } = factor;
  const cells = cellSpace();
  for (let at = 0; at < fronts.length; at += FIELDS) {
    const first = fronts[at] ?? 0;
    const going = fronts[at + 1] ?? 0;
    const staying = fronts[at + 2] ?? 0;
    const entry = fronts[at + 3] ?? 0;
    const stay = fronts[at + 4] ?? 0;
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
      const to = 4 * (stays[stay + i] ?? 0);
      block[to] = (block[to] ?? 0) - (local[from] ?? 0);
      block[to + 1] = (block[to + 1] ?? 0) - (local[from + 1] ?? 0);
      block[to + 2] = (block[to + 2] ?? 0) - (local[from + 2] ?? 0);
      block[to + 3] = (block[to + 3] ?? 0) - (local[from + 3] ?? 0);
    }
  }
  for (let at = fronts.length - FIELDS; at >= 0; at -= FIELDS) {
    const first = fronts[at] ?? 0;
    const going = fronts[at + 1] ?? 0;
    const staying = fronts[at + 2] ?? 0;
    const entry = fronts[at + 3] ?? 0;
    const stay = fronts[at + 4] ?? 0;
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
      const inverse = 1 / (pivots[first + i] ?? 1);
      for (let n = 0; n < 4; n++) local[row + n] = (block[4 * first + row + n] ?? 0) * inverse;
    }
    for (let i = 0, to = 4 * going; i < staying; i++, to += 4) {
      const from = 4 * (stays[stay + i] ?? 0);
      local[to] = block[from] ?? 0;
      local[to + 1] = block[from + 1] ?? 0;
      local[to + 2] = block[from + 2] ?? 0;
      local[to + 3] = block[from + 3] ?? 0;
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
  for (let i = 0; i < count; i++) to[at + i] = from[start + i] ?? 0;
}

/** Unknowns of the largest front, from the factor alone. */
export function largestLocal({ fronts }: Factor): number {
  let most = 0;
  for (let at = 0; at < fronts.length; at += FIELDS) {
    most = Math.max(most, (fronts[at + 1] ?? 0) + (fronts[at + 2] ?? 0));
  }
  return most;
}
