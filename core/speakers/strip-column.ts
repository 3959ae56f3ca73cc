/**
 * What one azimuth sees from the ears: an upright cut through the room, in which every face is a
 * level or an upright line, so that which of them is seen first under which elevation is exact.
 */

import { FACES_BY_AXIS, faceText } from '../room/faces';
import type { Point, Room } from '../room/project';
import type { Box } from '../scene/box';

/** A part of a column that one face fills; elevations as slopes (their tangents). */
export interface Seen {
  readonly face: string;
  readonly low: number;
  readonly high: number;
  /** Where the ray of that slope meets the face. */
  readonly at: (slope: number) => Point;
}

/** The shell and the solids as the ears see them, every face moved into the room by a depth. */
export interface SightField {
  readonly ears: Point;
  readonly shell: Box;
  readonly solids: readonly (Box & { readonly id: string })[];
}

/** `depthM`: how far before its face the acoustic centre lies, m. Null where the ears are not clear. */
export function sightFrom(ears: Point, room: Room, depthM: number): SightField | null {
  const { width, length, height } = room.size;
  const moved = (at: Point, by: number): Point => [at[0] + by, at[1] + by, at[2] + by];
  const shell: Box = {
    min: moved([0, 0, 0], depthM),
    max: moved([width, length, height], -depthM),
  };
  const solids = room.solids.map(({ id, min, max }) => ({
    id,
    min: moved(min, -depthM),
    max: moved(max, depthM),
  }));
  const within = ({ min, max }: Box): boolean =>
    ears.every((at, axis) => at > (min[axis] ?? 0) && at < (max[axis] ?? 0));
  return within(shell) && !solids.some(within) ? { ears, shell, solids } : null;
}

/** A body that the column cuts: from `near` to `far` metres along it, between two heights. */
interface Cut {
  readonly id: string;
  readonly near: number;
  readonly far: number;
  readonly low: number;
  readonly high: number;
  readonly nearFace: string;
}

/** Metres along [dx, dy] at which the ray enters and leaves a box in plan, and by which axis. */
function crossing({ ears }: SightField, { min, max }: Box, step: readonly [number, number]) {
  let [near, far, nearAxis, farAxis] = [-Infinity, Infinity, 0, 0];
  for (const axis of [0, 1] as const) {
    const by = step[axis];
    if (Math.abs(by) < 1e-12) {
      if (ears[axis] <= min[axis] || ears[axis] >= max[axis]) return null;
      continue;
    }
    const [a, b] = [(min[axis] - ears[axis]) / by, (max[axis] - ears[axis]) / by];
    if (Math.min(a, b) > near) [near, nearAxis] = [Math.min(a, b), axis];
    if (Math.max(a, b) < far) [far, farAxis] = [Math.max(a, b), axis];
  }
  return near < far && far > 0 ? { near, far, nearAxis, farAxis } : null;
}

/** Every face that the azimuth sees between two slopes, from below upwards. */
export function columnOf(
  view: SightField,
  azimuthRad: number,
  [from, to]: readonly [number, number],
): readonly Seen[] {
  const { ears, shell } = view;
  const step = [-Math.sin(azimuthRad), -Math.cos(azimuthRad)] as const;
  const out = crossing(view, shell, step);
  if (!out) return [];
  const wall = FACES_BY_AXIS[out.farAxis]?.[step[out.farAxis === 0 ? 0 : 1] > 0 ? 1 : 0] ?? 'front';
  const cuts: Cut[] = [];
  for (const solid of view.solids) {
    const hit = crossing(view, solid, step);
    if (!hit || hit.near >= out.far) continue;
    const side = FACES_BY_AXIS[hit.nearAxis]?.[step[hit.nearAxis === 0 ? 0 : 1] > 0 ? 0 : 1];
    cuts.push({
      id: solid.id,
      near: Math.max(hit.near, 0),
      far: Math.min(hit.far, out.far),
      low: solid.min[2],
      high: solid.max[2],
      nearFace: faceText({ solid: solid.id, side: side ?? 'front' }),
    });
  }
  const first = (slope: number): { readonly face: string; readonly at: Seen['at'] } => {
    const upright = (face: string, reach: number) => ({
      face,
      reach,
      at: (s: number): Point => [
        ears[0] + step[0] * reach,
        ears[1] + step[1] * reach,
        ears[2] + s * reach,
      ],
    });
    const level = (face: string, z: number) => ({
      face,
      reach: (z - ears[2]) / slope,
      at: (s: number): Point => {
        const reach = (z - ears[2]) / s;
        return [ears[0] + step[0] * reach, ears[1] + step[1] * reach, z];
      },
    });
    let best = upright(wall, out.far);
    const bound = slope > 0 ? level('ceiling', shell.max[2]) : level('floor', shell.min[2]);
    if (slope !== 0 && bound.reach < best.reach) best = bound;
    for (const { id, near, far, low, high, nearFace } of cuts) {
      if (near >= best.reach) continue;
      const z = ears[2] + slope * near;
      if (z > low && z < high) {
        if (near > 0) best = upright(nearFace, near);
      } else if (slope !== 0) {
        const flat =
          z <= low
            ? level(faceText({ solid: id, side: 'floor' }), low)
            : level(faceText({ solid: id, side: 'ceiling' }), high);
        if (flat.reach > near && flat.reach < far && flat.reach < best.reach) best = flat;
      }
    }
    return best;
  };
  const reaches = [out.far, ...cuts.flatMap(({ near, far }) => [near, far])].filter(
    (t) => t > 1e-9,
  );
  const heights = [shell.min[2], shell.max[2], ...cuts.flatMap(({ low, high }) => [low, high])];
  const slopes = [from, to];
  for (const reach of reaches)
    for (const z of heights) {
      const slope = (z - ears[2]) / reach;
      if (slope > from && slope < to) slopes.push(slope);
    }
  slopes.sort((a, b) => a - b);
  const seen: Seen[] = [];
  for (let i = 1; i < slopes.length; i++) {
    const [low, high] = [slopes[i - 1] ?? 0, slopes[i] ?? 0];
    if (high - low < 1e-9) continue;
    const hit = first((low + high) / 2);
    const last = seen.at(-1);
    if (last?.face === hit.face) seen[seen.length - 1] = { ...last, high };
    else seen.push({ ...hit, low, high });
  }
  return seen;
}
