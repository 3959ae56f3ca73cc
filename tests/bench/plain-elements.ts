/**
 * The modes as built by a straightforward method, to measure against: quadratic elements of even width
 * with lumped mass, the matrix in a band in the order of the lattice, factored without pivoting, and
 * Lanczos one vector at a time with the small problem left to a general-purpose library.
 */

import { EigenvalueDecomposition, Matrix } from 'ml-matrix';
import { elementsWith, type Elements } from '../../core/room-modes/elements';
import { gllRule } from '../../core/room-modes/gll';
import { airGrid } from '../../core/room-modes/grid';
import type { RoomSpace } from '../../core/room-modes/room-modes';

export interface PlainModes {
  readonly frequenciesHz: readonly number[];
  readonly unknowns: number;
  /** Half width of the band. */
  readonly band: number;
}

const DEGREE = 2;
/** Shift as a share of the limit's eigenvalue, and steps for each mode looked for. */
const SHIFT_SHARE = 0.64;
const STEPS_PER_MODE = 3;

export function plainModes(space: RoomSpace, limitHz: number, widthM: number): PlainModes {
  const gridded = airGrid(space.size, space.solids);
  if (!gridded.ok) throw new Error('The room has no modes.');
  const divisions = gridded.grid.planes.map((planes) =>
    Array.from(planes.subarray(1), (high, n) => ({
      parts: Math.ceil((high - (planes[n] ?? 0)) / widthM),
      degree: DEGREE,
    })),
  );
  const matrix = assembled(elementsWith(gridded.grid, divisions));
  const limit = ((2 * Math.PI * limitHz) / space.speedMS) ** 2;
  const shift = SHIFT_SHARE * limit;
  const factor = factored(matrix, shift);
  const expected = 100;
  const values = lanczos(factor, matrix, STEPS_PER_MODE * expected, shift);
  const toHz = space.speedMS / (2 * Math.PI);
  return {
    frequenciesHz: values
      .filter((value) => value > 1e-3 && value <= limit)
      .map((value) => toHz * Math.sqrt(value)),
    unknowns: matrix.count,
    band: matrix.band,
  };
}

/** Lower half of M^-1/2 K M^-1/2: row i holds columns i - band to i. */
interface Banded {
  readonly count: number;
  readonly band: number;
  readonly values: Float64Array;
}

function assembled({ axes, air }: Elements): Banded {
  // The longest axis outermost makes the narrowest band.
  const points = axes.map((axis) => axis.points.length) as [number, number, number];
  const order = [0, 1, 2].sort((a, b) => (points[b] ?? 0) - (points[a] ?? 0));
  const steps = [0, 0, 0];
  steps[order[2] ?? 2] = 1;
  steps[order[1] ?? 1] = points[order[2] ?? 2] ?? 1;
  steps[order[0] ?? 0] = (points[order[1] ?? 1] ?? 1) * (points[order[2] ?? 2] ?? 1);
  const lattice = points[0] * points[1] * points[2];
  const used = new Uint8Array(lattice);
  const mass = new Float64Array(lattice);
  const { weights, stiffness } = gllRule(DEGREE);
  const entries: [number, number, number][] = [];
  const counts = axes.map((axis) => axis.degrees.length);
  for (let i = 0, cell = 0; i < (counts[0] ?? 0); i++)
    for (let j = 0; j < (counts[1] ?? 0); j++)
      for (let k = 0; k < (counts[2] ?? 0); k++, cell++) {
        if (!air[cell]) continue;
        const place = [i, j, k];
        const widths = axes.map(
          (axis, n) => (axis.ends[(place[n] ?? 0) + 1] ?? 0) - (axis.ends[place[n] ?? 0] ?? 0),
        );
        const volume = widths.reduce((product, width) => product * width, 1 / 8);
        const start = axes.reduce(
          (sum, axis, n) => sum + (axis.firsts[place[n] ?? 0] ?? 0) * (steps[n] ?? 0),
          0,
        );
        for (let p = 0; p < 27; p++) {
          const inside = [Math.floor(p / 9), Math.floor(p / 3) % 3, p % 3];
          const at = inside.reduce((sum, local, n) => sum + local * (steps[n] ?? 0), start);
          const whole = inside.reduce((product, local) => product * (weights[local] ?? 0), volume);
          used[at] = 1;
          mass[at] = (mass[at] ?? 0) + whole;
          inside.forEach((local, n) => {
            for (let d = 0; d <= DEGREE; d++) {
              const other = at + (d - local) * (steps[n] ?? 0);
              if (other > at) continue;
              const by = (4 / (widths[n] ?? 1) ** 2) * (whole / (weights[local] ?? 1));
              entries.push([at, other, by * (stiffness[local * (DEGREE + 1) + d] ?? 0)]);
            }
          });
        }
      }
  const number = new Int32Array(lattice).fill(-1);
  let count = 0;
  used.forEach((is, at) => {
    if (is) number[at] = count++;
  });
  const band = entries.reduce(
    (most, [row, column]) => Math.max(most, (number[row] ?? 0) - (number[column] ?? 0)),
    0,
  );
  const values = new Float64Array(count * (band + 1));
  for (const [row, column, value] of entries) {
    const [i, j] = [number[row] ?? 0, number[column] ?? 0];
    const to = i * (band + 1) + band - (i - j);
    const scaled = value / Math.sqrt((mass[row] ?? 1) * (mass[column] ?? 1));
    values[to] = (values[to] ?? 0) + scaled;
  }
  return { count, band, values };
}

