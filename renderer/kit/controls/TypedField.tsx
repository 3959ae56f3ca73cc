/**
 * A field that is typed into and taken on Enter or on leaving. What cannot be taken stays in the field
 * with a sentence beside it; Escape brings back what was. Where the text can be read otherwise, a press
 * takes that reading. The sentence lies over the pane, so that nothing moves from under the hand.
 */

import {
  useId,
  useLayoutEffect,
  useRef,
  useState,
  type KeyboardEvent,
  type ReactElement,
  type ReactNode,
} from 'react';

/** What there is to say of a typed text. */
export interface Remark {
  readonly sentence: string;
  /** True where the text was taken all the same. */
  readonly taken: boolean;
  /** Another reading of it, and how to take that. */
  readonly other?: { readonly text: string; readonly take: () => void };
}

export interface TypedFieldProps {
  readonly label: ReactNode;
  readonly className: string;
  /** The present value as text. */
  readonly shown: string;
  readonly inputMode: 'text' | 'decimal';
  /** Take what was typed; a sentence where it cannot be taken, a remark where there is more to say. */
  readonly onTake: (text: string) => string | Remark | null;
  readonly onFocus?: () => void;
  /** The focus has left it, and what was typed is taken. */
  readonly onLeave?: () => void;
  /** Up or down arrow; Shift for finer. */
  readonly onStep?: (direction: 1 | -1, fine: boolean) => void;
}

export function TypedField(props: TypedFieldProps): ReactElement {
  const { label, className, shown, inputMode, onTake, onFocus, onLeave, onStep } = props;
  const [typed, setTyped] = useState<string | null>(null);
  const [remark, setRemark] = useState<Remark | null>(null);
  const id = useId();

  const reset = (): void => {
    setTyped(null);
    setRemark(null);
  };

  const take = (text: string): void => {
    const said = text.trim() === shown ? null : onTake(text);
    const next = typeof said === 'string' ? { sentence: said, taken: false } : said;
    setRemark(next);
    if (next === null || next.taken) setTyped(null);
  };

  const onKeyDown = (event: KeyboardEvent<HTMLInputElement>): void => {
    if (event.key === 'Enter') {
      // The key is used up here: whatever gets the focus next must not take it as a press.
      event.preventDefault();
      take(event.currentTarget.value);
    }
    if (event.key === 'Escape') reset();
    if (onStep && (event.key === 'ArrowUp' || event.key === 'ArrowDown')) {
      event.preventDefault();
      reset();
      onStep(event.key === 'ArrowUp' ? 1 : -1, event.shiftKey);
    }
  };

  return (
    <div className={`field ${className}`}>
      <label htmlFor={id}>{label}</label>
      <input
        id={id}
        type="text"
        inputMode={inputMode}
        autoComplete="off"
        spellCheck={false}
        value={typed ?? shown}
        data-typing={typed !== null}
        aria-invalid={remark !== null && !remark.taken}
        aria-describedby={remark === null ? undefined : `${id}-remark`}
        onFocus={(event) => {
          onFocus?.();
          event.currentTarget.select();
        }}
        onChange={(event) => {
          setTyped(event.currentTarget.value);
          if (remark?.taken === true) setRemark(null);
        }}
        onKeyDown={onKeyDown}
        onBlur={(event) => {
          if (typed !== null) take(event.currentTarget.value);
          onLeave?.();
        }}
      />
      {remark === null ? null : <RemarkBox id={`${id}-remark`} remark={remark} onDone={reset} />}
    </div>
  );
}

interface RemarkBoxProps {
  readonly id: string;
  readonly remark: Remark;
  readonly onDone: () => void;
}

/** Over the field, or under it where the pane has no room above. */
function RemarkBox({ id, remark, onDone }: RemarkBoxProps): ReactElement {
  const box = useRef<HTMLDivElement>(null);
  const [below, setBelow] = useState(false);
  useLayoutEffect(() => {
    const element = box.current;
    const field = element?.parentElement;
    if (!element || !field) return;
    const top = paneOf(field).getBoundingClientRect().top;
    setBelow(field.getBoundingClientRect().top - element.offsetHeight < top);
  }, [remark]);
  return (
    <div ref={box} className={below ? 'remark remark-below' : 'remark'} data-taken={remark.taken}>
      <p className="complaint" id={id} role={remark.taken ? 'status' : 'alert'}>
        {remark.sentence}
      </p>
      {remark.other ? (
        <button
          type="button"
          className="reading"
          onClick={() => {
            remark.other?.take();
            onDone();
          }}
        >
          {remark.taken ? `Was it ${remark.other.text}?` : `Take ${remark.other.text}`}
        </button>
      ) : null}
      {remark.taken ? (
        <button type="button" className="forget" aria-label="Put this away" onClick={onDone}>
          ×
        </button>
      ) : null}
    </div>
  );
}

/** The nearest pane that scrolls, else the page. */
function paneOf(element: HTMLElement): HTMLElement {
  for (let at = element.parentElement; at; at = at.parentElement) {
    if (/auto|scroll|hidden/.test(getComputedStyle(at).overflowY)) return at;
  }
  return document.documentElement;
}
