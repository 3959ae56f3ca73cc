/** Room on a face: what a rectangle there must keep clear of, and the nearest place where it does. */

import { roundLength } from '../quantity/length';
import { faceOf } from './built-face';
import { FACE_NORMALS, faceAxes } from './faces';
import type { Rect } from './patched-area';
import { farCorner } from './point';
import { FACES, type Patch, type Room } from './project';

/** What comes closer than this touches, and does not overlap, m. */
export const TOUCH_M = 0.0005;

/** How far two rectangles run into each other, m: the shortest move that parts them; 0 if they do not. */
export function rectOverlapM(a: Rect, b: Rect): number {
  const depth = Math.min(a[2] - b[0], b[2] - a[0], a[3] - b[1], b[3] - a[1]);
  return depth > TOUCH_M ? depth : 0;
}

/** How far a rectangle reaches beyond another that should hold it, m. */
export function overhangM(rect: Rect, bounds: Rect): number {
  const out = Math.max(
    bounds[0] - rect[0],
    bounds[1] - rect[1],
    rect[2] - bounds[2],
    rect[3] - bounds[3],
  );
  return out > TOUCH_M ? out : 0;
}

/** Where solids stand against a shell face and cover it; none on the face of a solid. */
export function coveredParts(
  room: Room,
  face: string,
): readonly { readonly solid: string; readonly rect: Rect }[] {
  const known = FACES.find((candidate) => candidate === face);
  if (!known) return [];
  const { axis, side } = FACE_NORMALS[known];
  const [u, v] = faceAxes(known);
  const far = farCorner(room.size)[axis];
  return room.solids
    .filter((solid) => (side === -1 ? solid.min[axis] <= 0 : solid.max[axis] >= far))
    .map((solid) => ({
      solid: solid.id,
      rect: [solid.min[u], solid.min[v], solid.max[u], solid.max[v]],
    }));
}

/** What a patch on `face` must keep clear of: other patches and solids that cover the face. */
export function obstaclesOn(room: Room, face: string, except: string | null): readonly Rect[] {
  return [
    ...room.patches
      .filter((patch) => patch.face === face && patch.id !== except)
      .map((patch) => patch.rect),
    ...coveredParts(room, face).map((part) => part.rect),
  ];
}

/**
 * The place nearest to `rect`, of its size, within `bounds` and clear of `obstacles`; null where there
 * is none. What is larger than the bounds is cut to them first. Only places that touch an edge or an
 * obstacle, or need no move along an axis, can be nearest, so those are all that is tried.
 */
export function nearestFreeRect(rect: Rect, bounds: Rect, obstacles: readonly Rect[]): Rect | null {
  const width = Math.min(rect[2] - rect[0], bounds[2] - bounds[0]);
  const height = Math.min(rect[3] - rect[1], bounds[3] - bounds[1]);
  const starts = (axis: 0 | 1, size: number): readonly number[] => {
    const [least, most] = [bounds[axis], bounds[axis === 0 ? 2 : 3] - size];
    const clamped = Math.min(most, Math.max(least, rect[axis]));
    const beside = obstacles.flatMap((o) => [o[axis] - size, o[axis === 0 ? 2 : 3]]);
    const inside = beside.filter((at) => at >= least - 1e-9 && at <= most + 1e-9);
    return [...new Set([clamped, least, most, ...inside])];
  };
  let best: { readonly rect: Rect; readonly moveM: number } | null = null;
  const [us, vs] = [starts(0, width), starts(1, height)];
  for (const u of us) {
    for (const v of vs) {
      const moveM = Math.hypot(u - rect[0], v - rect[1]);
      if (best && moveM >= best.moveM) continue;
      const candidate: Rect = [u, v, u + width, v + height];
      if (obstacles.some((obstacle) => rectOverlapM(candidate, obstacle) > 0)) continue;
      best = { rect: candidate, moveM };
      // The first that is tried is the nearest of all.
      if (u === us[0] && v === vs[0]) return rounded(candidate);
    }
  }
  return best && rounded(best.rect);
}

const rounded = ([u0, v0, u1, v1]: Rect): Rect => [
  roundLength(u0),
  roundLength(v0),
  roundLength(u1),
  roundLength(v1),
];

/**
 * `patch` at the nearest free place of its face; null where none is left. What keeps its height, as a
 * door does, moves along the face only.
 */
export function freePatch(
  room: Room,
  patch: Patch,
  { keepsHeight = false }: { readonly keepsHeight?: boolean } = {},
): Patch | null {
  const bounds = faceOf(room, patch.face)?.rect;
  if (!bounds) return null;
  const low = Math.max(bounds[1], patch.rect[1]);
  const high = Math.min(bounds[3], patch.rect[3]);
  const within: Rect = keepsHeight && high > low ? [bounds[0], low, bounds[2], high] : bounds;
  const rect = nearestFreeRect(patch.rect, within, obstaclesOn(room, patch.face, patch.id));
  return rect ? { ...patch, rect } : null;
}
