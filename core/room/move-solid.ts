/** Moving and stretching a fitting: it stays in the shell, keeps a body, and comes to rest on planes. */

import { roundLength } from '../quantity/length';
import type { Axis } from './faces';
import { AXES } from './faces';
import { contactOf } from './fitting-fields';
import { LEAST_EXTENT_M } from './fitting-presets';
import { farCorner } from './point';
import type { Point, Room, Solid } from './project';
import { PLANE_REACH_M, restOnPlane } from './rest-on-planes';

/** What touches a side of the shell leaves it only when it is pulled farther than this, m. */
export const HOLD_M = 0.2;

/**
 * `solid` moved by `by` metres along each axis, its nearer face at rest on a plane or on the step. What
 * touches a wall, the floor or the ceiling keeps touching it until it is pulled off.
 */
export function movedSolid(solid: Solid, by: Point, room: Room, stepM: number): Solid {
  const far = farCorner(room.size);
  const min: [number, number, number] = [...solid.min];
  const max: [number, number, number] = [...solid.max];
  for (const axis of AXES) {
    if (by[axis] === 0) continue;
    if (contactOf(solid, room.size, axis) !== 'none' && Math.abs(by[axis]) < HOLD_M) continue;
    const extent = solid.max[axis] - solid.min[axis];
    const low = solid.min[axis] + by[axis];
    const atLow = restOnPlane(low, axis, room, solid.id, stepM);
    const atHigh = restOnPlane(low + extent, axis, room, solid.id, stepM) - extent;
    const lowIsNear = Math.abs(atLow - low) <= Math.abs(atHigh - low);
    const onPlane = Math.abs(atHigh - low) <= PLANE_REACH_M && !lowIsNear;
    const rest = onPlane ? atHigh : atLow;
    min[axis] = roundLength(Math.min(Math.max(rest, 0), Math.max(0, far[axis] - extent)));
    max[axis] = roundLength(min[axis] + extent);
  }
  return { ...solid, min, max };
}

/** `solid` with one of its faces pulled to `at`; it keeps at least its least extent. */
export function stretchedSolid(
  solid: Solid,
  axis: Axis,
  side: -1 | 1,
  at: number,
  room: Room,
  stepM: number,
): Solid {
  const rest = restOnPlane(at, axis, room, solid.id, stepM);
  const min: [number, number, number] = [...solid.min];
  const max: [number, number, number] = [...solid.max];
  if (side === 1) max[axis] = roundLength(Math.max(rest, min[axis] + LEAST_EXTENT_M));
  else min[axis] = roundLength(Math.min(rest, max[axis] - LEAST_EXTENT_M));
  return { ...solid, min, max };
}
