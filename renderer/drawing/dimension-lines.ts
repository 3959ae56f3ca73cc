/** The three dimension lines of the shell in space: on the floor and up a corner, on the sides near to the eye. */

import { OFFSET_M, type ShellDimension } from '../../core/drawing/dimensions';
import { mapPoint } from '../../core/room/point';
import type { Point, ShellSize, Side } from '../../core/room/project';

/** Which sides of the room are nearer to the eye. */
export interface NearSides {
  readonly x: 'left' | 'right';
  readonly y: 'front' | 'back';
}

export function dimensionLines(size: ShellSize, near: NearSides): readonly ShellDimension[] {
  const { width, length, height } = size;
  const right = near.x === 'right';
  const back = near.y === 'back';
  const x = right ? width + OFFSET_M : -OFFSET_M;
  const y = back ? length + OFFSET_M : -OFFSET_M;
  const xFar = right ? -OFFSET_M : width + OFFSET_M;
  const yNear = back ? length : 0;
  return [
    line('width', [0, y, 0], [width, y, 0], [0, back ? 1 : -1, 0]),
    line('length', [x, 0, 0], [x, length, 0], [right ? 1 : -1, 0, 0]),
    line('height', [xFar, yNear, 0], [xFar, yNear, height], [right ? -1 : 1, 0, 0]),
  ];
}

const line = (side: Side, from: Point, to: Point, outward: Point): ShellDimension => ({
  side,
  from,
  to,
  outward,
});

/** Pairs of points: the line itself, an extension line at each end, and a tick across each end. */
export function dimensionStrokes(dimension: ShellDimension): readonly (readonly [Point, Point])[] {
  const { from, to, outward } = dimension;
  const axis = [0, 1, 2].find((i) => (from[i] ?? 0) !== (to[i] ?? 0)) ?? 0;
  const shifted = (at: Point, out: number, along: number): Point =>
    mapPoint(at, (value, i) => value + outward[i] * out + (i === axis ? along : 0));
  const tick = 0.09;
  return [
    [shifted(from, 0, -0.1), shifted(to, 0, 0.1)],
    ...[from, to].flatMap((end) => [
      [shifted(end, -OFFSET_M + 0.08, 0), shifted(end, 0.1, 0)] as const,
      [shifted(end, -tick, -tick), shifted(end, tick, tick)] as const,
    ]),
  ];
}
