/**
 * Specular reflections by image sources, to the first or second order, off the shell's faces and the
 * faces of solids. A path counts where its points lie on what is exposed of their faces and no solid
 * stands in its legs. The source radiates alike in all directions (omnidirectional: real loudspeakers
 * beam at high frequencies, so what leaves them sideways and backwards is overstated), faces are taken
 * as plane and large against the wavelength, and nothing bends round an edge.
 * Allen and Berkley, J. Acoust. Soc. Am. 65 (1979) 943 (formula from memory); Kuttruff, Room
 * Acoustics, ch. 4 (from memory).
 */

import { degrees } from '../quantity/angle';
import type { Axis } from '../room/faces';
import type { Point, Room } from '../room/project';
import { isInTheOpen } from '../room/space';
import { directionFrom } from '../speakers/direction';
import {
  beforeM,
  coveringAt,
  isOn,
  mirrored,
  mirrorsOf,
  type Covering,
  type Mirror,
} from './mirrors';
import { IN_PLANE_M } from '../scene/faces';
import { isClear, sightOf, type Sight } from './sight';

/** Levels are told against a direct sound from no nearer than this, m: as for loudspeaker levels. */
export const LEAST_DIRECT_M = 0.01;

/** A room prepared for any number of sources and receivers. */
export interface ReflectingRoom {
  readonly room: Room;
  readonly mirrors: readonly Mirror[];
  readonly sight: Sight;
}

export function reflectingRoom(room: Room): ReflectingRoom {
  return { room, mirrors: mirrorsOf(room), sight: sightOf(room) };
}

/** Where a path meets a face, and what covers the face there. */
export interface Hit extends Covering {
  /** A shell face, or `solid-id:face`. */
  readonly face: string;
  /** Axis that the face is normal to, and the place of its plane along it, m. */
  readonly axis: Axis;
  readonly atM: number;
  readonly point: Point;
}

export interface ReflectionPath {
  /** One hit for each order, from source to receiver. */
  readonly hits: readonly [Hit, ...Hit[]];
  readonly lengthM: number;
  /** After the direct sound, 0 or more. */
  readonly delayMs: number;
  /** Level by distance alone against the direct sound, dB, 0 or less. */
  readonly spreadingDb: number;
  /** Between the way it leaves the source and the way of the direct sound, 0 to 180. */
  readonly departureDeg: number;
  /** Whence it comes, as heard by a listener who faces the screen; see `directionFrom`. */
  readonly azimuthDeg: number;
  readonly elevationDeg: number;
}

export interface Reflections {
  readonly direct: {
    readonly lengthM: number;
    /** False where a solid stands between: the reflections then have nothing to be told against. */
    readonly isVisible: boolean;
  };
  /** First order before second; within an order by face in the order of the file. */
  readonly paths: readonly ReflectionPath[];
}

export interface PathOptions {
  /** Highest number of reflections; 1 where it is not given. */
  readonly order?: 1 | 2;
}

/**
 * Paths from `source` to `receiver`, m, with delays at `speedMS` m/s. Null where either of them is
 * outside the shell or inside a solid; on a face is in the room.
 */
export function reflectionsBetween(
  reflecting: ReflectingRoom,
  source: Point,
  receiver: Point,
  speedMS: number,
  { order = 1 }: PathOptions = {},
): Reflections | null {
  const { room, sight } = reflecting;
  if (!isInTheOpen(source, room) || !isInTheOpen(receiver, room)) return null;
  const directM = distanceM(source, receiver);
  const chains = [
    ...firstOrder(reflecting, source, receiver),
    ...(order === 2 ? secondOrder(reflecting, source, receiver) : []),
  ];
  const paths = chains.map((hits): ReflectionPath => {
    const image = hits.reduce<Point>(mirrored, source);
    const seen = hits.reduceRight<Point>(mirrored, receiver);
    const lengthM = distanceM(image, receiver);
    const { azimuthDeg, elevationDeg } = directionFrom(receiver, image);
    return {
      hits,
      lengthM,
      delayMs: Math.max(0, ((lengthM - directM) / speedMS) * 1000),
      spreadingDb: spreadingDb(directM, lengthM),
      departureDeg: betweenDeg(source, receiver, seen),
      azimuthDeg,
      elevationDeg,
    };
  });
  return { direct: { lengthM: directM, isVisible: isClear(sight, source, receiver) }, paths };
}

