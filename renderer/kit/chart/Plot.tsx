/**
 * The picture of a chart: its marks share the scales, a pointer is told in px of the picture, and where
 * the chart is walked by keyboard, the walker lies over it.
 */

import type { MouseEvent, ReactElement, ReactNode, SVGProps } from 'react';
import { ChartWalker, type ChartWalkerProps } from './ChartWalker';
import { PlotContext, type PlotArea, type Scale } from './plot-area';

/** Px from the left upper corner of the picture. */
export interface PlotPoint {
  readonly x: number;
  readonly y: number;
}

export interface PlotProps {
  readonly area: PlotArea;
  readonly x: Scale;
  readonly y: Scale;
  /** The chart in words. */
  readonly describe: string;
  /** `group` where parts of the picture are controls of their own. */
  readonly role?: 'img' | 'group';
  /** Where the pointer is; null when it leaves. */
  readonly onPoint?: (at: PlotPoint | null) => void;
  readonly onChoose?: (at: PlotPoint) => void;
  readonly walk?: ChartWalkerProps;
  /** For a picture that is pulled, in place of pointing and choosing. */
  readonly pull?: Pick<
    SVGProps<SVGSVGElement>,
    'onPointerDown' | 'onPointerMove' | 'onPointerUp' | 'onPointerCancel'
  >;
  readonly children: ReactNode;
}

const pointOf = (event: MouseEvent<SVGSVGElement>): PlotPoint => {
  const box = event.currentTarget.getBoundingClientRect();
  return { x: event.clientX - box.left, y: event.clientY - box.top };
};

export function Plot(props: PlotProps): ReactElement | null {
  const { area, x, y, describe, role = 'img', onPoint, onChoose, walk, pull, children } = props;
  const { width, height } = area;
  if (width === 0) return null;
  return (
    <PlotContext value={{ ...area, x, y }}>
      <svg
        width={width}
        height={height}
        role={role}
        aria-label={describe}
        onPointerMove={onPoint && ((event) => onPoint(pointOf(event)))}
        onPointerLeave={onPoint && (() => onPoint(null))}
        onClick={onChoose && ((event) => onChoose(pointOf(event)))}
        {...pull}
      >
        {children}
      </svg>
      {walk ? <ChartWalker {...walk} /> : null}
    </PlotContext>
  );
}
