/** Why a box cannot stand at a place. */

import { isDoor, planeOf, sweepBefore } from '../room/openings';
import type { Patch, Point, Project, Row } from '../room/project';
import { screenRect } from '../room/screen';
import { rowCentreX } from '../room/seats';
import { isInTheOpen, outsideShellM } from '../room/space';

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

  const out = outsideShellM(size, [plan[0], plan[1], z - half], [plan[2], plan[3], z + half]);
  if (out > TOUCH_M || !isInTheOpen(position, project.room)) return { kind: 'outside' };

  const door = project.room.patches.find((patch) => {
    const swing = swingOf(project, patch);
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

/** The floor that the leaf of a door swings over; null for what is no door, or lies in floor or ceiling. */
function swingOf({ room }: Project, patch: Patch): Plan | null {
  const plane = isDoor(patch) ? planeOf(room, patch.face) : null;
  const sweep = plane && sweepBefore(plane, patch.rect);
  return sweep && [sweep.min[0], sweep.min[1], sweep.max[0], sweep.max[1]];
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
