/** Why the box of a subwoofer cannot stand at a place: one answer for search, drag and remedy alike. */

import { boxBefore, leafOf, planeOf } from '../room/openings';
import { isWay } from '../room/patch-kinds';
import type { Patch, Point, Project, Row } from '../room/project';
import { screenRect } from '../room/screen';
import { rowCentreX } from '../room/seats';
import { isInTheOpen, outsideShellM } from '../room/space';
import { overlapM, TOUCH_M } from '../scene/box';
import { standsLevel } from '../scene/stand';
import { boxOfSize, subwooferBox } from '../scene/subwoofer-box';
import { speakerBox } from '../speakers/box';
import { placedOf } from '../speakers/judge';
import { layoutOf } from '../speakers/layouts';
import { CASING_M, claimOf } from '../speakers/obstacles';

export type Obstacle =
  /** It would stand in a solid of this id, or over the edge of it. */
  | { readonly kind: 'fitting'; readonly id: string }
  /** Part of it would be outside the shell. */
  | { readonly kind: 'outside' }
  /** It would stand where the leaf of this patch swings. */
  | { readonly kind: 'door'; readonly id: string }
  /** It would cover part of it. */
  | { readonly kind: 'window'; readonly id: string }
  /** It would rise in front of the picture. */
  | { readonly kind: 'picture' }
  /** It would run into the box of this channel, or what it stands on. */
  | { readonly kind: 'speaker'; readonly channel: string }
  | { readonly kind: 'subwoofer'; readonly id: string }
  | { readonly kind: 'seat'; readonly row: string; readonly seat: number }
  /** It would leave no way to walk past the end of this row. */
  | { readonly kind: 'walkway'; readonly row: string };

/** Least distance of a box from a listener's ears in plan, m. */
export const EARS_CLEAR_M = 0.3;
/** What a seat covers behind and before the ears, m (common practice); it is as wide as the pitch. */
const SEAT_BEHIND_M = 0.3;
const SEAT_BEFORE_M = 0.6;

/** Least width that one person walks through, m (common practice). */
const WALK_M = 0.6;

/** A rectangle on the floor: [x0, y0, x1, y1], m. */
type Plan = readonly [number, number, number, number];

const overlaps = (a: Plan, b: Plan): boolean =>
  Math.min(a[2] - b[0], b[2] - a[0], a[3] - b[1], b[3] - a[1]) > TOUCH_M;

/** What is in the way of a box with its middle at a place; null where nothing is. */
export type InTheWay = (position: Point) => Obstacle | null;

/**
 * The first of fitting, shell, door, window, picture, loudspeaker, subwoofer, seat, walkway. `others` are
 * the subwoofers that stay where they are.
 */
