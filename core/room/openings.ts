/** What doors and other patches take of the room before their face. */

import { faceOf, type BuiltFace } from './built-face';
import { PATCH_KIND } from './patch-kinds';
import type { Rect } from './patched-area';
import type { Hinge, Patch, Point, Room } from './project';

/** The box from a rectangle on a face to `depthM` before it, corners in m. */
export function boxBefore(
  { axis, u, v, at, inward }: BuiltFace,
  [u0, v0, u1, v1]: Rect,
  depthM: number,
): { readonly min: Point; readonly max: Point } {
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
  plane: BuiltFace,
  rect: Rect,
): { readonly min: Point; readonly max: Point } | null {
  // The first axis of a wall runs along the floor.
  return plane.axis === 2 ? null : boxBefore(plane, rect, rect[2] - rect[0]);
}

/** True where the left end of the face, for a person in the room who faces it, is its low end. */
function leftIsLow({ axis, inward }: BuiltFace): boolean {
  // Who looks at the screen wall has the low x on the left hand; a quarter turn to the right, the low y.
  return axis === 1 ? inward === 1 : inward === -1;
}

/** A door's leaf in plan, m: it turns about the hinge from `shut` to `open`, a quarter of a circle. */
export interface Leaf {
  readonly hinge: readonly [number, number];
  /** Where its free edge is when it is shut, and when it stands open. */
  readonly shut: readonly [number, number];
  readonly open: readonly [number, number];
  readonly widthM: number;
  /** What it sweeps over where it opens into the room; null where it opens out of it. */
  readonly sweep: { readonly min: Point; readonly max: Point } | null;
}

/** Where the hinges are: as the file says, else at the nearer end of the wall (common practice). */
export function hingeOf(room: Room, patch: Patch): Hinge {
  if (patch.hinge) return patch.hinge;
  const plane = faceOf(room, patch.face);
  const bounds = plane?.rect ?? patch.rect;
  const low = patch.rect[0] - bounds[0] <= bounds[2] - patch.rect[2];
  return plane && leftIsLow(plane) === low ? 'left' : 'right';
}

/** The leaf of a door; null for what is no door, slides, lies in floor or ceiling, or is on no face. */
export function leafOf(room: Room, patch: Patch): Leaf | null {
  const plane = PATCH_KIND[patch.kind].hasLeaf ? faceOf(room, patch.face) : null;
  const sweep = plane && sweepBefore(plane, patch.rect);
  if (!plane || !sweep || patch.swing === 'slides') return null;
  const [u0, , u1] = patch.rect;
  const atLow = (hingeOf(room, patch) === 'left') === leftIsLow(plane);
  const [hingeU, freeU] = atLow ? [u0, u1] : [u1, u0];
  const into = patch.swing !== 'out';
  const openAt = plane.at + (into ? 1 : -1) * plane.inward * (u1 - u0);
  const place = (along: number, at: number): readonly [number, number] =>
    plane.axis === 0 ? [at, along] : [along, at];
  return {
    hinge: place(hingeU, plane.at),
    shut: place(freeU, plane.at),
    open: place(hingeU, openAt),
    widthM: u1 - u0,
    sweep: into ? sweep : null,
  };
}
