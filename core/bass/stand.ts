/** What a subwoofer stands on: the floor, or the stage or riser below it. */

import type { Point, Project, Solid } from '../room/project';

type Standing = Pick<Project, 'room'>;

/** What touches is no gap, m. */
const TOUCH_M = 0.001;

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

/** True where a box of side `boxM` would stand on one level, with all four of its corners. */
export function standsLevel(project: Standing, [x, y]: Point, boxM: number): boolean {
  const inset = boxM / 2 - TOUCH_M;
  const middle = standingHeightM(project, [x, y]);
  return [-inset, inset].every((dx) =>
    [-inset, inset].every((dy) => standingHeightM(project, [x + dx, y + dy]) === middle),
  );
}

/** `to`, as high above what it stands on as `from` is: what is moved along a room climbs its stages. */
export function carried(project: Standing, from: Point, to: Point): Point {
  const over = from[2] - standingHeightM(project, [from[0], from[1]]);
  const z = standingHeightM(project, [to[0], to[1]]) + over;
  return [to[0], to[1], Math.round(z * 1e6) / 1e6];
}
