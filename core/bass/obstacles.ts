/** Why a box cannot stand at a place. */

import { FACE_NORMALS, patchSide } from '../room/faces';
import type { Face, Patch, Point, Project, Row } from '../room/project';
import { screenRect } from '../room/screen';
import { rowCentreX } from '../room/seats';
import { isInTheOpen } from '../room/space';

export type Obstacle =
  /** It would stand in a solid of this id. */
  | { readonly kind: 'fitting'; readonly id: string }
  /** Part of it would be outside the shell. */
  | { readonly kind: 'outside' }
  /** It would stand where the leaf of this patch swings. */
  | { readonly kind: 'door'; readonly id: string }
  /** It would rise in front of the picture. */
  | { readonly kind: 'picture' }
  | { readonly kind: 'seat'; readonly row: string; readonly seat: number };

/** What runs into each other by no more than this touches, m: places are whole millimetres. */
const TOUCH_M = 0.001;
/** Least distance of a box from a listener's ears in plan, m. */
export const EARS_CLEAR_M = 0.3;
/** What a seat covers behind and before the ears, m (common practice); it is as wide as the pitch. */
const SEAT_BEHIND_M = 0.3;
const SEAT_BEFORE_M = 0.6;

/** A rectangle on the floor: [x0, y0, x1, y1], m. */
type Plan = readonly [number, number, number, number];

const overlaps = (a: Plan, b: Plan): boolean =>
  Math.min(a[2] - b[0], b[2] - a[0], a[3] - b[1], b[3] - a[1]) > TOUCH_M;

/**
 * What is in the way of a box of side `boxM` with its centre at `position`: the first of fitting, shell,
 * door, picture, seat; null where nothing is.
 */
export function obstacleOf(project: Project, position: Point, boxM: number): Obstacle | null {
  const half = boxM / 2;
  const [x, y, z] = position;
  const plan: Plan = [x - half, y - half, x + half, y + half];
  const { size, solids } = project.room;
  const solid = solids.find(
    ({ min, max }) =>
      overlaps(plan, [min[0], min[1], max[0], max[1]]) &&
      Math.min(z + half - min[2], max[2] - z + half) > TOUCH_M,
  );
  if (solid) return { kind: 'fitting', id: solid.id };

  const out = Math.max(
    -plan[0],
    -plan[1],
    plan[2] - size.width,
    plan[3] - size.length,
    half - z,
    z + half - size.height,
  );
  if (out > TOUCH_M || !isInTheOpen(position, project.room)) return { kind: 'outside' };

  const door = project.room.patches.find((patch) => {
    const swing = isDoor(patch) ? swingOf(project, patch) : null;
    return swing !== null && overlaps(plan, swing);
  });
  if (door) return { kind: 'door', id: door.id };

  const { leftX, rightX, bottomZ } = screenRect(project);
  const atFront: Plan = [leftX, 0, rightX, boxM];
  if (z + half - bottomZ > TOUCH_M && overlaps(plan, atFront)) return { kind: 'picture' };

  for (const row of project.seating.rows) {
    const seat = seatInTheWay(row, size.width, plan);
    if (seat > 0) return { kind: 'seat', row: row.id, seat };
  }
  return null;
}

/** A patch is a door by its name. */
const isDoor = (patch: Patch): boolean => patch.id.startsWith('door');

/** The floor that a leaf as wide as the opening swings over; null for what lies in floor or ceiling. */
function swingOf(project: Project, patch: Patch): Plan | null {
  const face: Face = patchSide(patch.face);
  const { axis, side } = FACE_NORMALS[face];
  if (axis === 2) return null;
  const [owner] = patch.face.split(':');
  const solid = patch.face.includes(':')
    ? project.room.solids.find(({ id }) => id === owner)
    : undefined;
  const far = axis === 0 ? project.room.size.width : project.room.size.length;
  // A wall is seen from within, a solid from without.
  const wall = solid ? (side === 1 ? solid.max[axis] : solid.min[axis]) : side === 1 ? far : 0;
  const inwards = solid ? side : -side;
  // The first axis of a wall runs along the floor.
  const [low, , high] = patch.rect;
  const swing = wall + inwards * (high - low);
  const [near, deep] = [Math.min(wall, swing), Math.max(wall, swing)];
  return axis === 0 ? [near, low, deep, high] : [low, near, high, deep];
}

/** The first seat of the row whose footprint or whose ears the box comes too near to; 0 for none. */
function seatInTheWay(row: Row, widthM: number, plan: Plan): number {
  const first = rowCentreX(row, widthM) - ((row.seats - 1) / 2) * row.pitchM;
  for (let n = 0; n < row.seats; n++) {
    const x = first + n * row.pitchM;
    const across = Math.max(plan[0] - x, x - plan[2], 0);
    const along = Math.max(plan[1] - row.y, row.y - plan[3], 0);
    const footprint: Plan = [
      x - row.pitchM / 2,
      row.y - SEAT_BEFORE_M,
      x + row.pitchM / 2,
      row.y + SEAT_BEHIND_M,
    ];
    if (Math.hypot(across, along) < EARS_CLEAR_M - TOUCH_M || overlaps(plan, footprint))
      return n + 1;
  }
  return 0;
}
