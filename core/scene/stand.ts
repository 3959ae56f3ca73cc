/** What a subwoofer stands on: the floor, or the stage or riser below it. */

import type { Point, Project, Solid } from '../room/project';
import { TOUCH_M, type Box } from './box';

type Standing = Pick<Project, 'room'>;

/** The stage or riser that a point in plan is over, the topmost of those stacked on each other; null on the floor. */
export function standingOn({ room }: Standing, [x, y]: readonly [number, number]): Solid | null {
  const below = room.solids
    .filter(
      ({ kind, min, max }) =>
        (kind === 'stage' || kind === 'riser') &&
        x >= min[0] &&
        x <= max[0] &&
        y >= min[1] &&
        y <= max[1],
    )
    .sort((a, b) => a.min[2] - b.min[2]);
  let top: Solid | null = null;
  for (const solid of below) {
    const heightM: number = top?.max[2] ?? 0;
    if (solid.min[2] <= heightM + TOUCH_M && solid.max[2] > heightM) top = solid;
  }
  return top;
}

/** Height of what one stands on at a point in plan, m: 0 on the floor. */
export const standingHeightM = (project: Standing, at: readonly [number, number]): number =>
  standingOn(project, at)?.max[2] ?? 0;

/** True where a box would stand on one level, with all four of its corners. */
export function standsLevel(project: Standing, { min, max }: Box): boolean {
  const middle = standingHeightM(project, [(min[0] + max[0]) / 2, (min[1] + max[1]) / 2]);
  return [min[0] + TOUCH_M, max[0] - TOUCH_M].every((x) =>
    [min[1] + TOUCH_M, max[1] - TOUCH_M].every((y) => standingHeightM(project, [x, y]) === middle),
  );
}

/** `to`, as high above what it stands on as `from` is: what is moved along a room climbs its stages. */
export function carried(project: Standing, from: Point, to: Point): Point {
  const over = from[2] - standingHeightM(project, [from[0], from[1]]);
  const z = standingHeightM(project, [to[0], to[1]]) + over;
  return [to[0], to[1], Math.round(z * 1e6) / 1e6];
}
