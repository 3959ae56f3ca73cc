/**
 * What stands between two points: the solids of the room as boxes. A path may touch a solid and run
 * along its side, but not pass through it, nor between two solids that stand against each other or
 * between a solid and the shell that it stands against. A form of `castRay` for a yes or no: it ends at
 * the first solid, reads it from a flat array, and decides the ways along a side, which a ray cannot.
 */

import { IN_PLANE_M } from '../scene/faces';
import type { Axis } from '../room/faces';
import { AXES } from '../room/faces';
import { farCorner } from '../room/point';
import type { Point, Room } from '../room/project';

/** How far a path in the plane of a solid's side is moved to see whether there is air beside it, m. */
const BESIDE_M = 1e-7;

export interface Sight {
  /** Low and high planes of each solid, [x0, y0, z0, x1, y1, z1] in m; without end beyond the shell. */
  readonly boxes: readonly Float64Array[];
  /** Planes of the solids along each axis, m. */
  readonly planes: readonly [readonly number[], readonly number[], readonly number[]];
}

/** The solids of `room`, ready to be looked past. */
export function sightOf(room: Room): Sight {
  const far = farCorner(room.size);
  const boxes = room.solids.map(({ min, max }) =>
    Float64Array.from([
      ...AXES.map((axis) => (min[axis] <= IN_PLANE_M ? -Infinity : min[axis] + IN_PLANE_M)),
      ...AXES.map((axis) =>
        max[axis] >= far[axis] - IN_PLANE_M ? Infinity : max[axis] - IN_PLANE_M,
      ),
    ]),
  );
  const planes = (axis: Axis): readonly number[] => [
    ...new Set(room.solids.flatMap((solid) => [solid.min[axis], solid.max[axis]])),
  ];
  return { boxes, planes: [planes(0), planes(1), planes(2)] };
}

/** True where the straight way from `from` to `to`, both in the shell, passes through no solid. */
export function isClear(sight: Sight, from: Point, to: Point): boolean {
  if (isBlocked(sight.boxes, from, to)) return false;
  const along = AXES.filter((axis) => runsAlong(sight, axis, from, to));
  return along.length === 0 || isClearBeside(sight, from, to, along);
}

/** True where the way lies in the plane of a solid's side normal to `axis`. */
function runsAlong({ planes }: Sight, axis: Axis, from: Point, to: Point): boolean {
  if (Math.abs(to[axis] - from[axis]) >= IN_PLANE_M) return false;
  for (const plane of planes[axis]) if (Math.abs(plane - from[axis]) < IN_PLANE_M) return true;
  return false;
}

/** A way in the plane of solids' sides is clear where there is air on one side of it at least. */
function isClearBeside(sight: Sight, from: Point, to: Point, along: readonly Axis[]): boolean {
  const [axis, ...others] = along;
  if (axis === undefined) return !isBlocked(sight.boxes, from, to);
  return [-BESIDE_M, BESIDE_M].some((stepM) =>
    isClearBeside(sight, moved(from, axis, stepM), moved(to, axis, stepM), others),
  );
}

function moved(at: Point, axis: Axis, stepM: number): Point {
  return [
    at[0] + (axis === 0 ? stepM : 0),
    at[1] + (axis === 1 ? stepM : 0),
    at[2] + (axis === 2 ? stepM : 0),
  ];
}

function isBlocked(boxes: readonly Float64Array[], from: Point, to: Point): boolean {
  for (const box of boxes) if (passesThrough(box, from, to)) return true;
  return false;
}

/** True where a part of the way lies within the box: between both planes of all three axes at once. */
function passesThrough(box: Float64Array, from: Point, to: Point): boolean {
  let enter = 0;
  let leave = 1;
  for (let axis = 0; axis < 3; axis++) {
    const start = from[axis] ?? 0;
    const step = (to[axis] ?? 0) - start;
    const low = box[axis] ?? 0;
    const high = box[axis + 3] ?? 0;
    if (step === 0) {
      if (start <= low || start >= high) return false;
      continue;
    }
    const [a, b] = [(low - start) / step, (high - start) / step];
    enter = Math.max(enter, Math.min(a, b));
    leave = Math.min(leave, Math.max(a, b));
    if (enter >= leave) return false;
  }
  return true;
}
