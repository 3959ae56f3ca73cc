/** A few figures with their names; a name that is a word of the trade explains itself on a press. */

import type { ReactElement } from 'react';
import { Term } from './Term';
import type { TermId } from './terms';

export interface FiguresProps {
  /** Name, figure with unit, method or source, and the word that explains it. */
  readonly rows: readonly (readonly [string, string, string, TermId?])[];
}

export function Figures({ rows }: FiguresProps): ReactElement {
  return (
    <dl className="figures">
      {rows.map(([name, value, source, term]) => (
        <div key={name} title={term === undefined ? source : undefined}>
          <dt>{term === undefined ? name : <Term id={term}>{name}</Term>}</dt>
          <dd>
            {value}
            <span className="for-readers">, {source}</span>
          </dd>
        </div>
      ))}
    </dl>
  );
}
