/** Lines and bands through points that are given in the quantities of the axes. */

import { line } from 'd3-shape';
import type { ReactElement } from 'react';
import { usePlot, type Scale } from './plot-area';

/** Value along x, value along y. */
export type DataPoint = readonly [number, number];

/** Points of two lists of one length; they end with the shorter one. */
export function pointsOf(xs: ArrayLike<number>, ys: ArrayLike<number>): readonly DataPoint[] {
  return Array.from({ length: Math.min(xs.length, ys.length) }, (_, n): DataPoint => [
    xs[n] ?? 0,
    ys[n] ?? 0,
  ]);
}

/** To a tenth of a px. */
const pathOf = (points: readonly DataPoint[], x: Scale, y: Scale): string =>
  line<DataPoint>(
    ([value]) => x(value),
    ([, value]) => y(value),
  ).digits(1)(points) ?? '';

export interface LineProps {
  readonly points: readonly DataPoint[];
  readonly className: string;
}

export function Line({ points, className }: LineProps): ReactElement {
  const { x, y } = usePlot();
  return <path className={className} d={pathOf(points, x, y)} />;
}

export interface BandProps {
  readonly upper: readonly DataPoint[];
  readonly lower: readonly DataPoint[];
  readonly className: string;
}

/** The area between two lines. */
export function Band({ upper, lower, className }: BandProps): ReactElement {
  const { x, y } = usePlot();
  return <path className={className} d={`${pathOf([...upper, ...[...lower].reverse()], x, y)}Z`} />;
}
