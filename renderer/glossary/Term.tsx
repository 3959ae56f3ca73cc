/** A word of the trade that explains itself where it stands: what it is, what is good, and the source. */

import type { ReactElement, ReactNode } from 'react';
import { Note } from '../kit/Note';
import { useGlossary } from './glossary-store';
import { TERMS, termTitle, type TermId } from './terms';

export interface TermProps {
  readonly id: TermId;
  /** As it reads in its place; the plain words where it is left out. */
  readonly children?: ReactNode;
}

export function Term({ id, children }: TermProps): ReactElement {
  const showGlossary = useGlossary((glossary) => glossary.show);
  const { plain, says, good, source } = TERMS[id];
  return (
    <Note
      word={children ?? plain}
      title={termTitle(TERMS[id])}
      foot={(close) => (
        <button
          type="button"
          className="plain"
          onClick={() => {
            close();
            showGlossary(id);
          }}
        >
          All words
        </button>
      )}
    >
      <span>{says}</span>
      {good === undefined ? null : (
        <span>
          <b>What is good:</b> {good}
        </span>
      )}
      <small>Source: {source}.</small>
    </Note>
  );
}
