/** Which modes of the plain shell each mode of the real room is made of, and which it is most like. */

import { finish } from '../quantity/slices';
import { farCorner } from '../room/point';
import type { ShellSize } from '../room/project';
import type { RoomModes } from '../room-modes/room-modes';

export type LikeShell = readonly [number, number, number];

/** Below this squared overlap a mode is like none: it is mixed. */
export const LIKE_FROM = 0.5;
/** Shell modes are looked at to this many times the limit: solids can lower a mode. */
const BEYOND = 1.35;

/** How much of a mode is one of the shell. */
export interface ShellShare {
  readonly order: LikeShell;
  /** Squared overlap of mode and cosine over the free space, each of norm 1 there. */
  readonly share: number;
}

/** Smaller shares are not listed, and no more of them than this. */
const LEAST_SHARE = 0.1;
const MOST_SHARES = 3;

/**
 * The order of the shell mode that each mode is most like, or null: a share of `LIKE_FROM` at least. No
 * order is given twice: the larger share has it.
 */
export function likeShell(
  shares: readonly (readonly ShellShare[])[],
): readonly (LikeShell | null)[] {
  const pairs = shares
    .flatMap((list, mode) => list.map(({ order, share }) => ({ mode, order, share })))
    .filter(({ share }) => share >= LIKE_FROM)
    .sort((a, b) => b.share - a.share);
  const names: (LikeShell | null)[] = shares.map(() => null);
  const taken = new Set<string>();
  for (const { mode, order } of pairs) {
    if (names[mode] || taken.has(order.join())) continue;
    names[mode] = order;
    taken.add(order.join());
  }
  return names;
}

type SharesOfModes = readonly (readonly ShellShare[])[];

/** As `shellShareSlices`, in one go. */
export const shellShares = (modes: RoomModes, size: ShellSize): SharesOfModes =>
  finish(shellShareSlices(modes, size));

/**
 * The shell's modes in each mode, the largest shares first. The shell's cosines are not at right angles
 * over the free space, so shares need not add up to 1. Yields the share done after each mode.
 */
export function* shellShareSlices(
  modes: RoomModes,
  size: ShellSize,
): Generator<number, SharesOfModes> {
  const { axes, rowOf, shapes, mass, volumeM3 } = modes;
  const count = modes.frequenciesHz.length;
  const lengths = farCorner(size);
  const points = axes.map((axis) => axis.points.length) as [number, number, number];
  const reach = (2 * BEYOND * modes.limitHz) / modes.speedMS;
  const orders = lengths.map((length) => Math.floor(reach * length)) as [number, number, number];
  const cosines = axes.map((axis, n) => {
    const highest = orders[n]!;
    const table = new Float64Array((2 * highest + 1) * axis.points.length);
    for (let order = 0; order <= 2 * highest; order++)
      axis.points.forEach((at, i) => {
        table[order * axis.points.length + i] = Math.cos((order * Math.PI * at) / lengths[n]!);
      });
    return table;
  }) as [Float64Array, Float64Array, Float64Array];

  const field = new Float64Array(rowOf.length);
  const spread = (value: (row: number) => number): void => {
    rowOf.forEach((row, at) => {
      field[at] = row < 0 ? 0 : value(row);
    });
  };
  spread((row) => mass[row]!);
  // cos2 = (1 + cos of twice the order)/2 along each axis.
  const doubled = transform(field, points, cosines, orders, 2);
  const wide = orders.map((order) => order + 1) as [number, number, number];
  const at = (x: number, y: number, z: number): number => (x * wide[1] + y) * wide[2] + z;
  const norm = (x: number, y: number, z: number): number => {
    let sum = 0;
    for (const a of [0, x])
      for (const b of [0, y]) for (const c of [0, z]) sum += doubled[at(a, b, c)]!;
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
  const shares: ShellShare[][] = [];
  for (let mode = 0; mode < count; mode++) {
    yield mode / count;
    spread((row) => mass[row]! * shapes[row * count + mode]!);
    const products = transform(field, points, cosines, orders, 1);
    const listed = candidates
      .map((candidate): ShellShare => {
        const share = products[candidate.at]! ** 2 / (candidate.norm * volumeM3);
        return { order: candidate.order, share };
      })
      .filter(({ share }) => share >= LEAST_SHARE)
      .sort((a, b) => b.share - a.share)
      .slice(0, MOST_SHARES);
    shares.push(listed);
  }
  return shares;
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
          const by = table[line + i]!;
          const from = (o * length + i) * inner;
          for (let n = 0; n < inner; n++) next[to + n] = next[to + n]! + by * now[from + n]!;
        }
      }
    now = next;
    inner *= wide;
    if (axis === 2) outer = points[0];
    else if (axis === 1) outer = 1;
  }
  return now;
}
