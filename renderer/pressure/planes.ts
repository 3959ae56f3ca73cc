/** The planes that pressure is painted on: every face of the free space, and the room at ear height. */

import type { Axis } from '../../core/room/faces';
import type { Room } from '../../core/room/project';
import { facesOf } from '../../core/scene/faces';
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
export function planesOf(room: Room, earsM: number | null): readonly PressurePlane[] {
  const planes = facesOf(room).map(({ name, axis, at, inward, rect }): PressurePlane => ({
    key: name,
    where: 'face',
    axis,
    atM: at,
    towards: inward,
    us: samples(rect[0], rect[2]),
    vs: samples(rect[1], rect[3]),
  }));
  const { size } = room;
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
