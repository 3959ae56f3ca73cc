/** Faces that can carry a loudspeaker: those of the shell, and those of solids inside it. */

import { FACE_NORMALS, faceAxes, type Axis } from '../room/faces';
import type { Rect } from '../room/patched-area';
import { farCorner } from '../room/point';
import { FACES, type Face, type Point, type Room, type Solid } from '../room/project';

export interface MountFace {
  /** A shell face, or `solid-id:face`. */
  readonly name: string;
  readonly side: Face;
  readonly axis: Axis;
  /** Along the axis, m. */
  readonly at: number;
  /** Which way along the axis the room lies. */
  readonly inward: -1 | 1;
  /** Its extent along the face's two axes, m. */
  readonly rect: Rect;
  /** The solid it belongs to; null for the shell. */
  readonly solid: Solid | null;
}

/** All faces of the shell and of its solids; those of a solid that no one can reach left out. */
export function mountFaces({ size, solids }: Room): readonly MountFace[] {
  const far = farCorner(size);
  const faces: MountFace[] = [];
  for (const side of FACES) {
    const { axis, side: end } = FACE_NORMALS[side];
    const [u, v] = faceAxes(side);
    faces.push({
      name: side,
      side,
      axis,
      at: end === 1 ? far[axis] : 0,
      inward: end === 1 ? -1 : 1,
      rect: [0, 0, far[u], far[v]],
      solid: null,
    });
    for (const solid of solids) {
      const at = end === 1 ? solid.max[axis] : solid.min[axis];
      if (at <= 0 || at >= far[axis]) continue;
      const rect: Rect = [
        Math.max(solid.min[u], 0),
        Math.max(solid.min[v], 0),
        Math.min(solid.max[u], far[u]),
        Math.min(solid.max[v], far[v]),
      ];
      if (rect[0] >= rect[2] || rect[1] >= rect[3]) continue;
      faces.push({ name: `${solid.id}:${side}`, side, axis, at, inward: end, rect, solid });
    }
  }
  return faces;
}

/** Metres by which the place lies before the face, towards the room; negative behind it. */
export const beforeFaceM = (face: MountFace, place: Point): number =>
  (place[face.axis] - face.at) * face.inward;

/** Metres from the place to the nearest point of the face. */
export function distanceToFaceM(face: MountFace, place: Point): number {
  const [u, v] = faceAxes(face.side);
  const beside = (at: number, low: number, high: number): number =>
    Math.max(low - at, at - high, 0);
  return Math.hypot(
    place[face.axis] - face.at,
    beside(place[u], face.rect[0], face.rect[2]),
    beside(place[v], face.rect[1], face.rect[3]),
  );
}

/** The nearest of the faces; null of none. Of faces equally near the first of the list. */
export function nearestFace(faces: readonly MountFace[], place: Point): MountFace | null {
  let best: MountFace | null = null;
  let leastM = Infinity;
  for (const face of faces) {
    const distanceM = distanceToFaceM(face, place);
    if (distanceM < leastM - 1e-9) [best, leastM] = [face, distanceM];
  }
  return best;
}
