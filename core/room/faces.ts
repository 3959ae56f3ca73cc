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

/** A face as a value: of the shell, or of a solid. */
export interface FaceId {
  /** Id of the solid; null for the shell. */
  readonly solid: string | null;
  readonly side: Face;
}

/** As a room file writes it: `front`, or `solid-id:front`. */
export const faceText = ({ solid, side }: FaceId): string =>
  solid === null ? side : `${solid}:${side}`;

/** The face of that name; null where it is none. Whether its solid is there is not asked. */
export function faceIdOf(name: string): FaceId | null {
  const split = name.lastIndexOf(':');
  const side = FACES.find((known) => known === name.slice(split + 1));
  if (!side || split === 0) return null;
  return { solid: split === -1 ? null : name.slice(0, split), side };
}

/** The solid that a face of this name is of; null for the shell. */
export const solidOfFace = (name: string): string | null => faceIdOf(name)?.solid ?? null;

/** The side that a face's name ends with. */
export const patchSide = (name: string): Face => faceIdOf(name)?.side ?? 'front';

export type FaceRole = 'floor' | 'wall' | 'ceiling';

/** What a face is to who stands in the room: the top of a solid is a floor, its underside a ceiling. */
export function roleOf(name: string): FaceRole {
  const { solid, side } = faceIdOf(name) ?? { solid: null, side: 'front' };
  if (side !== 'floor' && side !== 'ceiling') return 'wall';
  return (side === 'floor') === (solid === null) ? 'floor' : 'ceiling';
}

/** The side that looks the other way. */
export function oppositeOf(side: Face): Face {
  const { axis, side: end } = FACE_NORMALS[side];
  return FACES_BY_AXIS[axis]?.[end === 1 ? 0 : 1] ?? side;
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
  const solid = solidOfFace(face);
  return solid === null ? SHELL_NAMES[side] : `${solidSideName(side)} of "${solid}"`;
}
