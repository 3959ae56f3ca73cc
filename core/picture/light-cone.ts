/**
 * What the light between lens and picture meets: the pyramid from the lens to the four corners of the
 * picture against boxes, exact by separating planes (both are convex).
 */

import { cross, dot, minus } from '../room/point';
import type { Point } from '../room/project';
import type { ScreenRect } from '../room/screen';
import type { Box } from '../scene/box';

const AXIS_VECTORS: readonly Point[] = [
  [1, 0, 0],
  [0, 1, 0],
  [0, 0, 1],
];

/** Boxes that reach into the light by less than this only touch it, m. */
const TOUCH_M = 1e-6;

/** True where `box` reaches into the light from `lens` to the picture. */
export function meetsLight(lens: Point, picture: ScreenRect, box: Box): boolean {
  const corners = pictureCorners(picture);
  const apexEdges = corners.map((corner) => minus(corner, lens));
  const pyramid: readonly Point[] = [lens, ...corners];
  const boxed = boxCorners(box);
  const pyramidNormals = apexEdges.map((edge, n) =>
    cross(edge, apexEdges[(n + 1) % apexEdges.length] ?? edge),
  );
  const edgePairs = [...apexEdges, [1, 0, 0] as Point, [0, 0, 1] as Point].flatMap((edge) =>
    AXIS_VECTORS.map((axis) => cross(edge, axis)),
  );
  return [...AXIS_VECTORS, ...pyramidNormals, ...edgePairs].every((axis) => {
    const length = Math.hypot(...axis);
    // Of two parallel edges there is no plane.
    if (length < 1e-12) return true;
    const [lowA, highA] = span(pyramid, axis);
    const [lowB, highB] = span(boxed, axis);
    return Math.min(highA - lowB, highB - lowA) > TOUCH_M * length;
  });
}

function span(points: readonly Point[], axis: Point): readonly [number, number] {
  const values = points.map((point) => dot(axis, point));
  return [Math.min(...values), Math.max(...values)];
}

const pictureCorners = ({ leftX, rightX, bottomZ, topZ }: ScreenRect): readonly Point[] => [
  [leftX, 0, bottomZ],
  [rightX, 0, bottomZ],
  [rightX, 0, topZ],
  [leftX, 0, topZ],
];

const boxCorners = ({ min, max }: Box): readonly Point[] =>
  [min[0], max[0]].flatMap((x) =>
    [min[1], max[1]].flatMap((y) => [min[2], max[2]].map((z): Point => [x, y, z])),
  );
