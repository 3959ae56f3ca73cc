/** What labels and handles are made from, and how a hand moves a thing in each view. */

import type { RefObject } from 'react';
import type { Ray } from 'three';
import type { Analysis } from '../../core/analysis/analyze';
import type { ShellDimension } from '../../core/drawing/dimensions';
import { FLAT_VIEWS, type FlatView } from '../../core/drawing/views';
import type { FindingPlace } from '../../core/findings/finding';
import { carpenterStepM, snapLength } from '../../core/quantity/carpenter-step';
import type { LengthUnits } from '../../core/quantity/length';
import type { Edit } from '../../core/room/edits';
import type { Axis } from '../../core/room/faces';
import type { Point, Project } from '../../core/room/project';
import {
  idOf,
  isSameThing,
  isThing,
  selectedId,
  type Selected,
  type ThingKind,
} from '../state/selection';
import type { Session, View } from '../state/session';
import { onPlane, type Stage } from './stage';
import type { Gesture } from '../state/gesture';

export interface LabelContext {
  /** The window as it is: what is chosen, and how to choose. */
  readonly session: Session;
  /** Kinds of things that carry handles of the open subject's, and so need no name plates. */
  readonly handles: readonly ThingKind[];
  readonly project: Project;
  readonly analysis: Analysis;
  readonly units: LengthUnits;
  readonly view: View;
  readonly dimensions: readonly ShellDimension[];
  readonly stage: RefObject<Stage | null>;
  /** What the open finding speaks of. */
  readonly place: FindingPlace | null;
  readonly change: (edit: Edit, gesture?: Gesture | null) => void;
  readonly hold: (held: boolean) => void;
}

export const clamp = (value: number, [low, high]: readonly [number, number]): number =>
  Math.min(Math.max(value, low), high);

/** True for what is chosen, and for what the open finding speaks of. */
export function isMarked({ session, place }: LabelContext, thing: Selected): boolean {
  if (selectedId(session.selected, thing.kind) === idOf(thing)) return true;
  return place !== null && isThing(place) && isSameThing(place, thing);
}

/** The axis that the eye looks along: things are dragged level in the room and plan, upright in sections. */
export const DRAG_NORMAL: Readonly<Record<View, Axis>> = {
  room: 2,
  plan: FLAT_VIEWS.plan.looks.axis,
  section: FLAT_VIEWS.section.looks.axis,
  front: FLAT_VIEWS.front.looks.axis,
};

/** Where a point goes that is dragged from `start`; null where the eye looks along the plane. */
export function dragPlace(
  { view, units, project }: LabelContext,
  start: Point,
  ray: Ray,
  startRay: Ray,
  fine: boolean,
): Point | null {
  const normal = DRAG_NORMAL[view];
  const now = onPlane(ray, start, normal);
  const then = onPlane(startRay, start, normal);
  if (!now || !then) return null;
  const stepM = carpenterStepM(units, fine);
  const to: [number, number, number] = [...start];
  start.forEach((at, axis) => {
    if (axis === normal) return;
    to[axis] = snapLength(at + (now[axis] ?? 0) - (then[axis] ?? 0), stepM);
  });
  return clampToShell(to, project);
}

/** The place, moved onto the shell where it lies outside. */
export function clampToShell([x, y, z]: Point, { room }: Project): Point {
  const { width, length, height } = room.size;
  return [clamp(x, [0, width]), clamp(y, [0, length]), clamp(z, [0, height])];
}

/** To the right and up the paper. */
function waysOf({ right, up }: FlatView): readonly [Axis, 1 | -1, Axis, 1 | -1] {
  return [right.axis, right.sign, up.axis, up.sign];
}

/** Room axes that the arrow keys move along in each view: to the right, and up. */
export const NUDGE_AXES: Readonly<Record<View, readonly [Axis, 1 | -1, Axis, 1 | -1]>> = {
  room: [0, 1, 1, -1],
  plan: waysOf(FLAT_VIEWS.plan),
  section: waysOf(FLAT_VIEWS.section),
  front: waysOf(FLAT_VIEWS.front),
};

/** The place after an arrow key. */
export function nudged(
  at: Point,
  { view, project, units }: LabelContext,
  right: number,
  up: number,
  fine: boolean,
): Point {
  const [axisRight, signRight, axisUp, signUp] = NUDGE_AXES[view];
  const stepM = carpenterStepM(units, fine);
  const next: [number, number, number] = [...at];
  next[axisRight] = snapLength(next[axisRight] + right * signRight * stepM, stepM);
  next[axisUp] = snapLength(next[axisUp] + up * signUp * stepM, stepM);
  return clampToShell(next, project);
}
