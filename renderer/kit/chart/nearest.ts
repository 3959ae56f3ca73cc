/** Which mark of a chart is meant by a place of the pointer. */

import { bisector } from 'd3-array';
import { useState } from 'react';
import type { Scale } from './plot-area';

/**
 * Index of the value that lies nearest to `px` on the scale, the first of equal ones; null for an empty
 * list and where none is within `reachPx`. `values` ascend.
 */
export function nearestAt(
  values: ArrayLike<number>,
  scale: Scale,
  px: number,
  reachPx = Infinity,
): number | null {
  if (values.length === 0) return null;
  const found = bisector((value: number) => scale(value)).center(values, px);
  const value = values[found] ?? 0;
  if (!(Math.abs(scale(value) - px) <= reachPx)) return null;
  let first = found;
  while (first > 0 && values[first - 1] === value) first -= 1;
  return first;
}

export interface Nearest {
  /** Index of what is pointed at or walked to. */
  readonly at: number | null;
  readonly pointAt: (px: number) => void;
  readonly walkTo: (at: number) => void;
  readonly leave: () => void;
  /** Index of the one nearest to `px`, for a press. */
  readonly find: (px: number) => number | null;
}

/** Pointing and walking along `values` that are drawn on `scale` between two edges, px. */
export function useNearest(
  values: ArrayLike<number>,
  scale: Scale,
  { left, right }: { readonly left: number; readonly right: number },
): Nearest {
  const [at, setAt] = useState<number | null>(null);
  const find = (px: number): number | null =>
    px >= left && px <= right ? nearestAt(values, scale, px) : null;
  return {
    at: at !== null && at < values.length ? at : null,
    pointAt: (px) => setAt(find(px)),
    walkTo: setAt,
    leave: () => setAt(null),
    find,
  };
}
