/** Upright lines of a chart: where the hand or the walk is, and frequencies that have a name. */

import type { ReactElement } from 'react';
import styles from './chart.module.css';
import { usePlot } from './plot-area';

/** The line at what is pointed at, walked to or chosen; `at` in the quantity of the x axis. */
export function Cursor({ at }: { readonly at: number }): ReactElement {
  const { x, top, bottom } = usePlot();
  return <line className={styles['cursor-line']} x1={x(at)} x2={x(at)} y1={top} y2={bottom} />;
}

export interface NamedLineProps {
  readonly at: number;
  readonly text: string;
  /** Beside which side of the line its name stands. */
  readonly side: 'left' | 'right';
  /** Reach over the upper edge of the plot, px. */
  readonly above?: number;
}

/** Base line of the name, px from the top of the picture. */
const NAME_PX = 13;
const BESIDE_PX = 5;

/** A dashed line with its name over the plot. */
export function NamedLine({ at, text, side, above = 0 }: NamedLineProps): ReactElement {
  const { x, top, bottom } = usePlot();
  const px = x(at);
  return (
    <g>
      <line className={styles['named-line']} x1={px} x2={px} y1={top - above} y2={bottom} />
      <text
        className="plot-note"
        x={side === 'left' ? px - BESIDE_PX : px + BESIDE_PX}
        y={NAME_PX}
        textAnchor={side === 'left' ? 'end' : 'start'}
      >
        {text}
      </text>
    </g>
  );
}