/** Every single face by which the sound gets from `source` to `receiver`. */
function firstOrder(
  { mirrors, sight }: ReflectingRoom,
  source: Point,
  receiver: Point,
): readonly (readonly [Hit])[] {
  const found: (readonly [Hit])[] = [];
  for (const mirror of mirrors) {
    const point = meetingPoint(mirror, source, receiver);
    if (!point || !isClear(sight, source, point) || !isClear(sight, point, receiver)) continue;
    found.push([hitOf(mirror, point)]);
  }
  return found;
}

/** Every pair of faces, one after the other. */
function secondOrder(
  { mirrors, sight }: ReflectingRoom,
  source: Point,
  receiver: Point,
): readonly (readonly [Hit, Hit])[] {
  const firsts = mirrors.flatMap((mirror, rank) =>
    beforeM(mirror, source) < 0 ? [] : [{ mirror, rank, image: mirrored(source, mirror) }],
  );
  const found: (readonly [Hit, Hit])[] = [];
  mirrors.forEach((last, lastRank) => {
    if (beforeM(last, receiver) < 0) return;
    for (const { mirror: first, rank, image } of firsts) {
      if (rank === lastRank) continue;
      const end = meetingPoint(last, image, receiver);
      const start = end && meetingPoint(first, source, end);
      if (!start || beforeM(last, start) < 0) continue;
      // A way that runs along a face has no second point of its own.
      if (isAlong(first, source, end) || isAlong(last, start, receiver)) continue;
      // In an edge both orders of its two faces are the same path: it counts once.
      const isEdge = distanceM(start, end) < IN_PLANE_M;
      if (isEdge && found.some((pair) => isPair(pair, last, first, start))) continue;
      if (!isClear(sight, source, start) || !isClear(sight, start, end)) continue;
      if (isClear(sight, end, receiver)) found.push([hitOf(first, start), hitOf(last, end)]);
    }
  });
  return found;
}

/** True where `pair` is the two faces, met at one point near `at`. */
function isPair(
  [start, end]: readonly [Hit, Hit],
  first: Mirror,
  last: Mirror,
  at: Point,
): boolean {
  return (
    start.face === first.face &&
    end.face === last.face &&
    distanceM(start.point, at) + distanceM(end.point, at) < 4 * IN_PLANE_M
  );
}

/** True where both points lie in the plane of the mirror. */
function isAlong(mirror: Mirror, from: Point, to: Point): boolean {
  return [from, to].every((at) => Math.abs(at[mirror.axis] - mirror.atM) < IN_PLANE_M);
}

/**
 * The point of the mirror at which sound from `from` turns towards `to`; null where either stands
 * behind the mirror's plane or the point lies beside it. Where both stand in the plane the whole line
 * between them touches it: the middle stands for it.
 */
function meetingPoint(mirror: Mirror, from: Point, to: Point): Point | null {
  const [fromM, toM] = [beforeM(mirror, from), beforeM(mirror, to)];
  if (fromM < 0 || toM < 0) return null;
  const share = fromM + toM > 0 ? fromM / (fromM + toM) : 0.5;
  const [x, y, z] = pointAt(from, to, share);
  const { axis, atM } = mirror;
  const point: Point = [axis === 0 ? atM : x, axis === 1 ? atM : y, axis === 2 ? atM : z];
  return isOn(mirror, point) ? point : null;
}

function hitOf(mirror: Mirror, point: Point): Hit {
  const { face, axis, atM } = mirror;
  return { face, axis, atM, point, ...coveringAt(mirror, point) };
}

/** Level in dB of a path against the direct sound, by the inverse distance law. */
function spreadingDb(directM: number, lengthM: number): number {
  const nearM = Math.max(directM, LEAST_DIRECT_M);
  return Math.min(0, 20 * Math.log10(nearM / Math.max(lengthM, nearM)));
}

function pointAt(from: Point, to: Point, share: number): Point {
  return [
    from[0] + share * (to[0] - from[0]),
    from[1] + share * (to[1] - from[1]),
    from[2] + share * (to[2] - from[2]),
  ];
}

export function distanceM(a: Point, b: Point): number {
  return Math.hypot(b[0] - a[0], b[1] - a[1], b[2] - a[2]);
}

/** Angle at `from` between the ways to `a` and to `b`, 0 to 180; 0 where one of them is at `from`. */
function betweenDeg(from: Point, a: Point, b: Point): number {
  const lengths = distanceM(from, a) * distanceM(from, b);
  if (lengths === 0) return 0;
  const dot =
    (a[0] - from[0]) * (b[0] - from[0]) +
    (a[1] - from[1]) * (b[1] - from[1]) +
    (a[2] - from[2]) * (b[2] - from[2]);
  return degrees(Math.acos(Math.min(1, Math.max(-1, dot / lengths))));
}
