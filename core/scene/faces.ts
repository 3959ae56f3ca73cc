/**
 * Every face that sound, a loudspeaker or the eye can meet: the shell's six, and those sides of solids
 * that lie within it. What of a face other solids cover is for `occluded` to say, or, exactly, for
 * `freeSpace`.
 */

import { FACE_NORMALS, faceText, oppositeOf, type Axis } from '../room/faces';
import { builtFace, type BuiltFace } from '../room/built-face';
import { farCorner } from '../room/point';
import { FACES, type Point, type Room } from '../room/project';

/** What lies nearer to a plane than this lies in it, m: far above the dust of binary arithmetic. */
export const IN_PLANE_M = 1e-9;

/** The shell's faces, then those of each solid, cut to the shell; in the order of `FACES`. */
export function facesOf(room: Room): readonly BuiltFace[] {
  const far = farCorner(room.size);
  const faces: BuiltFace[] = FACES.map((side) => builtFace(room, null, side));
  for (const solid of room.solids)
    for (const side of FACES) {
      const face = builtFace(room, solid, side);
      const { axis, at, u, v, rect } = face;
      if (at <= IN_PLANE_M || at >= far[axis] - IN_PLANE_M) continue;
      const [u0, v0] = [Math.max(rect[0], 0), Math.max(rect[1], 0)];
      const [u1, v1] = [Math.min(rect[2], far[u]), Math.min(rect[3], far[v])];
      if (u0 < u1 && v0 < v1) faces.push({ ...face, rect: [u0, v0, u1, v1] });
    }
  return faces;
}

/** Metres by which the place lies before the face, towards the room; negative behind it. */
export const beforeFaceM = ({ axis, at, inward }: BuiltFace, place: Point): number =>
  (place[axis] - at) * inward;

/** Metres from the place to the nearest point of the face. */
export function distanceToFaceM({ axis, at, u, v, rect }: BuiltFace, place: Point): number {
  const beside = (value: number, low: number, high: number): number =>
    Math.max(low - value, value - high, 0);
  return Math.hypot(
    place[axis] - at,
    beside(place[u], rect[0], rect[2]),
    beside(place[v], rect[1], rect[3]),
  );
}

/** The nearest of the faces; null of none. Of faces equally near the first of the list. */
export function nearestFace(faces: readonly BuiltFace[], place: Point): BuiltFace | null {
  let best: BuiltFace | null = null;
  let leastM = Infinity;
  for (const face of faces) {
    const distanceM = distanceToFaceM(face, place);
    if (distanceM < leastM - 1e-9) [best, leastM] = [face, distanceM];
  }
  return best;
}

/**
 * Name of the face that is met from a place in the room, within `slackM` towards `side` of an axis: of the
 * shell, or of the first solid there; null where there is none.
 */
export function faceMet(
  room: Room,
  from: Point,
  axis: Axis,
  side: -1 | 1,
  slackM: number,
): string | null {
  const far = farCorner(room.size)[axis];
  const facing = FACES.find((face) => {
    const normal = FACE_NORMALS[face];
    return normal.axis === axis && normal.side === side;
  });
  const atShell = side === 1 ? from[axis] > far - slackM / 2 : from[axis] < slackM / 2;
  if (atShell) return facing ?? null;
  const beyond: [number, number, number] = [...from];
  beyond[axis] += side * slackM;
  const solid = room.solids.find(({ min, max }) =>
    beyond.every((at, n) => at > (min[n] ?? 0) - slackM && at < (max[n] ?? 0) + slackM),
  );
  return solid && facing ? faceText({ solid: solid.id, side: oppositeOf(facing) }) : null;
}
