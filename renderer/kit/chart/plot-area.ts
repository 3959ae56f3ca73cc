/** Where a chart draws within its box, and the scales that its marks share. */

import { createContext, useContext, type RefObject } from 'react';
import { useBoxSize } from './box-size';

/** Space between the edge of the box and the plot, px: figures of the axes stand there. */
export interface Margins {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** Edges of the plot in its box, px; y grows downward. */
export interface PlotArea {
  /** Of the whole box. */
  readonly width: number;
  readonly height: number;
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** However small its box, a plot keeps this much of it, px. */
const LEAST_PX = 10;

export function plotArea(
  { width, height }: { readonly width: number; readonly height: number },
  margins: Margins,
): PlotArea {
  const { left, top } = margins;
  return {
    width,
    height,
    left,
    right: Math.max(left + LEAST_PX, width - margins.right),
    top,
    bottom: Math.max(top + LEAST_PX, height - margins.bottom),
  };
}

/** The box for `<Chart box>` and the area that is left in it. */
export function usePlotArea(
  margins: Margins,
): PlotArea & { readonly box: RefObject<HTMLDivElement | null> } {
  const [box, size] = useBoxSize<HTMLDivElement>();
  return { box, ...plotArea(size, margins) };
}

/** From a quantity to px. */
export type Scale = (value: number) => number;

export interface PlotFrame extends PlotArea {
  readonly x: Scale;
  readonly y: Scale;
}

export const PlotContext = createContext<PlotFrame | null>(null);

/** Area and scales of the plot around a mark. */
export function usePlot(): PlotFrame {
  const frame = useContext(PlotContext);
  if (!frame) throw new Error('A mark of a chart stands inside a Plot.');
  return frame;
}
