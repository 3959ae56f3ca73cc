/** Which mode of the plain shell each mode of the real room is most like. */

import type { ShellSize } from '../room/project';
import type { ShapeModes } from './shape-modes';

export type LikeShell = readonly [number, number, number];

/** Below this squared overlap a mode is like none: it is mixed. */
export const LIKE_FROM = 0.5;
/** Shell modes are looked at to this many times the limit: solids can lower a mode. */
const BEYOND = 1.35;

/**
 * The order of the shell mode that each mode overlaps most, or null. The squared overlap is that of
 * mode and cosine over the free space, each of norm 1 there; it has to be `LIKE_FROM` at least. No
 * order is given twice: the larger overlap has it.
 */
export function likeShell(modes: ShapeModes, size: ShellSize): readonly (LikeShell | null)[] {
  const { axes, rowOf, shapes, mass, volumeM3 } = modes;
  const count = modes.frequenciesHz.length;
  const lengths = [size.width, size.length, size.height] as const;
  const points = axes.map((axis) => axis.points.length) as [number, number, number];
  const reach = (2 * BEYOND * modes.limitHz) / modes.speedMS;
  const orders = lengths.map((length) => Math.floor(reach * length)) as [number, number, number];
  const cosines = axes.map((axis, n) => {
    const highest = orders[n] ?? 0;
    const table = new Float64Array((2 * highest + 1) * axis.points.length);
    for (let order = 0; order <= 2 * highest; order++)
      axis.points.forEach((at, i) => {
        table[order * axis.points.length + i] = Math.cos(
          (order * Math.PI * at) / (lengths[n] ?? 1),
        );
      });
    return table;
  }) as [Float64Array, Float64Array, Float64Array];

  const field = new Float64Array(rowOf.length);
  const spread = (value: (row: number) => number): void => {
    rowOf.forEach((row, at) => {
      field[at] = row < 0 ? 0 : value(row);
    });
  };
  spread((row) => mass[row] ?? 0);
  // cos2 = (1 + cos of twice the order)/2 along each axis.
  const doubled = transform(field, points, cosines, orders, 2);
  const wide = orders.map((order) => order + 1) as [number, number, number];
  const at = (x: number, y: number, z: number): number => (x * wide[1] + y) * wide[2] + z;
  const norm = (x: number, y: number, z: number): number => {
    let sum = 0;
    for (const a of [0, x])
      for (const b of [0, y]) for (const c of [0, z]) sum += doubled[at(a, b, c)] ?? 0;
    return sum / 8;
  };

  const candidates: { order: LikeShell; norm: number; at: number }[] = [];
  for (let x = 0; x <= orders[0]; x++)
    for (let y = 0; y <= orders[1]; y++)
      for (let z = 0; z <= orders[2]; z++) {
        if (x + y + z === 0) continue;
        if (Math.hypot(x / lengths[0], y / lengths[1], z / lengths[2]) > reach) continue;
        candidates.push({ order: [x, y, z], norm: norm(x, y, z), at: at(x, y, z) });
      }
  const pairs: { mode: number; order: LikeShell; overlap: number }[] = [];
  for (let mode = 0; mode < count; mode++) {
    spread((row) => (mass[row] ?? 0) * (shapes[row * count + mode] ?? 0));
    const products = transform(field, points, cosines, orders, 1);
    for (const candidate of candidates) {
      const overlap = (products[candidate.at] ?? 0) ** 2 / (candidate.norm * volumeM3);
      if (overlap >= LIKE_FROM) pairs.push({ mode, order: candidate.order, overlap });
    }
  }
  pairs.sort((a, b) => b.overlap - a.overlap);
  const names: (LikeShell | null)[] = Array.from({ length: count }, () => null);
  const taken = new Set<string>();
  for (const { mode, order } of pairs) {
    if (names[mode] || taken.has(order.join())) continue;
    names[mode] = order;
    taken.add(order.join());
  }
  return names;
}

/** Sums of the field times the cosines of `factor` times each order, axis after axis. */
function transform(
  field: Float64Array,
  points: readonly [number, number, number],
  cosines: readonly [Float64Array, Float64Array, Float64Array],
  orders: readonly [number, number, number],
  factor: 1 | 2,
): Float64Array {
  let now = field;
  let [outer, inner] = [points[0] * points[1], 1];
  // From the last axis to the first: the axis in hand is the last but `inner`.
  for (const axis of [2, 1, 0] as const) {
    const [length, wide] = [points[axis], orders[axis] + 1];
    const next = new Float64Array(outer * wide * inner);
    const table = cosines[axis];
    for (let o = 0; o < outer; o++)
      for (let order = 0; order < wide; order++) {
        const to = (o * wide + order) * inner;
        const line = factor * order * length;
        for (let i = 0; i < length; i++) {
          const by = table[line + i] ?? 0;
          const from = (o * length + i) * inner;
          for (let n = 0; n < inner; n++)
            next[to + n] = (next[to + n] ?? 0) + by * (now[from + n] ?? 0);
        }
      }
    now = next;
    inner *= wide;
    if (axis === 2) outer = points[0];
    else if (axis === 1) outer = 1;
  }
  return now;
}
