/** Names of the axial modes over their marks; one that would run into another takes the next line. */

import type { ReactElement } from 'react';
import type { ShellMode } from '../../../core/modes/shell-modes';
import styles from './chart.module.css';
import { modeName } from './mode-name';
import { usePlot } from './plot-area';
import { inRows, spreadLabels } from './spread-labels';

export interface AxialNamesProps {
  readonly modes: readonly ShellMode[];
  /** Base lines to choose from, nearest to the marks first. */
  readonly rows: readonly number[];
}

/** Width of a name with the space about it, px. */
const NAME_PX = 20;

export function AxialNames({ modes, rows }: AxialNamesProps): ReactElement {
  const { x, width, height } = usePlot();
  const axial = modes.filter((mode) => mode.kind === 'axial');
  const places = spreadLabels(
    axial.map(({ frequencyHz }) => ({ width: NAME_PX, places: inRows(x(frequencyHz), rows) })),
    { within: { left: 0, right: width, top: 0, bottom: height } },
  );
  return (
    <g>
      {axial.map(({ order }, n) => {
        const place = places[n];
        return place ? (
          <text
            key={order.join()}
            className={styles['mode-name']}
            x={place.x}
            y={place.y}
            textAnchor="middle"
          >
            {modeName(order)}
          </text>
        ) : null;
      })}
    </g>
  );
}
