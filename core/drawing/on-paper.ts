/** From the room to the paper of a view: places, depths, boxes and lines. */

import type { Axis } from '../room/faces';
import type { Point } from '../room/project';
import type { Box } from '../scene/box';
import type { Layer, Lines, Look, PaperPoint, PaperRect } from './marks';
import type { FlatView } from './views';

/** Pairs of places in the room. */
export type SpaceLines = readonly (readonly [Point, Point])[];

/** Where a place of the room is on the paper, m. */
export function onPaper({ right, up }: FlatView, place: Point): PaperPoint {
  return [right.sign * place[right.axis], up.sign * place[up.axis]];
}

/** How far along the eye's way a place is, m: what is less is nearer to the eye. */
export function depthOf({ looks }: FlatView, place: Point): number {
  return looks.sign * place[looks.axis];
}

/** The axis of the room that a view does not show. */
export const hiddenAxis = ({ looks }: FlatView): Axis => looks.axis;

/** A box of the room as it stands on the paper. */
export function rectOnPaper(view: FlatView, { min, max }: Box): PaperRect {
  const [a, b] = [onPaper(view, min), onPaper(view, max)];
  return {
    min: [Math.min(a[0], b[0]), Math.min(a[1], b[1])],
    max: [Math.max(a[0], b[0]), Math.max(a[1], b[1])],
  };
}

/** The nearest and farthest depth of a box. */
export function depthsOf(view: FlatView, { min, max }: Box): readonly [number, number] {
  const [a, b] = [depthOf(view, min), depthOf(view, max)];
  return [Math.min(a, b), Math.max(a, b)];
}

/** Lines of the room as one mark; those that the eye looks along are points and are left out. */
export function linesOnPaper(
  view: FlatView,
  layer: Layer,
  pairs: SpaceLines,
  look: Look,
): readonly Lines[] {
  const paths = pairs
    .map(([from, to]) => [onPaper(view, from), onPaper(view, to)] as const)
    .filter(([from, to]) => from[0] !== to[0] || from[1] !== to[1]);
  return paths.length === 0 ? [] : [{ kind: 'lines', layer, paths, ...look }];
}
