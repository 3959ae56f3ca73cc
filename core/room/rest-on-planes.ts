/** Where a face of a fitting comes to rest: on a wall, on another fitting, else on the carpenter's step. */

import { snapLength } from '../quantity/carpenter-step';
import type { Axis } from './faces';
import { farCorner } from './point';
import type { Room } from './project';

/** Planes nearer than this pull, m. */
export const PLANE_REACH_M = 0.04;

/**
 * `at` along `axis`, moved onto a plane of the shell or of another solid within reach, else to the
 * nearest step; always within the shell. `self` is the solid that is being moved.
 */
export function restOnPlane(
  at: number,
  axis: Axis,
  room: Room,
  self: string,
  stepM: number,
): number {
  const end = farCorner(room.size)[axis];
  const planes = [
    0,
    end,
    ...room.solids
      .filter((solid) => solid.id !== self)
      .flatMap((solid) => [solid.min[axis], solid.max[axis]]),
  ].filter((plane) => plane >= 0 && plane <= end);
  const nearest = planes.reduce((best, plane) =>
    Math.abs(plane - at) < Math.abs(best - at) ? plane : best,
  );
  if (Math.abs(nearest - at) <= PLANE_REACH_M) return nearest;
  return Math.min(Math.max(snapLength(at, stepM), 0), end);
}
