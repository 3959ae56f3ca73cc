/**
 * Modes of the real free space: time and error on the reference rooms, and a straightforward solve of
 * the same elements beside them. Part of `npm run bench`.
 */

import { readFileSync } from 'node:fs';
import { EigenvalueDecomposition, Matrix } from 'ml-matrix';
import { divide, type Elements } from '../../core/shape-modes/elements';
import { gllRule } from '../../core/shape-modes/gll';
import { shapeGrid, type Box } from '../../core/shape-modes/grid';
import { likeShell, shellShares } from '../../core/shape-modes/like-shell';
import {
  shapeModes,
  type ShapeModes,
  type ShapeOptions,
  type ShapeSpace,
} from '../../core/shape-modes/shape-modes';

const ROOMS = [
  'plain-box',
  'one-soffit',
  'soffit3-risers2',
  'closet-l',
  'column-mid',
  'everything',
];
const WARM_UP_RUNS = 2;
const RUNS = 7;

interface ReferenceRoom {
  readonly speedMS: number;
  readonly shellM: readonly [number, number, number];
  readonly solids: readonly Box[];
  readonly frequenciesHz: readonly number[];
}

interface Measured {
  readonly medianMs: number;
  readonly longestSliceMs: number;
  readonly modes: ShapeModes;
}

/** One run, with the longest time between two yields. */
function run(
  space: ShapeSpace,
  options: ShapeOptions,
): { ms: number; slice: number; modes: ShapeModes } {
  const work = shapeModes(space, options);
  const start = performance.now();
  let [last, slice] = [start, 0];
  for (;;) {
    const step = work.next();
    const now = performance.now();
    slice = Math.max(slice, now - last);
    last = now;
    if (!step.done) continue;
    if (!step.value.ok) throw new Error(JSON.stringify(step.value.refusal));
    return { ms: now - start, slice, modes: step.value.modes };
  }
}

const median = (values: readonly number[]): number =>
  [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)] ?? 0;

function measured(space: ShapeSpace, options: ShapeOptions = {}): Measured {
  for (let i = 0; i < WARM_UP_RUNS; i++) run(space, options);
  const runs = Array.from({ length: RUNS }, () => run(space, options));
  const [first] = runs;
  if (!first) throw new Error('No runs.');
  return {
    medianMs: median(runs.map(({ ms }) => ms)),
    longestSliceMs: median(runs.map(({ slice }) => slice)),
    modes: first.modes,
  };
}

/** A = M^-1/2 K M^-1/2 of the same elements as a full matrix, and all its eigenvalues. */
function straightforward(elements: Elements): Float64Array {
  const { axes, air } = elements;
  const [x, y, z] = axes;
  const lattice = x.points.length * y.points.length * z.points.length;
  const numbers = new Int32Array(lattice).fill(-1);
  const entries: [number, number, number][] = [];
  const mass: number[] = [];
  const numberOf = (point: number): number => {
    if ((numbers[point] ?? -1) < 0) numbers[point] = mass.push(0) - 1;
    return numbers[point] ?? 0;
  };
  const steps = [y.points.length * z.points.length, z.points.length, 1];
  let cell = 0;
  for (let i = 0; i < x.degrees.length; i++)
    for (let j = 0; j < y.degrees.length; j++)
      for (let k = 0; k < z.degrees.length; k++) {
        if (!air[cell++]) continue;
        const place = [i, j, k];
        const rules = place.map((at, axis) => gllRule(axes[axis]?.degrees[at] ?? 1));
        const widths = place.map(
          (at, axis) => (axes[axis]?.ends[at + 1] ?? 0) - (axes[axis]?.ends[at] ?? 0),
        );
        const volume = widths.reduce((product, width) => product * width, 1 / 8);
        const start = place.reduce(
          (sum, at, axis) => sum + (axes[axis]?.firsts[at] ?? 0) * (steps[axis] ?? 0),
          0,
        );
        const [a, b, c] = rules;
        a?.weights.forEach((wa, p) =>
          b?.weights.forEach((wb, q) =>
            c?.weights.forEach((wc, r) => {
              const inside = [p, q, r];
              const weights = [wa, wb, wc];
              const number = numberOf(start + p * (steps[0] ?? 0) + q * (steps[1] ?? 0) + r);
              const whole = volume * wa * wb * wc;
              mass[number] = (mass[number] ?? 0) + whole;
              rules.forEach((rule, axis) => {
                for (let d = 0; d <= rule.degree; d++) {
                  const step = (d - (inside[axis] ?? 0)) * (steps[axis] ?? 0);
                  const at = start + p * (steps[0] ?? 0) + q * (steps[1] ?? 0) + r + step;
                  const stiffness =
                    rule.stiffness[(inside[axis] ?? 0) * (rule.degree + 1) + d] ?? 0;
                  const by = (4 / (widths[axis] ?? 1) ** 2) * (whole / (weights[axis] ?? 1));
                  entries.push([number, numberOf(at), by * stiffness]);
                }
              });
            }),
          ),
        );
      }
  const matrix = Matrix.zeros(mass.length, mass.length);
  for (const [row, column, value] of entries) {
    const scaled = value / Math.sqrt((mass[row] ?? 1) * (mass[column] ?? 1));
    matrix.set(row, column, matrix.get(row, column) + scaled);
  }
  const { realEigenvalues } = new EigenvalueDecomposition(matrix, { assumeSymmetric: true });
  return Float64Array.from(realEigenvalues).sort();
}