export function inTheWay(
  project: Project,
  sizeM: Point,
  others: Project['speakers']['subwoofers'] = [],
): InTheWay {
  const { size, solids, patches } = project.room;
  const swings = patches.flatMap((patch) => {
    const plan = swingOf(project, patch);
    return plan ? [{ id: patch.id, plan }] : [];
  });
  const windows = patches.flatMap((patch) => {
    const plane = patch.kind === 'window' ? planeOf(project.room, patch.face) : null;
    return plane ? [{ id: patch.id, box: boxBefore(plane, patch.rect, CASING_M) }] : [];
  });
  const { leftX, rightX, bottomZ } = screenRect(project);
  const atFront: Plan = [leftX, 0, rightX, sizeM[2]];
  const layout = layoutOf(project.speakers.layout, project.speakers.recommendation) ?? null;
  const speakers = placedOf(project, layout).map((speaker) => ({
    channel: speaker.channel,
    box: claimOf(speakerBox(project, speaker)),
  }));
  const standing = others.map((sub) => subwooferBox(project, sub));
  const ways = project.seating.rows.flatMap((row) => waysPast(row, size.width));

  return (position) => {
    const box = boxOfSize(project, position, sizeM);
    const { min: low, max: high } = box;
    const plan: Plan = [low[0], low[1], high[0], high[1]];
    const solid =
      solids.find(
        ({ min, max }) =>
          overlaps(plan, [min[0], min[1], max[0], max[1]]) &&
          Math.min(high[2] - min[2], max[2] - low[2]) > TOUCH_M,
      ) ?? (standsLevel(project, box) ? undefined : edgeUnder(project, plan));
    if (solid) return { kind: 'fitting', id: solid.id };

    const out = outsideShellM(size, box.min, box.max);
    if (out > TOUCH_M || !isInTheOpen(position, project.room)) return { kind: 'outside' };

    const door = swings.find((swing) => overlaps(plan, swing.plan));
    if (door) return { kind: 'door', id: door.id };
    const window = windows.find((known) => overlapM(box, known.box) > 0);
    if (window) return { kind: 'window', id: window.id };
    if (high[2] - bottomZ > TOUCH_M && overlaps(plan, atFront)) return { kind: 'picture' };
    const speaker = speakers.find((known) => overlapM(box, known.box) > 0);
    if (speaker) return { kind: 'speaker', channel: speaker.channel };
    const other = standing.find((known) => overlapM(box, known.box) > 0);
    if (other) return { kind: 'subwoofer', id: other.id };

    for (const row of project.seating.rows) {
      const seat = seatInTheWay(row, size.width, plan);
      if (seat > 0) return { kind: 'seat', row: row.id, seat };
    }
    const way = ways.find((known) => narrows(known, plan));
    return way ? { kind: 'walkway', row: way.row } : null;
  };
}

/** The same of one place, with the subwoofers `others` where they are. */
export function obstacleOf(
  project: Project,
  position: Point,
  sizeM: Point,
  others: Project['speakers']['subwoofers'] = [],
): Obstacle | null {
  return inTheWay(project, sizeM, others)(position);
}

/** The stage or riser whose edge lies under the box. */
function edgeUnder({ room }: Project, plan: Plan): { readonly id: string } | undefined {
  return room.solids.find(
    ({ kind, min, max }) =>
      (kind === 'stage' || kind === 'riser') &&
      overlaps(plan, [min[0], min[1], max[0], max[1]]) &&
      !(plan[0] >= min[0] && plan[1] >= min[1] && plan[2] <= max[0] && plan[3] <= max[1]),
  );
}

/** The way past an end of a row, from the wall to its last seat. */
interface Way {
  readonly row: string;
  readonly plan: Plan;
}

/** Ways past both ends of a row that are wide enough to walk. */
function waysPast(row: Row, widthM: number): readonly Way[] {
  const half = (row.seats * row.pitchM) / 2;
  const centre = rowCentreX(row, widthM);
  const [front, back] = [row.y - SEAT_BEFORE_M, row.y + SEAT_BEHIND_M];
  const sides: readonly Plan[] = [
    [0, front, centre - half, back],
    [centre + half, front, widthM, back],
  ];
  return sides
    .filter((plan) => plan[2] - plan[0] >= WALK_M - TOUCH_M)
    .map((plan) => ({ row: row.id, plan }));
}

/** True where neither side of the box leaves room to walk. */
function narrows({ plan: way }: Way, plan: Plan): boolean {
  if (!overlaps(way, plan)) return false;
  return Math.max(plan[0] - way[0], way[2] - plan[2]) < WALK_M - TOUCH_M;
}

/**
 * The floor before a door or a passage that must stay clear: what the leaf swings over, or the step that
 * one person takes where none swings in. Null for all else, and in floor or ceiling.
 */
function swingOf({ room }: Project, patch: Patch): Plan | null {
  const plane = isWay(patch) ? planeOf(room, patch.face) : null;
  if (!plane || plane.side === 'floor' || plane.side === 'ceiling') return null;
  const { min, max } = leafOf(room, patch)?.sweep ?? boxBefore(plane, patch.rect, WALK_M);
  return [min[0], min[1], max[0], max[1]];
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
