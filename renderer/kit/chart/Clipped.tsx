/** What may run out of the plot is cut off at its edges. */

import { useId, type ReactElement, type ReactNode } from 'react';
import { usePlot } from './plot-area';

export interface ClippedProps {
  /** Reach over the upper edge, px. */
  readonly above?: number;
  readonly children: ReactNode;
}

export function Clipped({ above = 0, children }: ClippedProps): ReactElement {
  const id = useId();
  const { left, right, top, bottom } = usePlot();
  return (
    <>
      <clipPath id={id}>
        <rect x={left} y={top - above} width={right - left} height={bottom - top + above} />
      </clipPath>
      <g clipPath={`url(#${id})`}>{children}</g>
    </>
  );
}
