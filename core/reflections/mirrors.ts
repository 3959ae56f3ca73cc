/** The faces that reflect: the shell's six and those of solids that stand within it. */

import type { Axis } from '../room/faces';
import type { Rect } from '../room/patched-area';
import type { Patch, Point, Room } from '../room/project';
import { facesOf, IN_PLANE_M } from '../scene/faces';

/** One face as a mirror. Which part of it other solids cover is for the line of sight to say. */
export interface Mirror {
  /** A shell face, or `solid-id:face`. */
  readonly face: string;
  readonly axis: Axis;
  /** Place of its plane along the axis, m. */
  readonly atM: number;
  /** Side on which the air is: 1 towards greater coordinates. */
  readonly air: -1 | 1;
  readonly u: Axis;
  readonly v: Axis;
  /** Extent within the shell, m along `u` and `v`. */
  readonly rect: Rect;
  readonly finish: string;
  /** Patches on it; later ones lie on top. */
  readonly patches: readonly Patch[];
  /** Earlier faces in the same plane: where solids overlap, the first of the list owns the place. */
  readonly before: readonly Mirror[];
}

/** What covers a mirror at a point. */
export interface Covering {
  readonly finish: string;
  /** Patch that it is; null where the face is bare. */
  readonly patch: string | null;
}

/** Every face of `room` that can reflect into the room, shell faces first. */
export function mirrorsOf(room: Room): readonly Mirror[] {
  const mirrors: Mirror[] = [];
  for (const { name, solid, side, axis, u, v, at, inward, rect } of facesOf(room)) {
    const before = solid
      ? mirrors.filter((other) => other.axis === axis && other.air === inward && other.atM === at)
      : [];
    mirrors.push({
      ...{ face: name, axis, atM: at, air: inward, u, v, rect, before },
      finish: solid?.finish ?? room.finishes[side],
      patches: room.patches.filter((patch) => patch.face === name),
    });
  }
  return mirrors;
}

function holds(rect: Rect, u: number, v: number): boolean {
  return (
    u >= rect[0] - IN_PLANE_M &&
    u <= rect[2] + IN_PLANE_M &&
    v >= rect[1] - IN_PLANE_M &&
    v <= rect[3] + IN_PLANE_M
  );
}

/** True where `at`, a point in the mirror's plane, lies on the mirror; edges count as on it. */
export function isOn(mirror: Mirror, at: Point): boolean {
  const [u, v] = [at[mirror.u], at[mirror.v]];
  return holds(mirror.rect, u, v) && !mirror.before.some((other) => holds(other.rect, u, v));
}

/** Finish of the mirror at `at`, a point on it: the topmost patch there, else the face's own. */
export function coveringAt(mirror: Mirror, at: Point): Covering {
  const [u, v] = [at[mirror.u], at[mirror.v]];
  const patch = mirror.patches.findLast((one) => holds(one.rect, u, v));
  return patch ? { finish: patch.finish, patch: patch.id } : { finish: mirror.finish, patch: null };
}

/** How far `at` stands before the mirror's plane, m; negative behind it, 0 for what lies in it. */
export function beforeM(mirror: Mirror, at: Point): number {
  const awayM = mirror.air * (at[mirror.axis] - mirror.atM);
  return Math.abs(awayM) < IN_PLANE_M ? 0 : awayM;
}

/** `at` seen in the plane normal to `axis` at `atM`. */
export function mirrored(at: Point, { axis, atM }: Pick<Mirror, 'axis' | 'atM'>): Point {
  const there = 2 * atM - at[axis];
  return [axis === 0 ? there : at[0], axis === 1 ? there : at[1], axis === 2 ? there : at[2]];
}
