/** Places for one channel on surfaces that exist, within its window at the reference seat. */

import { radians } from '../quantity/angle';
import { roundLength } from '../quantity/length';
import { FACE_NORMALS, faceAxes, patchSide, roleOf, solidOfFace } from '../room/faces';
import { mapPoint } from '../room/point';
import type { Mount, PlacedSpeaker, Point, Room } from '../room/project';
import { isInTheOpen } from '../room/space';
import { placesBesidePicture } from '../speakers/beside-picture';
import { isOnPicture, speakerBox, USUAL_BOX_M, type SpeakerBox } from '../speakers/box';
import { directionFrom, directionVector, type Direction } from '../speakers/direction';
import { hiddenPicture, hidesPicture } from '../scene/hidden-picture';
import { degreesOutside } from '../speakers/judge';
import type { Channel } from '../speakers/layouts';
import { facesOf } from '../scene/faces';
import { WALL_CLEARANCE_M } from '../speakers/nominal-place';
import { clashesOf, type SpeakerClash } from '../speakers/obstacles';
import { onTape } from '../speakers/on-tape';
import { castRay } from '../scene/ray';
import { sightFrom, type SightField } from '../speakers/strip-column';
import { harmOf, type Harm } from './harm';
import { onStuds, type PlacingContext } from './placing-context';
import { practice } from '../room/practice/practice';

export interface Candidate {
  readonly channel: string;
  readonly position: Point;
  readonly mount: Mount;
  /** The surface that carries it; null for a stand. */
  readonly face: string | null;
  readonly direction: Direction;
  readonly box: SpeakerBox;
  readonly harm: Harm;
  /** False where studs were asked for and none lies within the window. */
  readonly onStud: boolean;
  /** On which side of a picture that covers the whole window it goes; null within the window. */
  readonly beside: 'below' | 'above' | null;
}

export interface Candidates {
  readonly channel: Channel;
  readonly list: readonly Candidate[];
  /** What stood in the way of places that were given up, most often first. */
  readonly blockers: readonly { readonly kind: SpeakerClash['kind']; readonly what: string }[];
}

/** A box may reach so far over the edge of its face, m. */
const SLACK_M = 0.001;

/** Directions looked at along each side of a window. */
const AZIMUTHS = 7;
const ELEVATIONS = 4;
/** Stands come no nearer to the ears than this, and to the wall than that, m. */
const STAND_FROM_M = practice('stand-from-ears');
const STAND_OFF_WALL_M = practice('stand-off-wall');
const STAND_STEP_M = 0.4;
/** A stand holds a loudspeaker between these heights, m. */
const STAND_HEIGHTS_M = practice('stand-heights');

interface Idea {
  readonly position: Point;
  readonly mount: Mount;
  readonly face: string | null;
}

/** `own` is the channel as it is placed now, if it is: it keeps its size and its aim. */
export function candidatesFor(
  context: PlacingContext,
  channel: Channel,
  own: PlacedSpeaker | undefined,
): Candidates {
  const list: Candidate[] = [];
  const blocked = new Map<string, { readonly clash: SpeakerClash; count: number }>();
  const seen = new Set<string>();
  for (const idea of ideas(context, channel, own)) {
    for (const { position, mount, face, onStud } of withStuds(context, idea)) {
      const taped = tapedPlace(context, idea, position, onStud, own);
      const key = `${mount} ${taped.join()}`;
      if (seen.has(key)) continue;
      seen.add(key);
      // Where the place on the tape does not do, the exact one may.
      const tries = [taped, position].flatMap((at) => tried(context, channel, own, idea, at) ?? []);
      const found = tries.find((made) => 'harm' in made);
      const [clash] = tries.filter((made) => 'kind' in made);
      if (found) list.push({ ...found, channel: channel.label, mount, face, onStud, beside: null });
      else if (clash) {
        const name = `${clash.kind} ${clash.what}`;
        blocked.set(name, { clash, count: (blocked.get(name)?.count ?? 0) + 1 });
      }
    }
  }
  const isCovered = [...blocked.values()].some(({ clash }) => clash.kind === 'screen');
  if (list.length === 0 && isCovered) list.push(...besidePicture(context, channel, own));
  // A place off the studs is for want of one on them.
  const best = list.some(({ onStud }) => onStud) ? list.filter(({ onStud }) => onStud) : list;
  return {
    channel,
    list: best.sort((a, b) => roughly(a.harm.cost) - roughly(b.harm.cost)),
    blockers: [...blocked.values()]
      .sort((a, b) => b.count - a.count)
      .map(({ clash: { kind, what } }) => ({ kind, what })),
  };
}

