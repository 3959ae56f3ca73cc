/**
 * A fitting by tape measure, in a builder's words: how far out from its wall, how far down from the
 * ceiling, how long, and where its near corner is. What touches a wall or the ceiling keeps touching it
 * when a size is set, and every figure within the shell is taken, in whatever order they are typed.
 */

import { roundLength } from '../quantity/length';
import { AXES, FACES_BY_AXIS, faceName, type Axis } from './faces';
import { LEAST_EXTENT_M } from './fitting-presets';
import { farCorner } from './point';
import type { ShellSize, Solid } from './project';

export interface FittingField {
  readonly of: 'size' | 'place';
  readonly axis: Axis;
  /** What is measured, for example `out from the left wall`. */
  readonly label: string;
  readonly valueM: number;
  readonly lowM: number;
  readonly highM: number;
  /** The fitting with that figure, m from `lowM` to `highM`. */
  readonly set: (valueM: number) => Solid;
}

/** Faces this close touch, m. */
export const ON_FACE_M = 1e-3;

/** Which ends of the shell along an axis the fitting touches. */
export type Contact = 'low' | 'high' | 'both' | 'none';

export function contactOf(solid: Solid, size: ShellSize, axis: Axis): Contact {
  const low = solid.min[axis] <= ON_FACE_M;
  const high = solid.max[axis] >= farCorner(size)[axis] - ON_FACE_M;
  return low && high ? 'both' : low ? 'low' : high ? 'high' : 'none';
}

/** To which point the places of a fitting are measured. */
export const FITTING_MEASURED_TO =
  'Places are measured to the corner nearest to the left wall, the screen wall and the floor.';

/** Sizes first, what stands out from a wall or hangs down leading, then the place of the near corner. */
export function fittingFields(solid: Solid, size: ShellSize): readonly FittingField[] {
  const leads = (axis: Axis): number => {
    const contact = contactOf(solid, size, axis);
    if (axis === 2) return contact === 'high' ? 1 : 3;
    return contact === 'low' || contact === 'high' ? 0 : 2;
  };
  const order = [...AXES].sort((a, b) => leads(a) - leads(b));
  return [
    ...order.map((axis) => sizeField(solid, size, axis)),
    ...AXES.map((axis) => placeField(solid, size, axis)),
  ];
}

function sizeField(solid: Solid, size: ShellSize, axis: Axis): FittingField {
  const far = farCorner(size)[axis];
  const contact = contactOf(solid, size, axis);
  return {
    of: 'size',
    axis,
    label: sizeLabel(solid, size, axis),
    valueM: roundLength(solid.max[axis] - solid.min[axis]),
    lowM: Math.min(LEAST_EXTENT_M, far),
    highM: far,
    set: (extentM) => {
      // From the face that it touches; in the open from its near side, moved back where there is no room.
      if (contact === 'high') return withSpan(solid, axis, far - extentM, far);
      const low = Math.max(0, Math.min(solid.min[axis], far - extentM));
      return withSpan(solid, axis, low, low + extentM);
    },
  };
}

const WORDS = ['wide', 'deep', 'high'] as const;

function sizeLabel(solid: Solid, size: ShellSize, axis: Axis): string {
  const contact = contactOf(solid, size, axis);
  if (axis === 2) return contact === 'high' ? 'down from the ceiling' : WORDS[2];
  if (contact === 'low' || contact === 'high') {
    const [low, high] = FACES_BY_AXIS[axis] ?? ['left', 'right'];
    return `out from the ${faceName(contact === 'low' ? low : high)}`;
  }
  const other = contactOf(solid, size, axis === 0 ? 1 : 0);
  return contact === 'both' && other !== 'both' ? 'along' : WORDS[axis];
}

const PLACES = ['from the left wall', 'from the screen wall', 'above the floor'] as const;

function placeField(solid: Solid, size: ShellSize, axis: Axis): FittingField {
  const far = farCorner(size)[axis];
  const extent = solid.max[axis] - solid.min[axis];
  const hangs = axis === 2 && contactOf(solid, size, 2) === 'high';
  return {
    of: 'place',
    axis,
    label: PLACES[axis],
    valueM: solid.min[axis],
    lowM: 0,
    highM: Math.max(0, far - LEAST_EXTENT_M),
    // What hangs stays at the ceiling: its underside moves. What would reach through the far wall is cut there.
    set: (at) => withSpan(solid, axis, at, hangs ? far : Math.min(at + extent, far)),
  };
}

function withSpan(solid: Solid, axis: Axis, low: number, high: number): Solid {
  const min: [number, number, number] = [...solid.min];
  const max: [number, number, number] = [...solid.max];
  min[axis] = roundLength(low);
  max[axis] = roundLength(high);
  return { ...solid, min, max };
}
