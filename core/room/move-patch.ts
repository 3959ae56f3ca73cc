/** Moving and stretching a door, window or panel by hand: it stays on its face and comes to rest on edges. */

import { faceOf } from './built-face';
import { snapLength } from '../quantity/carpenter-step';
import { roundLength } from '../quantity/length';
import { HOLD_M } from './move-solid';
import type { Rect } from './patched-area';
import type { Patch, Room } from './project';
import { PLANE_REACH_M } from './rest-on-planes';

/** Least side that the hand can give a patch, m. */
export const LEAST_PATCH_M = 0.05;

/** Edges of a rectangle by their place in it: low u, low v, high u, high v. */
export const EDGES = [0, 1, 2, 3] as const;
export type Edge = (typeof EDGES)[number];

/** The patch moved along its face by so many metres; edges that lie on the face's edge hold there. */
export function movedPatch(
  patch: Patch,
  by: readonly [number, number],
  room: Room,
  stepM: number,
): Patch {
  const bounds = faceOf(room, patch.face)?.rect;
  if (!bounds) return patch;
  const spans = ([0, 1] as const).map((along): readonly [number, number] => {
    const [low, high] = [patch.rect[along], patch.rect[along + 2] ?? 0];
    const [least, most] = [bounds[along], bounds[along + 2] ?? 0];
    const extent = Math.min(high - low, most - least);
    const held = touches(low, least) || touches(high, most);
    if (by[along] === 0 || (held && Math.abs(by[along]) < HOLD_M)) return [low, high];
    const start = low + by[along];
    const atLow = restOf(start, along, room, patch, stepM);
    const atHigh = restOf(start + extent, along, room, patch, stepM) - extent;
    // What rests on an edge goes before what rests on the step, and the nearer before the farther.
    const lowRests = isEdge(atLow, along, room, patch);
    const highPulls =
      isEdge(atHigh + extent, along, room, patch) &&
      !(lowRests && Math.abs(atLow - start) <= Math.abs(atHigh - start));
    const rest = Math.min(Math.max(highPulls ? atHigh : atLow, least), most - extent);
    return [rest, rest + extent];
  });
  return withSpans(patch, spans[0] ?? [0, 1], spans[1] ?? [0, 1]);
}

/** The patch with one of its edges pulled to `at` metres along the face. */
export function stretchedPatch(
  patch: Patch,
  edge: Edge,
  at: number,
  room: Room,
  stepM: number,
): Patch {
  const bounds = faceOf(room, patch.face)?.rect;
  if (!bounds) return patch;
  const along = edge === 0 || edge === 2 ? 0 : 1;
  const rest = restOf(at, along, room, patch, stepM);
  const rect: [number, number, number, number] = [...patch.rect];
  if (edge < 2) {
    const most = (rect[along + 2] ?? 0) - LEAST_PATCH_M;
    rect[edge] = roundLength(Math.min(Math.max(rest, bounds[edge]), most));
  } else {
    rect[edge] = roundLength(
      Math.max(Math.min(rest, bounds[edge]), (rect[along] ?? 0) + LEAST_PATCH_M),
    );
  }
  return { ...patch, rect };
}

/** The patch on another face, its middle as near to `middle` (m along that face) as its size allows. */
export function patchOnFace(
  patch: Patch,
  face: string,
  middle: readonly [number, number],
  room: Room,
  stepM: number,
): Patch {
  const bounds = faceOf(room, face)?.rect;
  if (!bounds) return patch;
  const [u0, v0, u1, v1] = patch.rect;
  const span = (extent: number, centre: number, along: 0 | 1): readonly [number, number] => {
    const [least, most] = [bounds[along], bounds[along + 2] ?? 0];
    const held = Math.min(extent, most - least);
    const low = Math.max(least, Math.min(snapLength(centre - held / 2, stepM), most - held));
    return [low, low + held];
  };
  return withSpans({ ...patch, face }, span(u1 - u0, middle[0], 0), span(v1 - v0, middle[1], 1));
}

const touches = (a: number, b: number): boolean => Math.abs(a - b) < 1e-3;

function withSpans(
  patch: Patch,
  [u0, u1]: readonly [number, number],
  [v0, v1]: readonly [number, number],
): Patch {
  const rect: Rect = [roundLength(u0), roundLength(v0), roundLength(u1), roundLength(v1)];
  return { ...patch, rect };
}

/** Edges of the face and of what else is on it, along one of its axes. */
function edgesAlong(along: 0 | 1, room: Room, patch: Patch): readonly number[] {
  const bounds = faceOf(room, patch.face)?.rect;
  const others = room.patches.filter(({ id, face }) => face === patch.face && id !== patch.id);
  return [...(bounds ? [bounds] : []), ...others.map(({ rect }) => rect)].flatMap((rect) => [
    rect[along],
    rect[along + 2] ?? 0,
  ]);
}

const isEdge = (at: number, along: 0 | 1, room: Room, patch: Patch): boolean =>
  edgesAlong(along, room, patch).some((edge) => touches(edge, at));

/** `at`, moved onto an edge within reach, else to the nearest step. */
function restOf(at: number, along: 0 | 1, room: Room, patch: Patch, stepM: number): number {
  const edge = edgesAlong(along, room, patch).find(
    (known) => Math.abs(known - at) <= PLANE_REACH_M,
  );
  return edge ?? snapLength(at, stepM);
}
