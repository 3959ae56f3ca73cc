/** Places and the corner that a shell's size makes, axis by axis. */

import type { Axis } from './faces';
import type { Point, ShellSize, Side } from './project';

/** `point` with each coordinate replaced by what `change` makes of it, x, y, z in turn. */
export function mapPoint(point: Point, change: (value: number, axis: Axis) => number): Point {
  return [change(point[0], 0), change(point[1], 1), change(point[2], 2)];
}

/** The way from `b` to `a`. */
export const minus = (a: Point, b: Point): Point => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];

export const dot = (a: Point, b: Point): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];

/** Points up where `a` is the left of who looks along `b`: the axes of the room are left-handed. */
export const cross = (a: Point, b: Point): Point => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];

/** The corner of the shell that lies farthest from the origin, m: its size as [x, y, z]. */
export function farCorner({ width, length, height }: ShellSize): Point {
  return [width, length, height];
}

/** `size` with each side replaced by what `change` makes of it, m. */
export function mapSides(
  size: ShellSize,
  change: (valueM: number, side: Side) => number,
): ShellSize {
  return {
    width: change(size.width, 'width'),
    length: change(size.length, 'length'),
    height: change(size.height, 'height'),
  };
}
