/** Mass and stiffness of the elements; the diagonal mass comes of the points being the quadrature. */

import { AXES } from '../room/faces';
import type { Degrees } from './cells';
import type { Elements } from './elements';
import { gllRule } from './gll';
import type { Place, Tree } from './tree';

/** Diagonal of the mass, in the order of elimination, m3. */
export function massOf({ axes, air }: Elements, tree: Tree): Float64Array {
  const mass = new Float64Array(tree.count);
  const [x, y, z] = axes;
  const [ny, nz] = [y.points.length, z.points.length];
  let cell = 0;
  for (let i = 0; i < x.degrees.length; i++)
    for (let j = 0; j < y.degrees.length; j++)
      for (let k = 0; k < z.degrees.length; k++) {
        if (!air[cell++]) continue;
        const rules = [gllRule(x.degrees[i]!), gllRule(y.degrees[j]!), gllRule(z.degrees[k]!)];
        const box = (width(x.ends, i) * width(y.ends, j) * width(z.ends, k)) / 8;
        rules[0]?.weights.forEach((wx, a) =>
          rules[1]?.weights.forEach((wy, b) =>
            rules[2]?.weights.forEach((wz, c) => {
              const ix = x.firsts[i]! + a;
              const iy = y.firsts[j]! + b;
              const point = tree.numberOf[(ix * ny + iy) * nz + z.firsts[k]! + c]!;
              mass[point] = mass[point]! + box * wx * wy * wz;
            }),
          ),
        );
      }
  return mass;
}

const width = (ends: Float64Array, i: number): number => ends[i + 1]! - ends[i]!;

/** Degrees of an element along the three axes. */
export const degreesOf = ({ axes }: Elements, cell: Place): Degrees => [
  axes[0].degrees[cell[0]] ?? 2,
  axes[1].degrees[cell[1]] ?? 2,
  axes[2].degrees[cell[2]] ?? 2,
];

/** Widths of an element, m. */
export const widthsOf = ({ axes }: Elements, cell: Place): readonly [number, number, number] => [
  width(axes[0].ends, cell[0]),
  width(axes[1].ends, cell[1]),
  width(axes[2].ends, cell[2]),
];

/**
 * Stiffness of one element between its outer points: along each axis, on every lattice line. Of a line
 * through the inside only the two ends are outer points.
 */
export function addElement(
  front: Float64Array,
  size: number,
  { axes }: Elements,
  tree: Tree,
  cell: readonly [number, number, number],
  place: Int32Array,
  scale: Float64Array,
): void {
  const rules = cell.map((at, axis) => gllRule(axes[axis]?.degrees[at] ?? 1));
  const widths = cell.map((at, axis) => width(axes[axis]?.ends ?? new Float64Array(), at));
  const counts = rules.map((rule) => rule.degree + 1) as [number, number, number];
  const [ny, nz] = [axes[1].points.length, axes[2].points.length];
  const points = new Int32Array(counts[0] * counts[1] * counts[2]);
  const scales = new Float64Array(points.length);
  for (let a = 0, at = 0; a < counts[0]; a++)
    for (let b = 0; b < counts[1]; b++)
      for (let c = 0; c < counts[2]; c++, at++) {
        const ix = axes[0].firsts[cell[0]]! + a;
        const iy = axes[1].firsts[cell[1]]! + b;
        const iz = axes[2].firsts[cell[2]]! + c;
        const number = tree.numberOf[(ix * ny + iy) * nz + iz]!;
        points[at] = place[number]!;
        scales[at] = scale[number]!;
      }
  const volume = widths[0]! * widths[1]! * widths[2]!;
  const strides = [counts[1] * counts[2], counts[2], 1] as const;
  for (const axis of AXES) {
    const [u, v] =
      axis === 0 ? ([1, 2] as const) : axis === 1 ? ([0, 2] as const) : ([0, 1] as const);
    const rule = rules[axis];
    const [wu, wv] = [rules[u]?.weights, rules[v]?.weights];
    if (!rule || !wu || !wv) continue;
    const factor = volume / (2 * widths[axis]! ** 2);
    const n = counts[axis];
    for (let b = 0; b < counts[u]; b++)
      for (let c = 0; c < counts[v]; c++) {
        const line = b * strides[u] + c * strides[v];
        const weight = factor * wu[b]! * wv[c]!;
        const isThrough = b > 0 && b < counts[u] - 1 && c > 0 && c < counts[v] - 1;
        const step = isThrough ? n - 1 : 1;
        for (let a = 0; a < n; a += step) {
          const at = line + a * strides[axis];
          const scaled = weight * scales[at]!;
          for (let d = 0; d <= a; d += step) {
            const other = line + d * strides[axis];
            const [i, j] = [points[at]!, points[other]!];
            const to = i >= j ? i * size + j : j * size + i;
            front[to] = front[to]! + scaled * scales[other]! * rule.stiffness[a * n + d]!;
          }
        }
      }
  }
}