/** L D L^T of the matrix less the shift, in the same band; D on the diagonal. */
function factored({ count, band, values }: Banded, shift: number): Banded {
  const width = band + 1;
  const l = values.slice();
  for (let i = 0; i < count; i++) {
    const row = i * width + band - i;
    const first = Math.max(0, i - band);
    l[row + i] = (l[row + i] ?? 0) - shift;
    // Row i by rows above it; L D is kept until the row is done.
    for (let j = first; j < i; j++) {
      const other = j * width + band - j;
      let sum = l[row + j] ?? 0;
      for (let k = Math.max(first, j - band); k < j; k++)
        sum -= (l[row + k] ?? 0) * (l[other + k] ?? 0);
      l[row + j] = sum;
    }
    let diagonal = l[row + i] ?? 0;
    for (let j = first; j < i; j++) {
      const scaled = (l[row + j] ?? 0) / (l[j * width + band] ?? 1);
      diagonal -= scaled * (l[row + j] ?? 0);
      l[row + j] = scaled;
    }
    l[row + i] = diagonal;
  }
  return { count, band, values: l };
}

function solve({ count, band, values: l }: Banded, right: Float64Array): Float64Array {
  const width = band + 1;
  const x = right.slice();
  for (let i = 0; i < count; i++) {
    const row = i * width + band - i;
    let sum = x[i] ?? 0;
    for (let j = Math.max(0, i - band); j < i; j++) sum -= (l[row + j] ?? 0) * (x[j] ?? 0);
    x[i] = sum;
  }
  for (let i = 0; i < count; i++) x[i] = (x[i] ?? 0) / (l[i * width + band] ?? 1);
  for (let i = count - 1; i >= 0; i--) {
    const row = i * width + band - i;
    const value = x[i] ?? 0;
    for (let j = Math.max(0, i - band); j < i; j++) x[j] = (x[j] ?? 0) - (l[row + j] ?? 0) * value;
  }
  return x;
}

/** Eigenvalues near the shift, rising. */
function lanczos(
  factor: Banded,
  { count }: Banded,
  steps: number,
  shift: number,
): readonly number[] {
  const dot = (a: Float64Array, b: Float64Array): number => {
    let sum = 0;
    for (let i = 0; i < a.length; i++) sum += (a[i] ?? 0) * (b[i] ?? 0);
    return sum;
  };
  let seed = 1;
  const start = Float64Array.from({ length: count }, () => {
    seed = (seed * 16807) % 2147483647;
    return seed / 2147483647 - 0.5;
  });
  const unit = (vector: Float64Array): Float64Array => {
    const norm = Math.sqrt(dot(vector, vector));
    return vector.map((value) => value / norm);
  };
  const basis = [unit(start)];
  const small = Matrix.zeros(steps, steps);
  for (let step = 0; step < steps; step++) {
    const next = solve(factor, basis[step] ?? start);
    for (let turn = 0; turn < 2; turn++)
      for (const [n, vector] of basis.entries()) {
        const part = dot(vector, next);
        if (n >= step - 1 && turn === 0) {
          small.set(step, n, part);
          small.set(n, step, part);
        }
        for (let i = 0; i < count; i++) next[i] = (next[i] ?? 0) - part * (vector[i] ?? 0);
      }
    basis.push(unit(next));
  }
  const { realEigenvalues } = new EigenvalueDecomposition(small, { assumeSymmetric: true });
  return realEigenvalues.map((theta) => shift + 1 / theta).sort((a, b) => a - b);
}
