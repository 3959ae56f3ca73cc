/**
 * The box that a subwoofer takes. `position` is the middle of it. It stands on its foot with its back to
 * the nearest upright surface, unless it fits before the walls the other way round only.
 */

import { roundLength } from '../quantity/length';
import { farCorner, mapPoint } from '../room/point';
import type { Point, Project, Subwoofer } from '../room/project';
import { boxAround, TOUCH_M, type Box } from './box';
import { standingHeightM } from './stand';
import { practice } from '../room/practice/practice';

type Standing = Pick<Project, 'room'>;

/** A usual box, m: width, height, depth. */
export const USUAL_SUBWOOFER_M: Point = practice('usual-subwoofer');

/** Smaller than this is no subwoofer, m. */
const LEAST_SIDE_M = practice('subwoofer-least-side');

export interface SubwooferBox {
  readonly id: string;
  readonly box: Box;
  /** Width, height and depth, m. */
  readonly sizeM: Point;
  /** False where its size is a usual one because the file gives none. */
  readonly isStated: boolean;
}

/** The box of a subwoofer of the project. */
export function subwooferBox(
  project: Standing,
  { id, position, boxM }: Pick<Subwoofer, 'id' | 'position' | 'boxM'>,
): SubwooferBox {
  const sizeM = boxM ?? assumedBoxM(project, position);
  return { id, sizeM, box: boxOfSize(project, position, sizeM), isStated: boxM !== undefined };
}

/** A usual box, or a smaller one where the place is too near to a wall or to what it stands on for that; m. */
function assumedBoxM(project: Standing, [x, y, z]: Point): Point {
  const { width, length } = project.room.size;
  const over = z - standingHeightM(project, [x, y]);
  const mostM = 2 * Math.min(x, width - x, y, length - y, over);
  return mostM < LEAST_SIDE_M
    ? USUAL_SUBWOOFER_M
    : [
        Math.min(USUAL_SUBWOOFER_M[0], mostM),
        Math.min(USUAL_SUBWOOFER_M[1], mostM),
        Math.min(USUAL_SUBWOOFER_M[2], mostM),
      ];
}

/** A box of a width, height and depth at a place, turned as it would stand there. */
export function boxOfSize(project: Standing, position: Point, [width, height, depth]: Point): Box {
  const turned = width !== depth && backAxis(project, position, [width, height, depth]) === 0;
  return boxAround(position, turned ? [depth, width, height] : [width, depth, height]);
}

/** Distances nearer to each other than this are alike, so that mirrored rooms are judged alike, m. */
const DUST_M = 1e-6;

/** The axis along which its depth lies; along the room where nothing decides. */
function backAxis({ room }: Standing, position: Point, [width, height, depth]: Point): 0 | 1 {
  const offM = [0, 1].map((axis) => wallM(room, position, axis === 0 ? 0 : 1, height));
  const [x, y] = [offM[0] ?? Infinity, offM[1] ?? Infinity];
  // How far it would reach into the walls with its back to one of either axis.
  const into = (alongX: number, alongY: number): number =>
    Math.max(0, alongX / 2 - x - TOUCH_M, alongY / 2 - y - TOUCH_M);
  const [backX, backY] = [into(depth, width), into(width, depth)];
  if (Math.abs(backX - backY) > DUST_M) return backX < backY ? 0 : 1;
  return x < y - DUST_M ? 0 : 1;
}

/** Metres from a place to the nearest wall, or side of a solid that stands beside it, along an axis. */
function wallM(
  { size, solids }: Project['room'],
  position: Point,
  axis: 0 | 1,
  heightM: number,
): number {
  const at = position[axis];
  const other = axis === 0 ? 1 : 0;
  const beside = solids.flatMap(({ min, max }): readonly number[] => {
    const across = position[other] > min[other] && position[other] < max[other];
    const level = min[2] < position[2] && max[2] >= position[2] + heightM / 2 - TOUCH_M;
    if (!across || !level) return [];
    return [min[axis] - at, at - max[axis]].filter((offM) => offM >= -TOUCH_M);
  });
  return Math.min(at, farCorner(size)[axis] - at, ...beside);
}

/**
 * The subwoofer with a box of another size, null for a usual one. It stays on its foot and against the
 * walls that it touches; elsewhere its middle stays.
 */
export function withBox(project: Standing, sub: Subwoofer, boxM: Point | null): Subwoofer {
  const far = farCorner(project.room.size);
  const { box } = subwooferBox(project, sub);
  const sizeM = boxM ?? USUAL_SUBWOOFER_M;
  const turned = boxOfSize(project, sub.position, sizeM);
  const position = mapPoint(sub.position, (at, axis) => {
    const half = (turned.max[axis] - turned.min[axis]) / 2;
    if (axis === 2 || Math.abs(box.min[axis]) <= TOUCH_M) return roundLength(box.min[axis] + half);
    return Math.abs(far[axis] - box.max[axis]) <= TOUCH_M ? roundLength(box.max[axis] - half) : at;
  });
  const fields = Object.entries({ ...sub, position, boxM }).filter(([, value]) => value !== null);
  return Object.fromEntries(fields) as unknown as Subwoofer;
}
