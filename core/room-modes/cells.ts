/**
 * The inside of one element, eliminated without a dense factor. Its points touch only their own
 * element, and there A is a sum over the axes, so it is solved by the eigenvectors of one axis at a
 * time: (Sx Sy Sz) D^-1 (Sx Sy Sz)T with D = sum of (4/w2) times the axes' eigenvalues, less the shift.
 * The points of its faces couple to the line of points behind them; those of its sides and corners do not.
 * Source: R. E. Lynch, J. R. Rice, D. H. Thomas, Numer. Math. 6 (1964) 185 (tensor product solve).
 */

import { expectAtLeast } from '../quantity/shape';
import { AXES } from '../room/faces';
import { cellAxis, type CellAxis } from './cell-axis';
import { subtractProduct } from './eliminate';
import { gllRule } from './gll';

export type Degrees = readonly [number, number, number];

/** Points inside, and on the six faces without their sides. */
export function cellCounts([p, q, r]: Degrees): { readonly inner: number; readonly faces: number } {
  const [a, b, c] = [p - 1, q - 1, r - 1];
  return { inner: a * b * c, faces: 2 * (b * c + a * c + a * b) };
}

/**
 * Eliminate the inside: D goes to `pivots`, the couplings of the face points to `couplings` (in the order
 * low and high face of x, y, z), and the Schur complement is returned (faces x faces, lower half row by row).
 * `scales` are the face points' inverse roots of mass, `widths` the element's in m.
 */
export function eliminateCell(
  degrees: Degrees,
  widths: readonly [number, number, number],
  shift: number,
  scales: Float64Array,
  pivots: Float64Array,
  couplings: Float64Array,
): Float64Array {
  const axes = degrees.map(cellAxis) as [CellAxis, CellAxis, CellAxis];
  const [nx, ny, nz] = [axes[0].inner, axes[1].inner, axes[2].inner];
  const { inner, faces } = cellCounts(degrees);
  expectAtLeast('The scales of a cell', scales, faces);
  expectAtLeast('The pivots of a cell', pivots, inner);
  expectAtLeast('The couplings of a cell', couplings, faces);
  const by = widths.map((width) => 4 / width ** 2);
  for (let a = 0, at = 0; a < nx; a++)
    for (let b = 0; b < ny; b++)
      for (let c = 0; c < nz; c++) {
        pivots[at++] =
          by[0]! * axes[0].values[a]! +
          by[1]! * axes[1].values[b]! +
          by[2]! * axes[2].values[c]! -
          shift;
      }
  const volume = (widths[0] * widths[1] * widths[2]) / 8;
  // Each face point's coupling in the eigenvectors: a product of three.
  const right = new Float64Array(faces * inner);
  const left = new Float64Array(faces * inner);
  let face = 0;
  for (const axis of AXES) {
    const [u, v] =
      axis === 0 ? ([1, 2] as const) : axis === 1 ? ([0, 2] as const) : ([0, 1] as const);
    const [wu, wv] = [gllRule(degrees[u]).weights, gllRule(degrees[v]).weights];
    for (const end of [0, 1] as const) {
      const spectral = turned(axes[axis], axes[axis].ends[end]);
      for (let i = 0; i < axes[u].inner; i++)
        for (let j = 0; j < axes[v].inner; j++, face++) {
          const area = Math.sqrt(volume * wu[i + 1]! * wv[j + 1]!);
          const coupling = by[axis]! * scales[face]! * area;
          couplings[face] = coupling;
          const factors = [spectral, spectral, spectral];
          factors[u] = axes[u].vectors.subarray(i * axes[u].inner, (i + 1) * axes[u].inner);
          factors[v] = axes[v].vectors.subarray(j * axes[v].inner, (j + 1) * axes[v].inner);
          const [fx, fy, fz] = factors;
          for (let a = 0, at = 0; a < nx; a++)
            for (let b = 0; b < ny; b++) {
              const ab = coupling * (fx?.[a] ?? 0) * (fy?.[b] ?? 0);
              for (let c = 0; c < nz; c++, at++) {
                const value = ab * (fz?.[c] ?? 0);
                right[face * inner + at] = value;
                left[face * inner + at] = value / pivots[at]!;
              }
            }
        }
    }
  }
  const complement = new Float64Array(faces * faces);
  subtractProduct(complement, faces, 0, 0, left, right, inner);
  const packed = new Float64Array((faces * (faces + 1)) / 2);
  for (let i = 0, at = 0; i < faces; i++)
    for (let j = 0; j <= i; j++) packed[at++] = complement[i * faces + j]!;
  return packed;
}

/** ST of a vector along one axis. */
function turned({ inner, vectors }: CellAxis, vector: Float64Array): Float64Array {
  return Float64Array.from({ length: inner }, (_, n) => {
    let sum = 0;
    for (let a = 0; a < inner; a++) sum += vectors[a * inner + n]! * vector[a]!;
    return sum;
  });
}

/** Room for `solveCell`. */
export interface CellSpace {
  readonly one: Float64Array;
  readonly two: Float64Array;
}

const MOST_INNER = 9 ** 3;
export const cellSpace = (): CellSpace => ({
  one: new Float64Array(4 * MOST_INNER),
  two: new Float64Array(4 * MOST_INNER),
});

