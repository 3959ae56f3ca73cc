/**
 * A word that explains itself where it stands: a press, or Enter on it, opens a note beside it. Not for
 * use inside a button, a summary or a label. The platform places the note by its word, turns it over
 * where there is no room, and closes it on Escape or a press anywhere else.
 */

import {
  useId,
  useLayoutEffect,
  useRef,
  useState,
  type ReactElement,
  type ReactNode,
  type RefObject,
} from 'react';
import styles from './Note.module.css';

export interface NoteProps {
  /** As it reads in its place. */
  readonly word: ReactNode;
  /** Over the text; without it the word itself names the note. */
  readonly title?: ReactNode;
  readonly children: ReactNode;
  /** Under the text; `close` puts the note away. */
  readonly foot?: (close: () => void) => ReactNode;
}

export function Note({ word, title, children, foot }: NoteProps): ReactElement {
  const [open, setOpen] = useState(false);
  const button = useRef<HTMLButtonElement>(null);
  const id = useId();
  return (
    <span className={styles.place}>
      <button
        ref={button}
        id={`${id}-word`}
        type="button"
        className={styles.word}
        aria-expanded={open}
        aria-haspopup="dialog"
        aria-controls={open ? id : undefined}
        onClick={(event) => {
          event.stopPropagation();
          setOpen(true);
        }}
      >
        {word}
      </button>
      {open ? (
        <OpenNote id={id} title={title} word={button} foot={foot} onClose={() => setOpen(false)}>
          {children}
        </OpenNote>
      ) : null}
    </span>
  );
}

/** A figure's source, or what is meant by a word, in a sentence. */
export function Source({
  of,
  children,
}: {
  readonly of: ReactNode;
  readonly children: string;
}): ReactElement {
  return <Note word={of}>{children}</Note>;
}

interface OpenNoteProps {
  readonly id: string;
  readonly title: ReactNode;
  readonly word: RefObject<HTMLButtonElement | null>;
  readonly foot: NoteProps['foot'];
  readonly onClose: () => void;
  readonly children: ReactNode;
}

function OpenNote({ id, title, word, foot, onClose, children }: OpenNoteProps): ReactElement {
  const note = useRef<HTMLSpanElement>(null);
  const close = useRef(onClose);
  useLayoutEffect(() => {
    close.current = onClose;
  });
  useLayoutEffect(() => {
    const element = note.current;
    const source = word.current;
    if (!element || !source) return;
    // What it is shown from is what it stands beside.
    element.showPopover({ source });
    element.focus({ preventScroll: true });
    const onToggle = (event: Event): void => {
      if ((event as ToggleEvent).newState === 'closed') close.current();
    };
    element.addEventListener('toggle', onToggle);
    return () => element.removeEventListener('toggle', onToggle);
  }, [word]);
  return (
    <span
      ref={note}
      id={id}
      popover="auto"
      className={styles.note}
      role="dialog"
      tabIndex={-1}
      aria-labelledby={title === undefined ? `${id}-word` : `${id}-title`}
      aria-describedby={`${id}-text`}
      onClick={(event) => event.stopPropagation()}
    >
      {title === undefined ? null : (
        <span className={styles.title} id={`${id}-title`}>
          {title}
        </span>
      )}
      <span className={styles.text} id={`${id}-text`}>
        {children}
      </span>
      {foot?.(() => note.current?.hidePopover())}
    </span>
  );
}
