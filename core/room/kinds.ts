/** What the words of a room file may be. */

export const ROOM_FORMAT = 'roomwright-room';
export const ROOM_VERSION = 2;

/** Sides, named as the person sees them; of a solid's sides, `floor` is its underside. */
export const FACES = ['front', 'back', 'left', 'right', 'floor', 'ceiling'] as const;
export type Face = (typeof FACES)[number];

/** Sides of the shell along x, y and z. */
export const SIDES = ['width', 'length', 'height'] as const;
export type Side = (typeof SIDES)[number];

export const SOLID_KINDS = [
  'soffit',
  'riser',
  'closet',
  'column',
  'beam',
  'stage',
  'other',
] as const;
export type SolidKind = (typeof SOLID_KINDS)[number];

/** Where the hinges of a door are, seen by a person in the room who faces it. */
export const HINGES = ['left', 'right'] as const;
export type Hinge = (typeof HINGES)[number];

/** How a door opens: into the room, out of it, or along its wall. */
export const SWINGS = ['in', 'out', 'slides'] as const;
export type Swing = (typeof SWINGS)[number];

/** What a patch is; `core/room/patch-kinds.ts` says what that means. */
export const PATCH_KINDS = ['door', 'window', 'passage', 'screen', 'panel', 'other'] as const;
export type PatchKind = (typeof PATCH_KINDS)[number];

/** What holds a loudspeaker. */
export const MOUNTS = [
  'on-wall',
  'in-wall',
  'ceiling',
  'stand',
  'soffit',
  'behind-screen',
] as const;
export type Mount = (typeof MOUNTS)[number];
