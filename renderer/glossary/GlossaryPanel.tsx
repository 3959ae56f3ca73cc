/** All words of the trade with their explanations, to be searched. */

import { useEffect, useRef, useState, type ReactElement } from 'react';
import { useGlossary } from './glossary-store';
import { CHAPTERS, matchesTerm, TERMS, termTitle, type TermId } from './terms';

export function GlossaryPanel(): ReactElement | null {
  const open = useGlossary((glossary) => glossary.open);
  return open ? <Panel /> : null;
}

function Panel(): ReactElement {
  const { at, close } = useGlossary();
  const [query, setQuery] = useState('');
  const dialog = useRef<HTMLDialogElement>(null);
  useEffect(() => {
    const element = dialog.current;
    if (!element) return;
    if (!element.open) element.showModal();
    if (at !== null) element.querySelector(`[data-term="${at}"]`)?.scrollIntoView();
  }, [at]);
  const chapters = CHAPTERS.map(({ title, ids }) => ({
    title,
    ids: ids.filter((id) => matchesTerm(TERMS[id], query)),
  })).filter(({ ids }) => ids.length > 0);
  return (
    <dialog
      ref={dialog}
      className="glossary"
      aria-label="Glossary"
      onClose={close}
      onClick={(event) => {
        // A press on the backdrop is one on the dialog itself.
        if (event.target === dialog.current) dialog.current.close();
      }}
    >
      <div className="glossary-page">
        <div className="glossary-head">
          <h2>Glossary</h2>
          <label>
            Find a word
            <input
              type="text"
              role="searchbox"
              value={query}
              onChange={(event) => setQuery(event.currentTarget.value)}
            />
          </label>
          <button type="button" onClick={() => dialog.current?.close()}>
            Close
          </button>
        </div>
        <div className="glossary-words" tabIndex={0} role="region" aria-label="Words">
          {chapters.length === 0 ? <p className="hint">No word has that in its text.</p> : null}
          {chapters.map(({ title, ids }) => (
            <section key={title} aria-label={title}>
              <h3>{title}</h3>
              <dl>
                {ids.map((id) => (
                  <Entry key={id} id={id} chosen={id === at} />
                ))}
              </dl>
            </section>
          ))}
        </div>
      </div>
    </dialog>
  );
}

function Entry({ id, chosen }: { readonly id: TermId; readonly chosen: boolean }): ReactElement {
  const text = TERMS[id];
  return (
    <div data-term={id} className={chosen ? 'chosen' : undefined}>
      <dt>{termTitle(text)}</dt>
      <dd>
        {text.says}{' '}
        {text.good === undefined ? null : (
          <>
            <b>What is good:</b> {text.good}{' '}
          </>
        )}
        <small>Source: {text.source}.</small>
      </dd>
    </div>
  );
}
