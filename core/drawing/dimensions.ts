/** The dimensions of the shell beside it, and how a measured thing stands from walls and floor. */

import type { Measures } from '../quantity/measures';
import type { Axis } from '../room/faces';
import { mapPoint } from '../room/point';
import { farCorner } from '../room/point';
import { SIDES, type Point, type Project, type Side } from '../room/project';
import type { Dimension, Mark } from './marks';
import { linesOnPaper, onPaper, type SpaceLines } from './on-paper';
import type { FlatView } from './views';

/** Distance of a dimension line from the room, m. */
export const OFFSET_M = 0.38;

export interface ShellDimension {
  readonly side: Side;
  /** Ends of the dimension line in the room. */
  readonly from: Point;
  /** The end that moves when the side changes. */
  readonly to: Point;
  /** Direction from the room out to the line. */
  readonly outward: Point;
}

/**
 * The two sides of the shell that a view shows: the level one under the picture, the upright one to its
 * right, in the plane of the shell that is nearest to the eye.
 */
export function shellDimensions(view: FlatView, { room }: Project): readonly ShellDimension[] {
  const far = farCorner(room.size);
  const { right, up } = view;
  const line = (along: Axis, out: Axis, sign: 1 | -1): ShellDimension => {
    const edge = sign === 1 ? far[out] : 0;
    const from = mapPoint([0, 0, 0], (_, axis) => (axis === out ? edge + sign * OFFSET_M : 0));
    return {
      side: SIDES[along],
      from,
      to: mapPoint(from, (value, axis) => (axis === along ? far[axis] : value)),
      outward: mapPoint([0, 0, 0], (_, axis) => (axis === out ? sign : 0)),
    };
  };
  return [line(right.axis, up.axis, up.sign === 1 ? -1 : 1), line(up.axis, right.axis, right.sign)];
}

/** A dimension of the shell as a mark. */
export function shellDimensionMarks(
  view: FlatView,
  project: Project,
  { length }: Measures,
): readonly Dimension[] {
  return shellDimensions(view, project).map(({ side, from, to, outward }): Dimension => {
    const [out] = [onPaper(view, outward)];
    const onShell = (end: Point): Point =>
      mapPoint(end, (value, n) => value - OFFSET_M * outward[n]);
    return {
      kind: 'dimension',
      layer: 'dimensions',
      from: onPaper(view, onShell(from)),
      to: onPaper(view, onShell(to)),
      offset: [out[0] * OFFSET_M, out[1] * OFFSET_M],
      tone: 'ink',
      text: length(project.room.size[side]),
    };
  });
}

/** What is measured in a view: along the page, and up it. */
export const measuredAxes = ({ right, up }: FlatView): readonly [Axis, Axis] => [
  right.axis,
  up.axis,
];

/** From a wall or the floor to the point that a thing is measured to, along one axis. */
export interface PlaceLine {
  readonly axis: Axis;
  readonly from: Point;
  readonly to: Point;
}

/** The line from the wall, the screen wall or the floor to the point. */
export const placeLine = (at: Point, axis: Axis): PlaceLine => ({
  axis,
  from: mapPoint(at, (value, n) => (n === axis ? 0 : value)),
  to: at,
});

/** Shorter than this there is no line to see, m. */
const LEAST_M = 0.02;
const TICK_M = 0.06;

/** The line with a tick across each end, in the plane of the two axes that are looked at. */
export function placeStrokes(
  { axis, from, to }: PlaceLine,
  axes: readonly [Axis, Axis],
): SpaceLines {
  if (Math.abs(to[axis] - from[axis]) < LEAST_M) return [];
  const across = axes.find((other) => other !== axis) ?? 0;
  const beside = (at: Point, by: number): Point =>
    mapPoint(at, (value, n) => (n === axis || n === across ? value + by : value));
  return [
    [from, to],
    ...[from, to].map((end) => [beside(end, -TICK_M), beside(end, TICK_M)] as const),
  ];
}

/** The lines of the chosen thing's place. */
export const placeMarks = (view: FlatView, lines: readonly PlaceLine[]): readonly Mark[] =>
  linesOnPaper(
    view,
    'dimensions',
    lines.flatMap((line) => placeStrokes(line, measuredAxes(view))),
    { tone: 'accent', weight: 'seen' },
  );
