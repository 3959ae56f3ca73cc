/** A figure with a box that a picture is drawn in, at the true size of the box. */

import type { ReactElement, ReactNode, RefObject } from 'react';
import { Figure, type FigureProps } from '../Figure';
import styles from './chart.module.css';

export interface ChartProps extends FigureProps {
  /** From `usePlotArea`. */
  readonly box: RefObject<HTMLDivElement | null>;
  readonly boxClass?: string;
  /** Stands under the picture. */
  readonly foot?: ReactNode;
}

export function Chart({ box, boxClass, foot, children, ...figure }: ChartProps): ReactElement {
  return (
    <Figure {...figure}>
      <div
        ref={box}
        className={boxClass === undefined ? styles.box : `${styles.box} ${boxClass}`}
        data-part="chart"
      >
        {children}
      </div>
      {foot}
    </Figure>
  );
}
