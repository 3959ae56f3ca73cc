/** Planes of a painting as they lie under a plan or section. */

import type { FlatView, Way } from '../../../core/drawing/views';
import type { Axis } from '../../../core/room/faces';
import type { Point } from '../../../core/room/project';
import type { Box } from '../../../core/scene/box';
import type { PaintedPlane, Painting } from '../../pressure/painting';
import { paintOf, type PaintColors } from '../paint-colors';

/** Planes that turn to the eye, the farthest first. */
export function planesSeen(
  view: FlatView,
  planes: readonly PaintedPlane[],
): readonly PaintedPlane[] {
  const where = view.id === 'plan' ? 'ears' : 'face';
  const depth = ({ plane }: PaintedPlane): number => view.looks.sign * plane.atM;
  return planes
    .filter(({ plane }) => plane.where === where)
    .filter(({ plane }) => plane.axis === view.looks.axis)
    .filter(({ plane }) => plane.where === 'ears' || plane.towards === -view.looks.sign)
    .sort((a, b) => depth(b) - depth(a));
}

export function place(axis: Axis, at: number, u: number, v: number): Point {
  return axis === 0 ? [at, u, v] : axis === 1 ? [u, at, v] : [u, v, at];
}

export const boxOf = ({ axis, atM, us, vs }: PaintedPlane['plane']): Box => ({
  min: place(axis, atM, us[0] ?? 0, vs[0] ?? 0),
  max: place(axis, atM, us.at(-1) ?? 0, vs.at(-1) ?? 0),
});

/** The axes that a plane's samples run along, in x, y, z order. */
const axesOf = (axis: Axis): readonly [Axis, Axis] =>
  axis === 0 ? [1, 2] : axis === 1 ? [0, 2] : [0, 1];

export interface PaintPicture {
  readonly width: number;
  readonly height: number;
  readonly bytes: Uint8ClampedArray<ArrayBuffer>;
}

/** The samples of a plane as they lie on the paper: to the right and, row after row, down. */
export function pictureOf(
  view: FlatView,
  { plane, values }: PaintedPlane,
  kind: Painting['kind'],
  colors: PaintColors,
): PaintPicture {
  const paint = paintOf(values, kind, colors);
  const [uAxis] = axesOf(plane.axis);
  const counts = [plane.us.length, plane.vs.length] as const;
  const uGoesRight = view.right.axis === uAxis;
  const [width, height] = uGoesRight ? counts : ([counts[1], counts[0]] as const);
  const along = ({ sign }: Way, n: number, count: number): number =>
    sign === 1 ? n : count - 1 - n;
  const bytes = new Uint8ClampedArray(4 * width * height);
  for (let row = 0; row < height; row++) {
    for (let column = 0; column < width; column++) {
      const right = along(view.right, column, width);
      const up = along(view.up, height - 1 - row, height);
      const [u, v] = uGoesRight ? [right, up] : [up, right];
      const from = 4 * (u * counts[1] + v);
      bytes.set(paint.subarray(from, from + 4), 4 * (row * width + column));
    }
  }
  return { width, height, bytes };
}
