/**
 * The free space as boxes of air: the shell cut along every plane of the solids. Planes that almost
 * coincide are made one, and what was moved is reported.
 */

import type { Axis } from '../room/faces';
import { AXES } from '../room/faces';
import { farCorner } from '../room/point';
import type { Point, ShellSize } from '../room/project';

/** A box, corners in metres. */
export interface Box {
  readonly min: Point;
  readonly max: Point;
}

/** Faces closer than this are the same face, m. */
const SAME_M = 1e-4;
/** Layers thinner than this are closed, and standing sheets thinner than this are drawn this thick, m. */
export const SLIVER_M = 0.01;
/** More boxes than this are not even counted out. */
const MOST_CELLS = 250_000;

/** A face that was moved to do without a layer that is too thin to matter. */
export interface MovedFace {
  /** Number of the solid in the list. */
  readonly solid: number;
  readonly axis: Axis;
  readonly fromM: number;
  readonly toM: number;
}

export interface AirGrid {
  /** Planes along each axis, rising, the shell's included, m. */
  readonly planes: readonly [Float64Array, Float64Array, Float64Array];
  /** 1 where a cell is air; the last axis runs fastest. */
  readonly air: Uint8Array;
  readonly volumeM3: number;
  readonly moved: readonly MovedFace[];
  /** Volume that the moved faces swept, m3. */
  readonly movedM3: number;
  /** Layers under this were closed, m. */
  readonly sliverM: number;
}

/** Why there is nothing to compute. */
export type RoomModesRefusal =
  | { readonly reason: 'no-air' }
  | { readonly reason: 'separate-parts'; readonly parts: number }
  /** `what` says which of the two would be too many, `count` how many there would be. */
  | {
      readonly reason: 'too-large';
      readonly what: 'cells' | 'unknowns' | 'megabytes';
      /** Whether the room itself is too large for its limit, or its fittings are too many. */
      readonly because: 'size' | 'fittings';
      readonly count: number;
      readonly most: number;
    }
  /** The numbers did not settle; not known to happen. */
  | { readonly reason: 'not-converged' };

export type Gridded =
  | { readonly ok: true; readonly grid: AirGrid }
  | { readonly ok: false; readonly refusal: RoomModesRefusal };

/** Cut the shell along the solids. What sticks out is cut off; layers under `sliverM` are closed. */
export function airGrid(
  size: ShellSize,
  solids: readonly Box[],
  sliverM: number = SLIVER_M,
): Gridded {
  const ends = farCorner(size);
  const faces = AXES.map((axis) => facesAlong(ends[axis], solids, axis, sliverM));
  // What has no volume cuts nothing.
  const cuts = solids.map((_, n) => faces.every((along) => thickness(along[n]) > 0));
  const snapped = AXES.map((axis) => snapAxis(ends[axis], faces[axis] ?? [], cuts, sliverM));
  const planes = snapped.map(({ planes: at }) => at) as [Float64Array, Float64Array, Float64Array];
  const counts = planes.map((at) => at.length - 1) as [number, number, number];
  const cells = counts[0] * counts[1] * counts[2];
  if (cells > MOST_CELLS) {
    return refused({
      reason: 'too-large',
      what: 'cells',
      because: 'fittings',
      count: cells,
      most: MOST_CELLS,
    });
  }
  const air = new Uint8Array(cells).fill(1);
  const moved: MovedFace[] = [];
  let movedM3 = 0;
  solids.forEach((solid, n) => {
    const extents = AXES.map((axis) => extent(solid, ends, axis));
    if (Math.min(...extents) <= SAME_M) return;
    const from = AXES.map((axis) => snapped[axis]?.low[n] ?? 0);
    const to = AXES.map((axis) => snapped[axis]?.high[n] ?? 0);
    for (const axis of AXES) {
      if (!cuts[n] && thickness(faces[axis]?.[n]) > 0) continue;
      const areaM2 = extents.reduce(
        (area, length, other) => area * (other === axis ? 1 : length),
        1,
      );
      for (const [at, index] of [
        [solid.min[axis], from[axis]],
        [solid.max[axis], to[axis]],
      ] as const) {
        const fromM = Math.min(Math.max(at, 0), ends[axis]);
        const toM = planes[axis][index ?? 0]!;
        if (Math.abs(fromM - toM) <= SAME_M) continue;
        moved.push({ solid: n, axis, fromM, toM });
        movedM3 += areaM2 * Math.abs(fromM - toM);
      }
    }
    if (!cuts[n]) return;
    for (let i = from[0]!; i < to[0]!; i++)
      for (let j = from[1]!; j < to[1]!; j++) {
        const row = (i * counts[1] + j) * counts[2];
        if (to[2]! > from[2]!) air.fill(0, row + from[2]!, row + to[2]!);
      }
  });
  const parts = countParts(air, counts);
  if (parts === 0) return refused({ reason: 'no-air' });
  if (parts > 1) return refused({ reason: 'separate-parts', parts });

  let volumeM3 = 0;
  for (let i = 0, at = 0; i < counts[0]; i++)
    for (let j = 0; j < counts[1]; j++)
      for (let k = 0; k < counts[2]; k++, at++)
        if (air[at]) volumeM3 += span(planes[0], i) * span(planes[1], j) * span(planes[2], k);
  return { ok: true, grid: { planes, air, volumeM3, moved, movedM3, sliverM } };
}

