/** A few figures with their names; the method and source show on hover and to a screen reader. */

import type { ReactElement } from 'react';

export interface FiguresProps {
  /** Name, figure with unit, method or source. */
  readonly rows: readonly (readonly [string, string, string])[];
}

export function Figures({ rows }: FiguresProps): ReactElement {
  return (
    <dl className="figures">
      {rows.map(([name, value, source]) => (
        <div key={name} title={source}>
          <dt>{name}</dt>
          <dd>
            {value}
            <span className="for-readers">, {source}</span>
          </dd>
        </div>
      ))}
    </dl>
  );
}
