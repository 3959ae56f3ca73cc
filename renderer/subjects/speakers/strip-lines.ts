/** Lines of what a window casts onto the faces: the outlines of its strips, and the sight lines to their ends. */

import type { SpaceLines } from '../../../core/drawing/on-paper';
import type { Point } from '../../../core/room/project';
import type { Strip } from '../../../core/speakers/strips';

export const stripOutlines = (strips: readonly Pick<Strip, 'polygon'>[]): SpaceLines =>
  strips.flatMap(({ polygon }) =>
    polygon.map((from, n) => [from, polygon[(n + 1) % polygon.length] ?? from] as const),
  );

/** From the ears to the strips' ends: the places of least and greatest azimuth, the window's middle as 0. */
export function stripSides(strips: readonly Strip[], ears: Point): SpaceLines {
  const points = strips.flatMap((strip) => strip.polygon);
  const [first] = points;
  if (!first) return [];
  const angle = (point: Point): number => Math.atan2(ears[0] - point[0], ears[1] - point[1]);
  const zero = angle(first);
  const turned = (point: Point): number => {
    const off = angle(point) - zero;
    return Math.atan2(Math.sin(off), Math.cos(off));
  };
  const most = points.reduce((a, b) => (turned(b) > turned(a) ? b : a));
  const least = points.reduce((a, b) => (turned(b) < turned(a) ? b : a));
  return [
    [ears, most],
    [ears, least],
  ];
}
