/**
 * A word of the trade that explains itself where it stands: a press, or Enter on it, opens a note with a
 * plain sentence, what is good, and the source. Not for use inside a button, a summary or a label.
 */

import { useId, useLayoutEffect, useRef, useState, type ReactElement, type ReactNode } from 'react';
import { useGlossary } from './glossary-store';
import { placeNote } from './place-note';
import { TERMS, termTitle, type TermId } from './terms';

export interface TermProps {
  readonly id: TermId;
  /** As it reads in its place; the plain words where it is left out. */
  readonly children?: ReactNode;
}

export function Term({ id, children }: TermProps): ReactElement {
  const [open, setOpen] = useState(false);
  const button = useRef<HTMLButtonElement>(null);
  const noteId = useId();
  return (
    <span className="term">
      <button
        ref={button}
        type="button"
        className="term-word"
        aria-expanded={open}
        aria-haspopup="dialog"
        aria-controls={open ? noteId : undefined}
        onClick={() => setOpen(true)}
      >
        {children ?? TERMS[id].plain}
      </button>
      {open ? (
        <TermNote
          id={id}
          noteId={noteId}
          anchor={() => button.current}
          onClose={() => setOpen(false)}
        />
      ) : null}
    </span>
  );
}

interface TermNoteProps {
  readonly id: TermId;
  readonly noteId: string;
  readonly anchor: () => HTMLElement | null;
  readonly onClose: () => void;
}

/** The note beside the word; it goes away by Escape or a press anywhere else. */
function TermNote({ id, noteId, anchor, onClose }: TermNoteProps): ReactElement {
  const note = useRef<HTMLSpanElement>(null);
  const close = useRef(onClose);
  const showGlossary = useGlossary((glossary) => glossary.show);
  const { says, good, source } = TERMS[id];
  useLayoutEffect(() => {
    close.current = onClose;
  });
  useLayoutEffect(() => {
    const element = note.current;
    const word = anchor();
    if (!element || !word) return;
    element.showPopover();
    placeNote(element, word.getBoundingClientRect());
    element.focus({ preventScroll: true });
    const onToggle = (event: Event): void => {
      if ((event as ToggleEvent).newState === 'closed') close.current();
    };
    element.addEventListener('toggle', onToggle);
    return () => element.removeEventListener('toggle', onToggle);
    // Once: the note is made anew whenever it opens.
    // eslint-disable-next-line react-hooks/exhaustive-deps
  }, []);
  return (
    <span
      ref={note}
      id={noteId}
      popover="auto"
      className="term-note"
      role="dialog"
      tabIndex={-1}
      aria-labelledby={`${noteId}-title`}
      aria-describedby={`${noteId}-text`}
    >
      <span className="term-title" id={`${noteId}-title`}>
        {termTitle(TERMS[id])}
      </span>
      <span className="term-text" id={`${noteId}-text`}>
        <span>{says}</span>
        {good === undefined ? null : (
          <span>
            <b>What is good:</b> {good}
          </span>
        )}
        <small>Source: {source}.</small>
      </span>
      <button
        type="button"
        className="plain"
        onClick={() => {
          note.current?.hidePopover();
          showGlossary(id);
        }}
      >
        All words
      </button>
    </span>
  );
}
