/** Faces: which axis each is normal to, and the axes along which its rectangles are measured. */

import { FACES, type Face } from './project';

/** The axes of the room: x, y and z. */
export const AXES = [0, 1, 2] as const;
export type Axis = (typeof AXES)[number];

/** Axis that a face is normal to, and on which side of its body it lies. */
export const FACE_NORMALS: Readonly<Record<Face, { readonly axis: Axis; readonly side: -1 | 1 }>> =
  {
    left: { axis: 0, side: -1 },
    right: { axis: 0, side: 1 },
    front: { axis: 1, side: -1 },
    back: { axis: 1, side: 1 },
    floor: { axis: 2, side: -1 },
    ceiling: { axis: 2, side: 1 },
  };

/** The face of a body on the low and on the high side of each axis. */
export const FACES_BY_AXIS: readonly (readonly [Face, Face])[] = [
  ['left', 'right'],
  ['front', 'back'],
  ['floor', 'ceiling'],
];

/** The two axes along which a face's rectangles are measured, in x, y, z order. */
export function faceAxes(face: Face): readonly [Axis, Axis] {
  const { axis } = FACE_NORMALS[face];
  return axis === 0 ? [1, 2] : axis === 1 ? [0, 2] : [0, 1];
}

/** The side that a patch's face name (`front`, or `solid-id:front`) ends with. */
export function patchSide(face: string): Face {
  const side = face.slice(face.lastIndexOf(':') + 1);
  return FACES.find((known) => known === side) ?? 'front';
}

const SHELL_NAMES: Readonly<Record<Face, string>> = {
  front: 'screen wall',
  back: 'back wall',
  left: 'left wall',
  right: 'right wall',
  floor: 'floor',
  ceiling: 'ceiling',
};

/** The side of a solid: `left side`, `underside`, `top`. */
export function solidSideName(side: Face): string {
  return side === 'floor' ? 'underside' : side === 'ceiling' ? 'top' : `${side} side`;
}

/** A face as a builder calls it: `left wall`, `ceiling`, `underside of "duct"`. */
export function faceName(face: string): string {
  const side = patchSide(face);
  const split = face.lastIndexOf(':');
  return split === -1 ? SHELL_NAMES[side] : `${solidSideName(side)} of "${face.slice(0, split)}"`;
}
