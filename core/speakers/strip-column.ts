/**
 * What one azimuth sees from the ears: an upright cut through the room, in which every face is a
 * level or an upright line, so that which of them is seen first under which elevation is exact. A form of
 * `castRay` for all elevations at once: that one answers for a single one.
 */

import { FACES_BY_AXIS, faceText } from '../room/faces';
import type { Point, Room } from '../room/project';
import type { Box } from '../scene/box';
import { crossingOf } from '../scene/ray';

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

/** The axes of a plan. */
const IN_PLAN = [0, 1] as const;

/** A body that the column cuts: from `near` to `far` metres along it, between two heights. */
interface Cut {
  readonly id: string;
  readonly near: number;
  readonly far: number;
  readonly low: number;
  readonly high: number;
  readonly nearFace: string;
}

/** Every face that the azimuth sees between two slopes, from below upwards. */
export function columnOf(
  view: SightField,
  azimuthRad: number,
  [from, to]: readonly [number, number],
): readonly Seen[] {
  const { ears, shell } = view;
  const step: Point = [-Math.sin(azimuthRad), -Math.cos(azimuthRad), 0];
  const out = crossingOf(shell, ears, step, IN_PLAN);
  if (!out) return [];
  const wall = FACES_BY_AXIS[out.leaveAxis]?.[step[out.leaveAxis] > 0 ? 1 : 0] ?? 'front';
  const cuts: Cut[] = [];
  for (const solid of view.solids) {
    const hit = crossingOf(solid, ears, step, IN_PLAN);
    if (!hit || hit.enter >= out.leave) continue;
    const side = FACES_BY_AXIS[hit.enterAxis]?.[step[hit.enterAxis] > 0 ? 0 : 1];
    cuts.push({
      id: solid.id,
      near: Math.max(hit.enter, 0),
      far: Math.min(hit.leave, out.leave),
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
    let best = upright(wall, out.leave);
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
  const reaches = [out.leave, ...cuts.flatMap(({ near, far }) => [near, far])].filter(
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
