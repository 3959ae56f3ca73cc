/** One face of the shell or of a solid: where its plane lies, how far it goes, and which way the room is. */

import { FACE_NORMALS, faceAxes, faceIdOf, faceText, type Axis, type FaceId } from './faces';
import type { Rect } from './patched-area';
import { farCorner } from './point';
import type { Face, Room, Solid } from './project';

export interface BuiltFace {
  /** As a room file writes it: `front`, or `solid-id:front`. */
  readonly name: string;
  readonly side: Face;
  /** The solid it belongs to; null for the shell. */
  readonly solid: Solid | null;
  /** What it is normal to. */
  readonly axis: Axis;
  /** Its two axes, in x, y, z order. */
  readonly u: Axis;
  readonly v: Axis;
  /** Its plane along the axis, m. */
  readonly at: number;
  /** Which way along the axis the room lies: a wall is seen from within, a solid from without. */
  readonly inward: -1 | 1;
  /** Its extent along `u` and `v`, m. */
  readonly rect: Rect;
}

/** The face of the shell (`solid` null) or of one of the solids of `room`. */
export function builtFace(
  { size }: Pick<Room, 'size'>,
  solid: Solid | null,
  side: Face,
): BuiltFace {
  const { axis, side: end } = FACE_NORMALS[side];
  const [u, v] = faceAxes(side);
  const [min, max] = solid ? [solid.min, solid.max] : [[0, 0, 0] as const, farCorner(size)];
  return {
    name: faceText({ solid: solid?.id ?? null, side }),
    side,
    solid,
    axis,
    u,
    v,
    at: end === 1 ? max[axis] : min[axis],
    inward: solid ? end : end === 1 ? -1 : 1,
    rect: [min[u], min[v], max[u], max[v]],
  };
}

/** The face of that name; null where there is no such face. */
export function faceOf(room: Pick<Room, 'size' | 'solids'>, name: string): BuiltFace | null {
  const id: FaceId | null = faceIdOf(name);
  if (!id) return null;
  const solid = id.solid === null ? null : room.solids.find((known) => known.id === id.solid);
  return solid === undefined ? null : builtFace(room, solid, id.side);
}
