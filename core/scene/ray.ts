/** What a straight way from a place in the room meets first. */

import { AXES, FACES_BY_AXIS, faceText, type Axis } from '../room/faces';
import { mapPoint } from '../room/point';
import type { Point } from '../room/project';
import type { Box } from './box';

/** A shell and the solids in it, as boxes. */
export interface Surroundings {
  readonly shell: Box;
  readonly solids: readonly (Box & { readonly id: string })[];
}

/** Where a ray crosses a box: from `enter` to `leave` steps along it, and through which sides. */
export interface Crossing {
  readonly enter: number;
  readonly leave: number;
  readonly enterAxis: Axis;
  readonly leaveAxis: Axis;
}

/** A smaller part of a step along an axis is none: the ray runs along the sides. */
const LEVEL = 1e-12;

/**
 * Crossing of the ray from `from` in steps of `step` with a box, looked at along `axes` alone; null where
 * it passes it by, lies in the plane of one of its sides, or has it behind.
 */
export function crossingOf(
  { min, max }: Box,
  from: Point,
  step: Point,
  axes: readonly Axis[] = AXES,
): Crossing | null {
  let [enter, leave]: [number, number] = [-Infinity, Infinity];
  let [enterAxis, leaveAxis]: [Axis, Axis] = [0, 0];
  for (const axis of axes) {
    const by = step[axis];
    if (Math.abs(by) < LEVEL) {
      if (from[axis] <= min[axis] || from[axis] >= max[axis]) return null;
      continue;
    }
    const [a, b] = [(min[axis] - from[axis]) / by, (max[axis] - from[axis]) / by];
    if (Math.min(a, b) > enter) [enter, enterAxis] = [Math.min(a, b), axis];
    if (Math.max(a, b) < leave) [leave, leaveAxis] = [Math.max(a, b), axis];
  }
  return enter < leave && leave > 0 ? { enter, leave, enterAxis, leaveAxis } : null;
}

export interface Met {
  /** Name of the face. */
  readonly face: string;
  readonly at: Point;
  /** Steps from where the ray begins. */
  readonly steps: number;
}

/** The first face that the ray meets; null where it does not begin within the shell. */
export function castRay({ shell, solids }: Surroundings, from: Point, step: Point): Met | null {
  const out = crossingOf(shell, from, step);
  if (!out || out.enter > 0) return null;
  let [steps, solid, axis]: [number, string | null, Axis] = [out.leave, null, out.leaveAxis];
  for (const { id, min, max } of solids) {
    const hit = crossingOf({ min, max }, from, step);
    if (hit && hit.enter > 0 && hit.enter < steps)
      [steps, solid, axis] = [hit.enter, id, hit.enterAxis];
  }
  // Of the shell it meets the side that it goes towards, of a solid the one that looks at it.
  const end = step[axis] > 0 === (solid === null) ? 1 : 0;
  const side = FACES_BY_AXIS[axis]?.[end] ?? 'front';
  return {
    face: faceText({ solid, side }),
    at: mapPoint(from, (start, n) => start + step[n] * steps),
    steps,
  };
}
