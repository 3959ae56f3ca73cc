/** What a loudspeaker's box runs into, and what loudspeakers take of the room as bodies in it. */

import { AXES } from '../room/faces';
import { mapPoint } from '../room/point';
import type { Point, Project } from '../room/project';
import { outsideShellM } from '../room/space';
import type { Body, SpeakerBody } from '../scene/bodies';
import { TOUCH_M, type Box } from '../scene/box';
import { clashes, type ClashKind, type Visitor } from '../scene/clashes';
import { speakerBox, type SpeakerBox } from './box';
import { placedOf } from './judge';
import { laterPlan } from './later';
import { layoutOf } from './layouts';
import { practice } from '../room/practice/practice';

/** What hangs over a place where people walk hangs no lower than this, m. */
export const HEADROOM_M = practice('headroom');
/** Nobody walks nearer to a wall than this, m. */
const WALK_OFF_WALL_M = practice('walk-off-wall');

export interface SpeakerClash {
  /** `walkway`: it hangs too low where people walk; `shell`: it reaches out of the room. */
  readonly kind: ClashKind | 'walkway' | 'shell';
  /** Id of what is run into; a channel for a loudspeaker, `row seat` for a head. */
  readonly what: string;
  /** How deep it runs in, m; for a head the distance, for a walkway the height above the floor. */
  readonly valueM: number;
  /** Least for a head, an aisle and a walkway, most for all others. */
  readonly limitM: number;
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

const asBody = (box: SpeakerBox, isLater = false): SpeakerBody => ({
  kind: 'speaker',
  id: box.channel,
  box: claimOf(box),
  isLater,
});

/** The loudspeakers of the layout, and those that are to come with a larger one: they keep their place. */
export function speakerBodies(project: Project): readonly SpeakerBody[] {
  const { layout, recommendation } = project.speakers;
  const playing = placedOf(project, layoutOf(layout, recommendation) ?? null);
  const later = (laterPlan(project)?.placed ?? []).filter((speaker) => !playing.includes(speaker));
  return [
    ...playing.map((speaker) => asBody(speakerBox(project, speaker))),
    ...later.map((speaker) => asBody(speakerBox(project, speaker), true)),
  ];
}

const asVisitor = (box: SpeakerBox): Visitor => ({
  box: claimOf(box),
  isOnFloor: box.mount === 'stand',
  isFlush: box.inRoom === null,
  isBehindPicture: box.mount === 'behind-screen',
});

/** Everything that the box runs into or comes too near to. `others` are the other loudspeakers. */
export function clashesOf(
  box: SpeakerBox,
  project: Project,
  bodies: readonly Body[],
  others: readonly SpeakerBox[],
): readonly SpeakerClash[] {
  return [...speakerClashes(box, project, bodies, others)];
}

/** True where the box runs into nothing and comes too near to nobody. */
export function isFree(
  box: SpeakerBox,
  project: Project,
  bodies: readonly Body[],
  others: readonly SpeakerBox[],
): boolean {
  return speakerClashes(box, project, bodies, others).next().done === true;
}

function* speakerClashes(
  box: SpeakerBox,
  project: Project,
  bodies: readonly Body[],
  others: readonly SpeakerBox[],
): Generator<SpeakerClash, undefined> {
  const visitor = asVisitor(box);
  for (const group of [bodies, others.map((other) => asBody(other))])
    for (const { kind, body, valueM, limitM } of clashes(visitor, group))
      yield { kind, what: body.id, valueM, limitM };
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