/** The place on the carpenter's step along its surface, and on its stud. */
function tapedPlace(
  { project: { room }, studPitchM, units }: PlacingContext,
  { face, mount }: Idea,
  position: Point,
  onStud: boolean,
  own: PlacedSpeaker | undefined,
): Point {
  if (face === null) return onTape(room, position, units);
  const { axis } = FACE_NORMALS[patchSide(face)];
  const hangsOnStud = onStud && studPitchM !== null && (mount === 'on-wall' || mount === 'in-wall');
  return onTape(room, position, units, own?.boxM?.[2], hangsOnStud ? [axis === 0 ? 1 : 0] : []);
}

/** What a place within the window is worth, what is in its way there, or null where it is none. */
function tried(
  context: PlacingContext,
  channel: Channel,
  own: PlacedSpeaker | undefined,
  idea: Idea,
  position: Point,
): Pick<Candidate, 'position' | 'direction' | 'box' | 'harm'> | SpeakerClash | null {
  const { project } = context;
  const { mount } = idea;
  const direction = directionFrom(context.reference.position, position);
  if (degreesOutside(direction, channel) > 0) return null;
  if (!isInTheOpen(towards(position, context.reference.position), project.room)) return null;
  if (!fitsFace(project.room, idea, position, own?.boxM ?? USUAL_BOX_M)) return null;
  const box = speakerBox(project, { ...own, channel: channel.label, position, mount });
  const clash =
    clashesOf(box, project, context.bodies, context.pinned)[0] ?? beforePicture(context, box);
  return (
    clash ?? {
      position,
      direction,
      box,
      harm: harmOf(context, channel, position, mount, direction),
    }
  );
}

/** Below or above a picture that covers the window: outside of it, and as near as can be. */
function besidePicture(
  context: PlacingContext,
  channel: Channel,
  own: PlacedSpeaker | undefined,
): readonly Candidate[] {
  const { project, bodies, pinned, studPitchM, units } = context;
  if (!context.mounts.includes('on-wall')) return [];
  return placesBesidePicture(project, channel, own, bodies, pinned, units).map(
    ({ side, position }): Candidate => {
      const { label } = channel;
      const direction = directionFrom(context.reference.position, position);
      const box = speakerBox(project, { ...own, channel: label, position, mount: 'on-wall' });
      const harm = harmOf(context, channel, position, 'on-wall', direction);
      const cost = harm.cost + degreesOutside(direction, channel);
      const [x] =
        studPitchM === null ? position : onStuds(position, 'front', 'on-wall', studPitchM);
      return {
        channel: label,
        position,
        mount: 'on-wall',
        face: 'front',
        direction,
        box,
        harm: { ...harm, cost },
        onStud: Math.abs(x - position[0]) < SLACK_M,
        beside: side,
      };
    },
  );
}

/** A box that stands before the picture as seen from a seat, as though it ran into it. */
function beforePicture({ project, people }: PlacingContext, box: SpeakerBox): SpeakerClash | null {
  if (!box.inRoom || !hidesPicture(box.inRoom, project, people)) return null;
  const valueM = hiddenPicture(box.inRoom, project, people)?.depthM ?? 0;
  return { kind: 'screen', what: 'screen', valueM, limitM: 0 };
}

/** Costs closer than a thousandth of a degree are the same: the order of the ideas decides. */
export const roughly = (cost: number): number => Math.round(cost * 1000);

/** Samples of a range from the end nearer to straight ahead, so that both sides are searched alike. */
function samples([low, high]: readonly [number, number], count: number): readonly number[] {
  if (low === high) return [low];
  const [from, to] = Math.abs(low) <= Math.abs(high) ? [low, high] : [high, low];
  return Array.from({ length: count }, (_, i) => from + ((to - from) * i) / (count - 1));
}

