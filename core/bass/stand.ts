/** What a subwoofer stands on: the floor, or the stage or riser below it. */

import type { Point, Project } from '../room/project';

type Standing = Pick<Project, 'room'>;

/** What touches is no gap, m. */
const TOUCH_M = 0.001;

/** Height of the floor, or of the stages and risers stacked on it, below a point in plan; m. */
export function standingHeightM({ room }: Standing, [x, y]: readonly [number, number]): number {
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
  let top = 0;
  for (const { min, max } of below) {
    if (min[2] <= top + TOUCH_M) top = Math.max(top, max[2]);
  }
  return top;
}

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
