/** Doors and windows: patches whose names begin so, and what of the room they take before their face. */

import { FACE_NORMALS, faceAxes, patchSide } from './faces';
import type { Rect } from './patched-area';
import { farCorner } from './point';
import type { Face, Patch, Point, Room } from './project';

/** Where a face lies and which way the room is from there. */
export interface FacePlane {
  readonly side: Face;
  /** Along the axis that the face is normal to, m. */
  readonly at: number;
  /** Which way along the axis the room lies: a wall is seen from within, a solid from without. */
  readonly inward: -1 | 1;
}

export const isDoor = (patch: Patch): boolean => patch.id.startsWith('door');
export const isWindow = (patch: Patch): boolean => patch.id.startsWith('window');

/** The plane of a face, shell or `solid-id:face`; null where the solid is not there. */
export function planeOf(room: Room, face: string): FacePlane | null {
  const side = patchSide(face);
  const { axis, side: end } = FACE_NORMALS[side];
  const split = face.lastIndexOf(':');
  if (split === -1) {
    return { side, at: end === 1 ? farCorner(room.size)[axis] : 0, inward: end === 1 ? -1 : 1 };
  }
  const solid = room.solids.find(({ id }) => id === face.slice(0, split));
  return solid ? { side, at: end === 1 ? solid.max[axis] : solid.min[axis], inward: end } : null;
}

/** The box from a rectangle on a face to `depthM` before it, corners in m. */
export function boxBefore(
  { side, at, inward }: FacePlane,
  [u0, v0, u1, v1]: Rect,
  depthM: number,
): { readonly min: Point; readonly max: Point } {
  const { axis } = FACE_NORMALS[side];
  const [u, v] = faceAxes(side);
  const corner = (along: number, a: number, b: number): Point => {
    const place: [number, number, number] = [0, 0, 0];
    place[axis] = along;
    place[u] = a;
    place[v] = b;
    return place;
  };
  const to = at + inward * depthM;
  return { min: corner(Math.min(at, to), u0, v0), max: corner(Math.max(at, to), u1, v1) };
}

/** What a leaf as wide as its opening sweeps over; of a hatch in floor or ceiling that is nothing. */
export function sweepBefore(
  plane: FacePlane,
  rect: Rect,
): { readonly min: Point; readonly max: Point } | null {
  // The first axis of a wall runs along the floor.
  return FACE_NORMALS[plane.side].axis === 2 ? null : boxBefore(plane, rect, rect[2] - rect[0]);
}
