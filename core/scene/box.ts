/** Boxes along the axes of the room, and how they lie to each other. */

import { AXES, type Axis } from '../room/faces';
import { mapPoint } from '../room/point';
import type { Point } from '../room/project';

/** Lowest and highest corner, m. */
export interface Box {
  readonly min: Point;
  readonly max: Point;
}

/**
 * What runs into each other by no more than this touches, m. Places are kept in whole millimetres, so that
 * half a box and the wall that it was measured from may be apart by a part of one.
 */
export const TOUCH_M = 0.001;

/** The box of `sizeM` along x, y and z with its middle at a place. */
export function boxAround(middle: Point, sizeM: Point): Box {
  const end = (sign: -1 | 1): Point =>
    mapPoint(middle, (at, axis) => at + (sign * sizeM[axis]) / 2);
  return { min: end(-1), max: end(1) };
}

/** Depth by which boxes run into each other, m: the shortest move that parts them; 0 if they do not. */
export function overlapM(a: Box, b: Box): number {
  let depth = Infinity;
  for (const axis of AXES)
    depth = Math.min(depth, a.max[axis] - b.min[axis], b.max[axis] - a.min[axis]);
  return depth > TOUCH_M ? depth : 0;
}

/** The same seen from above. */
export function planOverlapM(a: Box, b: Box): number {
  const along = (axis: Axis): number =>
    Math.min(a.max[axis] - b.min[axis], b.max[axis] - a.min[axis]);
  const depth = Math.min(along(0), along(1));
  return depth > TOUCH_M ? depth : 0;
}

/** Metres from a point to a box; 0 within. */
export function distanceToBoxM({ min, max }: Box, at: Point): number {
  const beside = (axis: Axis): number => Math.max(min[axis] - at[axis], at[axis] - max[axis], 0);
  return Math.hypot(beside(0), beside(1), beside(2));
}
