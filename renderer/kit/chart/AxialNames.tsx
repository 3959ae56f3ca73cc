/** Names of the axial modes over their marks; one that would run into another takes the next line. */

import type { ReactElement } from 'react';
import type { ShellMode } from '../../../core/modes/shell-modes';
import { modeName } from './mode-name';

export interface AxialNamesProps {
  readonly modes: readonly ShellMode[];
  readonly x: (hz: number) => number;
  /** Base lines to choose from, nearest to the marks first. */
  readonly rows: readonly number[];
}

/** Half the width of a name, px. */
const HALF = 10;

export function AxialNames({ modes, x, rows }: AxialNamesProps): ReactElement {
  const ends = rows.map(() => -Infinity);
  return (
    <g>
      {modes
        .filter((mode) => mode.kind === 'axial')
        .map((mode) => {
          const at = x(mode.frequencyHz);
          const row = ends.findIndex((end) => at - HALF > end);
          const y = rows[row];
          if (y === undefined) return null;
          ends[row] = at + HALF;
          return (
            <text key={mode.order.join()} className="mode-name" x={at} y={y} textAnchor="middle">
              {modeName(mode.order)}
            </text>
          );
        })}
    </g>
  );
}
