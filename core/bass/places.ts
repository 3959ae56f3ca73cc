/**
 * Where a subwoofer could stand: boxes on the floor along the four walls of the shell, and what is in
 * the way of each.
 */

import type { Point, Project } from '../room/project';
import { obstacleOf, type Obstacle } from './obstacles';

/** Side of a box, m (common practice). */
export const DEFAULT_BOX_M = 0.4;
/** Closer places than this are not told apart, m. */
export const LEAST_STEP_M = 0.05;

export interface PlaceOptions {
  /** Distance between neighbours along a wall, m; `LEAST_STEP_M` or more. */
  readonly stepM: number;
  /** Side of the box, m; its acoustic centre is half of it from wall and floor. */
  readonly boxM?: number;
}

export interface ForbiddenPlace {
  readonly position: Point;
  readonly why: Obstacle;
}

export interface Places {
  /** Acoustic centres, m, to the millimetre. */
  readonly allowed: readonly Point[];
  readonly forbidden: readonly ForbiddenPlace[];
}

/**
 * All places, around the room from the front left corner: front wall, right wall, back wall, left wall,
 * each corner once. Steps are counted from the middle of each wall, where odd modes are silent; the
 * last one before a corner is left out where it would be nearer than half a step. None where the box
 * does not fit into the shell.
 */
export function subwooferPlaces(project: Project, options: PlaceOptions): Places {
  const { width, length, height } = project.room.size;
  const boxM = options.boxM ?? DEFAULT_BOX_M;
  if (boxM > Math.min(width, length, height)) return { allowed: [], forbidden: [] };
  const z = millimetres(boxM / 2);
  const xs = alongWall(width, options.stepM, boxM);
  const ys = alongWall(length, options.stepM, boxM);
  const [left, right] = [xs[0] ?? 0, xs.at(-1) ?? 0];
  const [front, back] = [ys[0] ?? 0, ys.at(-1) ?? 0];
  const around: Point[] = [
    ...xs.map((x): Point => [x, front, z]),
    ...ys.slice(1, -1).map((y): Point => [right, y, z]),
    ...xs.map((x): Point => [x, back, z]).reverse(),
    ...ys
      .slice(1, -1)
      .map((y): Point => [left, y, z])
      .reverse(),
  ];
  const seen = new Set<string>();
  const allowed: Point[] = [];
  const forbidden: ForbiddenPlace[] = [];
  for (const position of around) {
    if (seen.has(position.join())) continue;
    seen.add(position.join());
    const why = obstacleOf(project, position, boxM);
    if (why) forbidden.push({ position, why });
    else allowed.push(position);
  }
  return { allowed, forbidden };
}

const millimetres = (lengthM: number): number => Math.round(lengthM * 1000) / 1000;

/** Centres along a wall of `lengthM`, rising, the same from either end. */
function alongWall(lengthM: number, stepM: number, boxM: number): readonly number[] {
  const step = Math.max(stepM, LEAST_STEP_M);
  const half = (lengthM - boxM) / 2;
  const near = [millimetres(boxM / 2)];
  for (let n = Math.floor(half / step); n > 0; n--) {
    if (half - n * step >= step / 2) near.push(millimetres(lengthM / 2 - n * step));
  }
  const far = near.map((at) => millimetres(lengthM - at)).reverse();
  return [...near, millimetres(lengthM / 2), ...far];
}
