/** Figures along an axis, each with its line across the plot. */

import type { ReactElement, ReactNode } from 'react';
import { usePlot } from './plot-area';

export interface TicksProps {
  readonly along: 'x' | 'y';
  readonly at: readonly number[];
  /** As it reads; the bare number where it is left out. */
  readonly text?: (value: number) => ReactNode;
  /** False for figures alone. */
  readonly lines?: boolean;
  /** The line of this value is an axis. */
  readonly axisAt?: number;
  /** From the plot to the base line of figures under it, or to the end of those beside it, px. */
  readonly offset?: number;
  /** The last one under the plot has its unit: it ends at the edge of the picture. */
  readonly lastAtEdge?: boolean;
}

export function Ticks(props: TicksProps): ReactElement {
  const { along, at, text = String, lines = true, axisAt, lastAtEdge = false } = props;
  const { width, left, right, top, bottom, x, y } = usePlot();
  const { offset = along === 'x' ? 15 : 6 } = props;
  const figure = (value: number, last: boolean): ReactElement => {
    if (along === 'y') {
      return (
        <text className="tick-label" x={left - offset} y={y(value) + 4} textAnchor="end">
          {text(value)}
        </text>
      );
    }
    const atEdge = last && lastAtEdge;
    return (
      <text
        className="tick-label"
        x={atEdge ? width - 2 : x(value)}
        y={bottom + offset}
        textAnchor={atEdge ? 'end' : 'middle'}
      >
        {text(value)}
      </text>
    );
  };
  return (
    <>
      {at.map((value, n) => (
        <g key={value}>
          {lines ? (
            <line
              className={value === axisAt ? 'axis' : 'grid'}
              {...(along === 'x'
                ? { x1: x(value), x2: x(value), y1: top, y2: bottom }
                : { x1: left, x2: right, y1: y(value), y2: y(value) })}
            />
          ) : null}
          {figure(value, n === at.length - 1)}
        </g>
      ))}
    </>
  );
}

/** A line along the whole plot at the height of `at`; without it along its foot. */
export function Axis({ at }: { readonly at?: number }): ReactElement {
  const { left, right, bottom, y } = usePlot();
  const height = at === undefined ? bottom : y(at);
  return <line className="axis" x1={left} x2={right} y1={height} y2={height} />;
}

/** Room that a figure under an axis takes with the space beside it, px. */
const TICK_PX = 36;

/** How many figures an axis of `lengthPx` has room for: 2 to `most`. */
export const tickCount = (lengthPx: number, most: number): number =>
  Math.max(2, Math.min(most, Math.floor(lengthPx / TICK_PX)));

/** A level as a figure of an axis: `+6`, `−6` with a true minus, `0`. */
export const levelTick = (db: number): string => (db > 0 ? `+${db}` : db < 0 ? `−${-db}` : '0');