/** The straightforward solve takes minutes on the reference rooms: it is shown on this small one. */
const SMALL: ShapeSpace = {
  size: { width: 2.2, length: 2.8, height: 2.3 },
  solids: [{ min: [0, 0, 2], max: [0.4, 2.8, 2.3] }],
  speedMS: 343.4,
};

const cell = (value: number, digits = 0): string => value.toFixed(digits).padStart(10);

/** Prints a row for each reference room, then the small room both ways. */
export function measureShapedModes(): void {
  console.log('');
  console.log(`Modes of the real free space to 200 Hz; median of ${RUNS} warm runs.`);
  console.log(
    `${''.padEnd(28)}${['modes', 'ms', 'slice ms', 'error %', 'estimate %', 'names ms'].map((head) => head.padStart(10)).join('')}`,
  );
  for (const name of ROOMS) {
    const file = new URL(`../published/rooms/${name}.json`, import.meta.url);
    const room = JSON.parse(readFileSync(file, 'utf8')) as ReferenceRoom;
    const [width, length, height] = room.shellM;
    const space = { size: { width, length, height }, solids: room.solids, speedMS: room.speedMS };
    for (const quality of ['fine', 'coarse'] as const) {
      const { medianMs, longestSliceMs, modes } = measured(space, { quality });
      const errors = room.frequenciesHz
        .filter((hz) => hz <= (quality === 'fine' ? 200 : 190))
        .map((hz, n) => 100 * Math.abs((modes.frequenciesHz[n] ?? 0) / hz - 1));
      const start = performance.now();
      likeShell(shellShares(modes, space.size));
      console.log(
        `${`${name}, ${quality}`.padEnd(28)}${cell(modes.frequenciesHz.length)}${cell(medianMs)}${cell(longestSliceMs)}${cell(Math.max(...errors), 3)}${cell(modes.errorPercent, 3)}${cell(performance.now() - start)}`,
      );
    }
  }
  const gridded = shapeGrid(SMALL.size, SMALL.solids);
  if (!gridded.ok) return;
  const ours = measured(SMALL);
  const start = performance.now();
  const values = straightforward(divide(gridded.grid, (2 * Math.PI * 200) / SMALL.speedMS, 'fine'));
  const plainMs = performance.now() - start;
  const below = values.filter(
    (value) => value > 1e-6 && Math.sqrt(value) * SMALL.speedMS < 400 * Math.PI,
  );
  console.log(
    `${'a small room, here'.padEnd(28)}${cell(ours.modes.frequenciesHz.length)}${cell(ours.medianMs)}   ${ours.modes.mass.length} unknowns`,
  );
  console.log(
    `${'a small room, full matrix'.padEnd(28)}${cell(below.length)}${cell(plainMs)}   all eigenvalues by ml-matrix, one run: ${(plainMs / ours.medianMs).toFixed(0)} times as long`,
  );
}
