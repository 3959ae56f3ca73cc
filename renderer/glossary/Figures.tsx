/** A few figures with their names; a press on a name explains the word of the trade, or tells the source. */

import type { ReactElement } from 'react';
import { Source } from '../kit/Note';
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
        <div key={name}>
          <dt>
            {term === undefined ? (
              <Source of={name}>{source}</Source>
            ) : (
              <Term id={term}>{name}</Term>
            )}
          </dt>
          <dd>
            {value}
            <span className="for-readers">, {source}</span>
          </dd>
        </div>
      ))}
    </dl>
  );
}
