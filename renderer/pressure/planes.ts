/** The planes that pressure is painted on: every face of the free space, and the room at ear height. */

import { FACE_NORMALS, faceAxes, type Axis } from '../../core/room/faces';
import { farCorner } from '../../core/room/point';
import { FACES, type Room } from '../../core/room/project';
import type { View } from '../state/session';

export interface PressurePlane {
  readonly key: string;
  readonly where: 'face' | 'ears';
  readonly axis: Axis;
  readonly atM: number;
  /** Side that the air is on, along the axis. */
  readonly towards: -1 | 1;
  /** Sample places along the plane's two axes in x, y, z order, m. */
  readonly us: Float64Array;
  readonly vs: Float64Array;
}

/** Samples are no further apart than this, m. */
const STEP_M = 0.08;
/** Painted this far off the face, so that it lies over it. */
const EARS_M = 1.1;

const samples = (from: number, to: number): Float64Array => {
  const count = Math.max(2, Math.ceil((to - from) / STEP_M) + 1);
  return Float64Array.from({ length: count }, (_, n) => from + ((to - from) * n) / (count - 1));
};

/** Planes that a view shows: the plan is cut at ear height. */
export const planesIn = (view: View): PressurePlane['where'] => (view === 'plan' ? 'ears' : 'face');

/** Planes of the room; `earsM` is the height of the plan's. */
export function planesOf({ size, solids }: Room, earsM: number | null): readonly PressurePlane[] {
  const far = farCorner(size);
  const clip = (at: number, axis: Axis): number => Math.min(Math.max(at, 0), far[axis]);
  const planes: PressurePlane[] = FACES.map((face) => {
    const { axis, side } = FACE_NORMALS[face];
    const [u, v] = faceAxes(face);
    return {
      key: face,
      where: 'face',
      axis,
      atM: side === 1 ? far[axis] : 0,
      towards: side === 1 ? -1 : 1,
      us: samples(0, far[u]),
      vs: samples(0, far[v]),
    };
  });
  for (const solid of solids) {
    for (const face of FACES) {
      const { axis, side } = FACE_NORMALS[face];
      const atM = side === 1 ? solid.max[axis] : solid.min[axis];
      if (atM <= 0.001 || atM >= far[axis] - 0.001) continue;
      const [u, v] = faceAxes(face);
      const [u0, u1] = [clip(solid.min[u], u), clip(solid.max[u], u)];
      const [v0, v1] = [clip(solid.min[v], v), clip(solid.max[v], v)];
      if (u1 - u0 < 0.001 || v1 - v0 < 0.001) continue;
      planes.push({
        key: `${solid.id}:${face}`,
        where: 'face',
        axis,
        atM,
        towards: side,
        us: samples(u0, u1),
        vs: samples(v0, v1),
      });
    }
  }
  planes.push({
    key: 'ears',
    where: 'ears',
    axis: 2,
    atM: Math.min(earsM ?? EARS_M, size.height),
    towards: 1,
    us: samples(0, size.width),
    vs: samples(0, size.length),
  });
  return planes;
}
