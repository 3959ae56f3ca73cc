/** The edges that jut into the air, and how much each mode's eigenvalue is too high for them. */

import type { Axis } from '../room/faces';
import { AXES } from '../room/faces';
import { missedPerSlope, type EdgeSide } from './edge-model';
import { gllRule } from './gll';
import type { Elements } from './elements';
import type { Tree } from './tree';

/** What to take off each mode's eigenvalue (1/m2); `shapes` has unit mass: integral of u2 is one. */
export function* edgeExcess(
  elements: Elements,
  tree: Tree,
  shapes: Float64Array,
  modes: number,
): Generator<number, Float64Array> {
  const excess = new Float64Array(modes);
  const known = new Map<string, number>();
  for (const axis of AXES) {
    yield axis / 3;
    alongAxis(
      elements,
      axis,
      (cell, sides, corner, factor) => {
        addSlopes(elements, tree, shapes, modes, axis, cell, sides, corner, factor, excess);
      },
      known,
    );
  }
  return excess;
}

type Sides = readonly [Axis, Axis];
type Visit = (
  cell: readonly number[],
  sides: Sides,
  /** 1 where the edge is on the element's high side, along each of the two axes. */
  corner: readonly [number, number],
  factor: number,
) => void;

/** Visit every element at every jutting edge along `axis`. */
function alongAxis(
  { axes, air }: Elements,
  axis: Axis,
  visit: Visit,
  known: Map<string, number>,
): void {
  const counts = axes.map((one) => one.degrees.length) as [number, number, number];
  const strides = [counts[1] * counts[2], counts[2], 1] as const;
  const sides: Sides = axis === 0 ? [1, 2] : axis === 1 ? [0, 2] : [0, 1];
  const [u, v] = sides;
  const sideOf = (along: Axis, element: number): EdgeSide => ({
    widthM: axes[along].ends[element + 1]! - axes[along].ends[element]!,
    degree: axes[along].degrees[element]!,
  });
  for (let i = 1; i < counts[u]; i++)
    for (let j = 1; j < counts[v]; j++)
      for (let k = 0; k < counts[axis]; k++) {
        const around = [
          [i - 1, j - 1],
          [i - 1, j],
          [i, j - 1],
          [i, j],
        ] as const;
        const isAir = around.map(
          ([a, b]) => air[a * strides[u] + b * strides[v] + k * strides[axis]] === 1,
        );
        if (isAir.filter(Boolean).length !== 3) continue;
        const solid = around[isAir.indexOf(false)];
        if (!solid) continue;
        const opposite = [2 * i - 1 - solid[0], 2 * j - 1 - solid[1]] as const;
        const model = {
          air: [sideOf(u, opposite[0]), sideOf(v, opposite[1])],
          solid: [sideOf(u, solid[0]), sideOf(v, solid[1])],
        } as const;
        const key = [...model.air, ...model.solid]
          .map((side) => `${side.widthM.toFixed(5)}/${side.degree}`)
          .join();
        const factor = known.get(key) ?? missedPerSlope(model);
        known.set(key, factor);
        around.forEach(([a, b], n) => {
          if (!isAir[n]) return;
          const cell = [0, 0, 0];
          cell[u] = a;
          cell[v] = b;
          cell[axis] = k;
          visit(cell, sides, [a < i ? 1 : 0, b < j ? 1 : 0], factor);
        });
      }
}

/** Add factor times the integral along the edge of (width times slope)2 along both axes, per mode. */
function addSlopes(
  { axes }: Elements,
  tree: Tree,
  shapes: Float64Array,
  modes: number,
  axis: Axis,
  cell: readonly number[],
  sides: Sides,
  corner: readonly [number, number],
  factor: number,
  excess: Float64Array,
): void {
  const rules = cell.map((at, along) => gllRule(axes[along]?.degrees[at] ?? 1));
  const [ny, nz] = [axes[1].points.length, axes[2].points.length];
  const steps = [ny * nz, nz, 1] as const;
  const lattice = cell.reduce(
    (sum, at, along) => sum + (axes[along]?.firsts[at] ?? 0) * steps[along]!,
    0,
  );
  const ends = sides.map((side, n) => (corner[n] ? (rules[side]?.degree ?? 0) : 0));
  const start = lattice + ends[0]! * steps[sides[0]] + ends[1]! * steps[sides[1]];
  const long = rules[axis];
  if (!long) return;
  const length = axes[axis].ends[cell[axis]! + 1]! - axes[axis].ends[cell[axis]!]!;
  const slope = new Float64Array(modes);
  long.weights.forEach((weight, c) => {
    const at = start + c * steps[axis];
    sides.forEach((side, n) => {
      const rule = rules[side];
      if (!rule) return;
      slope.fill(0);
      const end = ends[n]!;
      for (let d = 0; d <= rule.degree; d++) {
        // Slope on the element from -1 to 1; half the width times the slope in space.
        const by = rule.slopes[end * (rule.degree + 1) + d]!;
        const row = tree.numberOf[at + (d - end) * steps[side]]! * modes;
        for (let m = 0; m < modes; m++) slope[m] = slope[m]! + by * shapes[row + m]!;
      }
      const by = 4 * factor * weight * (length / 2);
      for (let m = 0; m < modes; m++) excess[m] = excess[m]! + by * slope[m]! ** 2;
    });
  });
}