/** Solve with the inside of a cell for four vectors; `space.one` holds them and the answer. */
export function solveCell(
  degrees: Degrees,
  pivots: Float64Array,
  first: number,
  { one, two }: CellSpace,
): void {
  const [x, y, z] = degrees.map(cellAxis) as [CellAxis, CellAxis, CellAxis];
  const [nx, ny, nz] = [x.inner, y.inner, z.inner];
  expectAtLeast('The vectors inside a cell', one, 4 * nx * ny * nz);
  expectAtLeast('The pivots', pivots, first + nx * ny * nz);
  turnLines(one, two, z.transposed, nx * ny, nz, 4);
  turnLines(two, one, y.transposed, nx, ny, 4 * nz);
  turnLines(one, two, x.transposed, 1, nx, 4 * ny * nz);
  const count = nx * ny * nz;
  for (let i = 0, at = 0; i < count; i++, at += 4) {
    const by = 1 / pivots[first + i]!;
    two[at] = two[at]! * by;
    two[at + 1] = two[at + 1]! * by;
    two[at + 2] = two[at + 2]! * by;
    two[at + 3] = two[at + 3]! * by;
  }
  turnLines(two, one, x.vectors, 1, nx, 4 * ny * nz);
  turnLines(one, two, y.vectors, nx, ny, 4 * nz);
  turnLines(two, one, z.vectors, nx * ny, nz, 4);
}

/** to[o, i, :] = sum over j of by[i, j] from[o, j, :], `inner` values side by side. */
function turnLines(
  from: Float64Array,
  to: Float64Array,
  by: Float64Array,
  outer: number,
  n: number,
  inner: number,
): void {
  for (let o = 0; o < outer; o++) {
    const base = o * n * inner;
    for (let i = 0; i < n; i++) {
      const row = i * n;
      for (let q = 0; q < inner; q += 4) {
        let s0 = 0;
        let s1 = 0;
        let s2 = 0;
        let s3 = 0;
        for (let j = 0, at = base + q; j < n; j++, at += inner) {
          const b = by[row + j]!;
          s0 += b * from[at]!;
          s1 += b * from[at + 1]!;
          s2 += b * from[at + 2]!;
          s3 += b * from[at + 3]!;
        }
        const at = base + i * inner + q;
        to[at] = s0;
        to[at + 1] = s1;
        to[at + 2] = s2;
        to[at + 3] = s3;
      }
    }
  }
}

/**
 * Visit the lines behind the face points: `visit(face point, its line's first place, step, ends)`; the line's
 * coupling to the face is `ends`. Order as in `eliminateCell`.
 */
function faceLines(
  degrees: Degrees,
  visit: (face: number, start: number, step: number, ends: Float64Array) => void,
): void {
  const axes = degrees.map(cellAxis) as [CellAxis, CellAxis, CellAxis];
  const steps = [axes[1].inner * axes[2].inner, axes[2].inner, 1] as const;
  let face = 0;
  for (const axis of AXES) {
    const [u, v] =
      axis === 0 ? ([1, 2] as const) : axis === 1 ? ([0, 2] as const) : ([0, 1] as const);
    for (const end of [0, 1] as const)
      for (let i = 0; i < axes[u].inner; i++)
        for (let j = 0; j < axes[v].inner; j++) {
          visit(face++, i * steps[u] + j * steps[v], steps[axis], axes[axis].ends[end]);
        }
  }
}

function expectFaces(
  degrees: Degrees,
  inside: Float64Array,
  couplings: Float64Array,
  offset: number,
  stays: Int32Array,
  stay: number,
): void {
  const { inner, faces } = cellCounts(degrees);
  expectAtLeast('The vectors inside a cell', inside, 4 * inner);
  expectAtLeast('The couplings', couplings, offset + faces);
  expectAtLeast('The rows that stay', stays, stay + faces);
}

/** Take from the face points what the inside (in `inside`) gives them; `block` in solver order. */
export function toFaces(
  degrees: Degrees,
  inside: Float64Array,
  couplings: Float64Array,
  offset: number,
  stays: Int32Array,
  stay: number,
  block: Float64Array,
): void {
  expectFaces(degrees, inside, couplings, offset, stays, stay);
  faceLines(degrees, (face, start, step, ends) => {
    let s0 = 0;
    let s1 = 0;
    let s2 = 0;
    let s3 = 0;
    for (let a = 0, at = 4 * start; a < ends.length; a++, at += 4 * step) {
      const by = ends[a]!;
      s0 += by * inside[at]!;
      s1 += by * inside[at + 1]!;
      s2 += by * inside[at + 2]!;
      s3 += by * inside[at + 3]!;
    }
    const coupling = couplings[offset + face]!;
    const to = 4 * stays[stay + face]!;
    block[to] = block[to]! - coupling * s0;
    block[to + 1] = block[to + 1]! - coupling * s1;
    block[to + 2] = block[to + 2]! - coupling * s2;
    block[to + 3] = block[to + 3]! - coupling * s3;
  });
}

/** Take from the inside (in `inside`) what the face points give it. */
export function fromFaces(
  degrees: Degrees,
  inside: Float64Array,
  couplings: Float64Array,
  offset: number,
  stays: Int32Array,
  stay: number,
  block: Float64Array,
): void {
  expectFaces(degrees, inside, couplings, offset, stays, stay);
  faceLines(degrees, (face, start, step, ends) => {
    const coupling = couplings[offset + face]!;
    const from = 4 * stays[stay + face]!;
    const b0 = coupling * block[from]!;
    const b1 = coupling * block[from + 1]!;
    const b2 = coupling * block[from + 2]!;
    const b3 = coupling * block[from + 3]!;
    for (let a = 0, at = 4 * start; a < ends.length; a++, at += 4 * step) {
      const by = ends[a]!;
      inside[at] = inside[at]! - by * b0;
      inside[at + 1] = inside[at + 1]! - by * b1;
      inside[at + 2] = inside[at + 2]! - by * b2;
      inside[at + 3] = inside[at + 3]! - by * b3;
    }
  });
}