function* ideas(
  context: PlacingContext,
  channel: Channel,
  own: PlacedSpeaker | undefined,
): Generator<Idea> {
  const { room } = context.project;
  const ears = context.reference.position;
  const flush = sightFrom(ears, room, 0);
  const hung = sightFrom(ears, room, own?.boxM?.[2] ?? WALL_CLEARANCE_M);
  const hasPicture = context.mounts.includes('behind-screen');
  for (const azimuth of new Set([...samples(channel.azimuth, AZIMUTHS), channel.nominalAzimuth]))
    for (const elevation of samples(channel.elevation, ELEVATIONS)) {
      const built = flush && meets(flush, azimuth, elevation);
      if (built) {
        const behind = built.face === 'front' && isOnPicture(context.project, built.position);
        const mount = behind ? 'behind-screen' : mountOn(context, built.face);
        if (mount !== null && context.mounts.includes(mount) && (!behind || hasPicture))
          yield { ...built, mount };
      }
      const before = hung && meets(hung, azimuth, elevation);
      if (
        before &&
        context.mounts.includes('on-wall') &&
        mountOn(context, before.face) === 'in-wall'
      )
        yield { ...before, mount: 'on-wall' };
      if (before && context.mounts.includes('stand'))
        yield* stands(ears, azimuth, elevation, before.position);
    }
}

/** What builds a loudspeaker flush into a face; null for a floor. */
function mountOn({ project }: PlacingContext, face: string): Mount | null {
  const role = roleOf(face);
  if (role === 'floor') return null;
  const solid = project.room.solids.find(({ id }) => id === solidOfFace(face));
  if (solid && ['soffit', 'beam'].includes(solid.kind)) return 'soffit';
  return role === 'ceiling' ? 'ceiling' : 'in-wall';
}

function meets(
  view: SightField,
  azimuth: number,
  elevation: number,
): { readonly face: string; readonly position: Point } | null {
  const slope = Math.tan(radians(Math.min(Math.max(elevation, -89), 89)));
  const along = radians(azimuth);
  const met = castRay(view, view.ears, [-Math.sin(along), -Math.cos(along), slope]);
  return met && { face: met.face, position: rounded(met.at) };
}

const rounded = (at: Point): Point => mapPoint(at, roundLength);

/** A millimetre from the place to the ears: what lies on a face is not in what is behind it. */
function towards(place: Point, ears: Point): Point {
  const share =
    SLACK_M / Math.max(Math.hypot(...place.map((at, n) => (ears[n] ?? at) - at)), SLACK_M);
  return mapPoint(place, (at, n) => at + (ears[n] - at) * share);
}

/** True where the face is large enough around the place for the front of the box. */
function fitsFace(room: Room, { face: name }: Idea, at: Point, [width, height]: Point): boolean {
  const face = name === null ? null : facesOf(room).find((known) => known.name === name);
  if (!face) return name === null;
  const [u, v] = faceAxes(patchSide(face.name));
  const [u0, v0, u1, v1] = face.rect;
  return (
    at[u] - width / 2 > u0 - SLACK_M &&
    at[u] + width / 2 < u1 + SLACK_M &&
    at[v] - height / 2 > v0 - SLACK_M &&
    at[v] + height / 2 < v1 + SLACK_M
  );
}

function* stands(ears: Point, azimuth: number, elevation: number, wall: Point): Generator<Idea> {
  const ray = directionVector(azimuth, elevation);
  const wallM = Math.hypot(...wall.map((at, n) => at - (ears[n] ?? 0))) - STAND_OFF_WALL_M;
  for (let reach = wallM; reach >= STAND_FROM_M; reach -= STAND_STEP_M) {
    const position = rounded([
      ears[0] + ray[0] * reach,
      ears[1] + ray[1] * reach,
      ears[2] + ray[2] * reach,
    ]);
    if (position[2] < STAND_HEIGHTS_M[0] || position[2] > STAND_HEIGHTS_M[1]) continue;
    yield { position, mount: 'stand', face: null };
  }
}

/** The idea on the nearest stud where studs count, and as it is for want of one. */
function withStuds(
  { studPitchM }: PlacingContext,
  idea: Idea,
): readonly (Idea & { readonly onStud: boolean })[] {
  const counts = idea.mount === 'on-wall' || idea.mount === 'in-wall';
  if (studPitchM === null || !counts || idea.face === null) return [{ ...idea, onStud: true }];
  const position = rounded(onStuds(idea.position, idea.face, idea.mount, studPitchM));
  return [
    { ...idea, position, onStud: true },
    { ...idea, onStud: false },
  ];
}
