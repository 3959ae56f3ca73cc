/** What a loudspeaker's box may not run into, and by how much it does. */

import { AXES } from '../room/faces';
import { boxBefore, leafOf } from '../room/openings';
import { mapPoint } from '../room/point';
import type { Patch, Point, Project } from '../room/project';
import { screenRect } from '../room/screen';
import { type Seat, seatsOf } from '../room/seats';
import { outsideShellM } from '../room/space';
import { distanceToBoxM, overlapM, TOUCH_M, type Box } from '../scene/box';
import { subwooferBox } from '../scene/subwoofer-box';
import type { SpeakerBox } from './box';
import { mountFaces } from './mount-face';

/** How far a screen and its frame stand before the wall, m (common practice). */
const SCREEN_DEPTH_M = 0.05;
/** How far the casing of a door or a window stands before the wall, m (common practice). */
export const CASING_M = 0.05;
/** Ears no nearer to a cabinet than this, m (common practice). */
export const HEAD_CLEARANCE_M = 0.3;
/** What hangs over a place where people walk hangs no lower than this, m (common practice). */
export const HEADROOM_M = 2;
/** Nobody walks nearer to a wall than this, m (our own convention). */
const WALK_OFF_WALL_M = 0.3;

export type ObstacleKind = 'solid' | 'door' | 'window' | 'screen' | 'subwoofer' | 'swing';

export interface Obstacle {
  readonly kind: ObstacleKind;
  readonly id: string;
  readonly box: Box;
  /** Of a door's swing: the hinge in plan, [x, y] in metres; the leaf is as wide as its box. */
  readonly hinge?: readonly [number, number];
  readonly leafM?: number;
}

export interface Clash {
  readonly kind: ObstacleKind | 'speaker' | 'head' | 'walkway' | 'shell';
  /** Id of what is run into; a channel for a loudspeaker, `row seat` for a head. */
  readonly what: string;
  /** How deep it runs in, m; for a head the distance, for a walkway the height above the floor. */
  readonly valueM: number;
  /** Least for a head and a walkway, most for all others. */
  readonly limitM: number;
}

/** Everything in the room but the loudspeakers themselves and the people. */
export function obstaclesIn(project: Project): readonly Obstacle[] {
  const { solids, patches } = project.room;
  const screen = screenRect(project);
  return [
    ...solids.map(({ id, min, max }): Obstacle => ({ kind: 'solid', id, box: { min, max } })),
    ...patches.flatMap((patch) => openings(project, patch)),
    {
      kind: 'screen',
      id: 'screen',
      box: {
        min: [screen.leftX, 0, screen.bottomZ],
        max: [screen.rightX, SCREEN_DEPTH_M, screen.topZ],
      },
    },
    ...project.speakers.subwoofers.map((sub): Obstacle => {
      const { id, box } = subwooferBox(project, sub);
      return { kind: 'subwoofer', id, box };
    }),
  ];
}

/** A door or window, and the quarter circle of a door's leaf. */
function openings({ room }: Project, patch: Patch): readonly Obstacle[] {
  const kind = patch.kind === 'door' || patch.kind === 'window' ? patch.kind : null;
  const face = kind && mountFaces(room).find(({ name }) => name === patch.face);
  if (!kind || !face) return [];
  const casing: Obstacle = { kind, id: patch.id, box: boxBefore(face, patch.rect, CASING_M) };
  const leaf = leafOf(room, patch);
  if (!leaf?.sweep) return [casing];
  const { sweep, hinge, widthM } = leaf;
  return [casing, { kind: 'swing', id: patch.id, box: sweep, hinge, leafM: widthM }];
}

/** How deep a box stands in the sweep of the leaf, m. */
function inSwingM(box: Box, { box: sweep, hinge, leafM }: Obstacle): number {
  if (!hinge || leafM === undefined || overlapM(box, sweep) === 0) return 0;
  const near = (axis: 0 | 1): number =>
    Math.min(
      Math.max(hinge[axis], box.min[axis], sweep.min[axis]),
      box.max[axis],
      sweep.max[axis],
    ) - hinge[axis];
  const depth = leafM - Math.hypot(near(0), near(1));
  return depth > TOUCH_M ? depth : 0;
}