const refused = (refusal: RoomModesRefusal): Gridded => ({ ok: false, refusal });
const span = (planes: Float64Array, i: number): number => planes[i + 1]! - planes[i]!;
const thickness = (face: readonly [number, number] | undefined): number =>
  face ? face[1] - face[0] : 0;
/** Length of the part of a solid that lies in the shell. */
const extent = (solid: Box, ends: Point, axis: Axis): number =>
  Math.max(0, Math.min(solid.max[axis], ends[axis]) - Math.max(solid.min[axis], 0));

/** Low and high face of each solid along one axis. */
type Faces = readonly (readonly [number, number])[];

/**
 * Where the faces are along one axis: cut off at the shell, and on it where they are within a sliver of it.
 * A sheet that stands free still parts the air: it is drawn a sliver thick, unless it is no thicker
 * than nothing.
 */
function facesAlong(end: number, solids: readonly Box[], axis: Axis, sliverM: number): Faces {
  const within = (at: number): number => {
    const held = Math.min(Math.max(at, 0), end);
    return held < sliverM ? 0 : held > end - sliverM ? end : held;
  };
  return solids.map((solid): readonly [number, number] => {
    const [low, high] = [within(solid.min[axis]), within(solid.max[axis])];
    if (high - low <= SAME_M) return [low, low];
    if (high - low >= sliverM) return [low, high];
    const middle = (low + high) / 2;
    return [within(middle - sliverM / 2), within(middle + sliverM / 2)];
  });
}

interface SnappedAxis {
  readonly planes: Float64Array;
  /** Plane number of each solid's low and high face. */
  readonly low: Int32Array;
  readonly high: Int32Array;
}

/** Planes along one axis; faces within a sliver of each other meet in their middle. */
function snapAxis(
  end: number,
  faces: Faces,
  counts: readonly boolean[],
  sliverM: number,
): SnappedAxis {
  const cutting = faces.filter((_, n) => counts[n]).flat();
  const rising = [...new Set(cutting)].filter((at) => at > 0 && at < end).sort((a, b) => a - b);
  const planes = [0];
  const number = new Map<number, number>([[0, 0]]);
  for (let first = 0; first < rising.length;) {
    let last = first;
    const start = rising[first]!;
    while (last + 1 < rising.length && rising[last + 1]! - start < sliverM - 1e-9) last++;
    for (let i = first; i <= last; i++) number.set(rising[i]!, planes.length);
    planes.push((start + rising[last]!) / 2);
    first = last + 1;
  }
  number.set(end, planes.length);
  planes.push(end);
  const index = (side: 0 | 1): Int32Array =>
    Int32Array.from(faces, (face) => number.get(face[side]) ?? 0);
  return { planes: Float64Array.from(planes), low: index(0), high: index(1) };
}

/** How many parts the air is in that touch by whole faces. */
function countParts(air: Uint8Array, counts: readonly [number, number, number]): number {
  const part = new Int32Array(air.length);
  const stack: number[] = [];
  const strides = [counts[1] * counts[2], counts[2], 1] as const;
  let parts = 0;
  for (let seed = 0; seed < air.length; seed++) {
    if (!air[seed] || part[seed]) continue;
    part[seed] = ++parts;
    stack.push(seed);
    for (let cell = stack.pop(); cell !== undefined; cell = stack.pop()) {
      for (const axis of AXES) {
        const place = Math.floor(cell / strides[axis]) % counts[axis];
        for (const side of [-1, 1]) {
          if (place + side < 0 || place + side >= counts[axis]) continue;
          const next = cell + side * strides[axis];
          if (air[next] && !part[next]) {
            part[next] = parts;
            stack.push(next);
          }
        }
      }
    }
  }
  return parts;
}
