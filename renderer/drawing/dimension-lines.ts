/** The three dimension lines of the shell: where they stand in each view, and which end can be pulled. */

import { mapPoint } from '../../core/room/point';
import type { Point, ShellSize, Side } from '../../core/room/project';
import type { View } from '../state/session';

export interface DimensionLine {
  readonly side: Side;
  readonly from: Point;
  /** The end that moves when the side changes. */
  readonly to: Point;
  /** Direction from the room out to the line: extension lines and ticks follow it. */
  readonly outward: Point;
}

/** Which sides of the room are nearer to the eye. */
export interface NearSides {
  readonly x: 'left' | 'right';
  readonly y: 'front' | 'back';
}

/** Distance of a dimension line from the room, m. */
export const OFFSET_M = 0.38;

export function dimensionLines(
  size: ShellSize,
  view: View,
  near: NearSides,
): readonly DimensionLine[] {
  const { width, length, height } = size;
  const down: Point = [0, 0, -1];
  if (view === 'section') {
    return [
      line('length', [0, 0, -OFFSET_M], [0, length, -OFFSET_M], down),
      line('height', [0, length + OFFSET_M, 0], [0, length + OFFSET_M, height], [0, 1, 0]),
    ];
  }
  if (view === 'front') {
    return [
      line('width', [0, length, -OFFSET_M], [width, length, -OFFSET_M], down),
      line('height', [width + OFFSET_M, length, 0], [width + OFFSET_M, length, height], [1, 0, 0]),
    ];
  }
  const right = near.x === 'right';
  const back = near.y === 'back';
  const xOut: Point = [right ? 1 : -1, 0, 0];
  const yOut: Point = [0, back ? 1 : -1, 0];
  const x = right ? width + OFFSET_M : -OFFSET_M;
  const y = back ? length + OFFSET_M : -OFFSET_M;
  const floor = [
    line('width', [0, y, 0], [width, y, 0], yOut),
    line('length', [x, 0, 0], [x, length, 0], xOut),
  ];
  if (view === 'plan') return floor;
  const xFar = right ? -OFFSET_M : width + OFFSET_M;
  const yNear = back ? length : 0;
  return [
    ...floor,
    line('height', [xFar, yNear, 0], [xFar, yNear, height], [right ? -1 : 1, 0, 0]),
  ];
}

const line = (side: Side, from: Point, to: Point, outward: Point): DimensionLine => ({
  side,
  from,
  to,
  outward,
});

/** Pairs of points: the line itself, an extension line at each end, and a tick across each end. */
export function dimensionStrokes(dimension: DimensionLine): readonly (readonly [Point, Point])[] {
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