/** What the box takes for itself: its part in the room, or the face of the baffle where it is flush. */
export function claimOf({ inRoom, cabinet, axis, looks, face }: SpeakerBox): Box {
  if (inRoom) return inRoom;
  const at = face?.at ?? cabinet.max[axis];
  const put = (corner: Point, value: number): Point =>
    mapPoint(corner, (old, n) => (n === axis ? value : old));
  const [a, b] = [at, at + looks * 0.02];
  return { min: put(cabinet.min, Math.min(a, b)), max: put(cabinet.max, Math.max(a, b)) };
}

/** Everything that the box runs into or comes too near to. `others` are the other loudspeakers. */
export function clashesOf(
  box: SpeakerBox,
  project: Project,
  obstacles: readonly Obstacle[],
  others: readonly SpeakerBox[],
): readonly Clash[] {
  return [...clashes(box, project, obstacles, others, seatsOf(project))];
}

/** True where the box runs into nothing and comes too near to nobody of `seats`. */
export function isFree(
  box: SpeakerBox,
  project: Project,
  obstacles: readonly Obstacle[],
  others: readonly SpeakerBox[],
  seats: readonly Seat[],
): boolean {
  return clashes(box, project, obstacles, others, seats).next().done === true;
}

/** One clash after the other, so that who asks for one alone need not wait for all. */
function* clashes(
  box: SpeakerBox,
  project: Project,
  obstacles: readonly Obstacle[],
  others: readonly SpeakerBox[],
  seats: readonly Seat[],
): Generator<Clash, undefined> {
  const claim = claimOf(box);
  for (const obstacle of obstacles) {
    const { kind, id } = obstacle;
    if (kind === 'screen' && box.mount === 'behind-screen') continue;
    // A leaf passes before what is flush.
    if (kind === 'swing' && !box.inRoom) continue;
    const depth = kind === 'swing' ? inSwingM(claim, obstacle) : overlapM(claim, obstacle.box);
    if (depth > 0) yield { kind, what: id, valueM: depth, limitM: 0 };
  }
  for (const other of others) {
    const depth = overlapM(claim, claimOf(other));
    if (depth > 0) yield { kind: 'speaker', what: other.channel, valueM: depth, limitM: 0 };
  }
  for (const { row, seat, position } of seats) {
    const distanceM = distanceToBoxM(claim, position);
    if (distanceM < HEAD_CLEARANCE_M)
      yield { kind: 'head', what: `${row} ${seat}`, valueM: distanceM, limitM: HEAD_CLEARANCE_M };
  }
  const headroom = box.inRoom ? headroomM(box, box.inRoom, project) : null;
  if (headroom !== null && headroom < HEADROOM_M - TOUCH_M)
    yield { kind: 'walkway', what: 'floor', valueM: headroom, limitM: HEADROOM_M };
  const out = sidewaysOutM(box, project);
  if (out > TOUCH_M) yield { kind: 'shell', what: 'shell', valueM: out, limitM: 0 };
  return undefined;
}

/** Height of what hangs above a place where people walk, m; null where nobody walks below it. */
function headroomM({ mount }: SpeakerBox, { min, max }: Box, { room }: Project): number | null {
  if (mount !== 'ceiling' && mount !== 'soffit') return null;
  const { width, length } = room.size;
  const offWall = Math.min(max[0], max[1], width - min[0], length - min[1]);
  if (offWall < WALK_OFF_WALL_M) return null;
  const below = room.solids
    .filter((solid) => solid.max[2] <= min[2] + TOUCH_M && overPlan(solid, { min, max }))
    .map((solid) => solid.max[2]);
  return min[2] - Math.max(0, ...below);
}

const overPlan = (a: Box, b: Box): boolean =>
  a.min[0] < b.max[0] && b.min[0] < a.max[0] && a.min[1] < b.max[1] && b.min[1] < a.max[1];

/** How far the cabinet reaches out of the shell beside its baffle, m. */
function sidewaysOutM({ cabinet, axis, face }: SpeakerBox, { room }: Project): number {
  const axes = AXES.filter((n) => n !== axis || face === null);
  return Math.max(0, outsideShellM(room.size, cabinet.min, cabinet.max, axes));
}
