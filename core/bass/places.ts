/**
 * Where a subwoofer could stand: boxes on the floor, the stages and the risers, along the walls of the
 * shell and of the fittings that stand on the floor, and what is in the way of each.
 */

import { METRES_PER_INCH, type LengthUnits } from '../quantity/length';
import type { Point, Project, Solid } from '../room/project';
import { TOUCH_M } from '../scene/box';
import { standingHeightM } from '../scene/stand';
import { USUAL_SUBWOOFER_M } from '../scene/subwoofer-box';
import { inTheWay, type Obstacle } from './obstacles';

/** Box and step of a search in whole figures of `units`, m: 40 cm, or 16 in. */
export function searchDefaultsM(units: LengthUnits): {
  readonly boxM: Point;
  readonly stepM: number;
} {
  const sideM = units === 'metric' ? USUAL_SUBWOOFER_M[0] : 16 * METRES_PER_INCH;
  return { boxM: [sideM, sideM, sideM], stepM: sideM };
}

/** Closer places than this are not told apart, m. */
export const LEAST_STEP_M = 0.05;

export interface PlaceOptions {
  /** Distance between neighbours along a wall, m; `LEAST_STEP_M` or more. */
  readonly stepM: number;
  /** Width, height and depth of the box, m; its place is its middle. */
  readonly boxM?: Point;
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
 * each corner once; then around each fitting that stands on the floor and is as high as the box. Steps are counted from the middle of each wall, where odd modes are silent; the
 * last one before a corner is left out where it would be nearer than half a step. None where the box
 * does not fit into the shell.
 */
export function subwooferPlaces(project: Project, options: PlaceOptions): Places {
  const { width, length, height } = project.room.size;
  const boxM = options.boxM ?? USUAL_SUBWOOFER_M;
  const [wide, high, deep] = boxM;
  if (high > height || Math.max(wide, deep) > Math.min(width, length))
    return { allowed: [], forbidden: [] };
  const { stepM } = options;
  const xs = alongWall([0, width], stepM, wide);
  const ys = alongWall([0, length], stepM, wide);
  const [left, front] = [millimetres(deep / 2), millimetres(deep / 2)];
  const [right, back] = [millimetres(width - left), millimetres(length - front)];
  const at = (x: number, y: number): Point => [
    x,
    y,
    millimetres(standingHeightM(project, [x, y]) + high / 2),
  ];
  const around: Point[] = [
    ...xs.map((x) => at(x, front)),
    ...ys.slice(1, -1).map((y) => at(right, y)),
    ...xs.map((x) => at(x, back)).reverse(),
    ...ys
      .slice(1, -1)
      .map((y) => at(left, y))
      .reverse(),
    ...project.room.solids.flatMap((solid) =>
      isWall(project, solid, boxM)
        ? aroundSolid(solid, [width, length], stepM, boxM).map(([x, y]) => at(x, y))
        : [],
    ),
  ];
  const blocked = inTheWay(project, boxM);
  const seen = new Set<string>();
  const allowed: Point[] = [];
  const forbidden: ForbiddenPlace[] = [];
  for (const position of around) {
    if (seen.has(position.join())) continue;
    seen.add(position.join());
    const why = blocked(position);
    if (why) forbidden.push({ position, why });
    else allowed.push(position);
  }
  return { allowed, forbidden };
}

/** True for what stands on the floor (or on a stage) and rises at least as high as the box. */
function isWall(project: Project, { kind, min, max }: Solid, [, high]: Point): boolean {
  if (kind === 'stage' || kind === 'riser') return false;
  const middle = [(min[0] + max[0]) / 2, (min[1] + max[1]) / 2] as const;
  const floorM = standingHeightM(project, middle);
  return min[2] <= floorM + TOUCH_M && max[2] - floorM >= high - TOUCH_M;
}

/** Centres in plan of boxes against the four sides of a solid, as far as those lie in the shell. */
function aroundSolid(
  { min, max }: Solid,
  [width, length]: readonly [number, number],
  stepM: number,
  [wide, , deep]: Point,
): readonly (readonly [number, number])[] {
  const half = deep / 2;
  const within = (low: number, high: number, most: number): readonly [number, number] => [
    Math.max(low, 0),
    Math.min(high, most),
  ];
  const xs = alongWall(within(min[0], max[0], width), stepM, wide);
  const ys = alongWall(within(min[1], max[1], length), stepM, wide);
  const beside = (low: number, high: number, most: number): readonly number[] =>
    [low - half, high + half].filter((at) => at >= half - TOUCH_M && at <= most - half + TOUCH_M);
  const [left, front] = [beside(min[0], max[0], width), beside(min[1], max[1], length)];
  return [
    ...xs.flatMap((x) => front.map((y) => [x, y] as const)),
    ...ys.flatMap((y) => left.map((x) => [x, y] as const)),
  ].map(([x, y]) => [millimetres(x), millimetres(y)] as const);
}

const millimetres = (lengthM: number): number => Math.round(lengthM * 1000) / 1000;

/** Centres along a wall from one end to the other, rising, the same from either end; none where no box fits. */
function alongWall(
  [fromM, toM]: readonly [number, number],
  stepM: number,
  wideM: number,
): readonly number[] {
  if (toM - fromM < wideM) return [];
  const step = Math.max(stepM, LEAST_STEP_M);
  const half = (toM - fromM - wideM) / 2;
  const middle = (fromM + toM) / 2;
  const near = [millimetres(fromM + wideM / 2)];
  for (let n = Math.floor(half / step); n > 0; n--) {
    if (half - n * step >= step / 2) near.push(millimetres(middle - n * step));
  }
  const far = near.map((at) => millimetres(fromM + toM - at)).reverse();
  return [...new Set([...near, millimetres(middle), ...far])];
}
