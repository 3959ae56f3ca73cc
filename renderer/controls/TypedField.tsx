/**
 * A field that is typed into and taken on Enter or on leaving. What cannot be taken stays in the field
 * with a sentence beside it; Escape brings back what was.
 */

import { useId, useState, type KeyboardEvent, type ReactElement, type ReactNode } from 'react';

export interface TypedFieldProps {
  readonly label: ReactNode;
  readonly className: string;
  /** The present value as text. */
  readonly shown: string;
  readonly inputMode: 'text' | 'decimal';
  /** Take what was typed; a sentence where it cannot be taken. */
  readonly onTake: (text: string) => string | null;
  readonly onFocus?: () => void;
  /** Up or down arrow; Shift for finer. */
  readonly onStep?: (direction: 1 | -1, fine: boolean) => void;
}

export function TypedField(props: TypedFieldProps): ReactElement {
  const { label, className, shown, inputMode, onTake, onFocus, onStep } = props;
  const [typed, setTyped] = useState<string | null>(null);
  const [complaint, setComplaint] = useState<string | null>(null);
  const id = useId();

  const reset = (): void => {
    setTyped(null);
    setComplaint(null);
  };

  const take = (text: string): void => {
    const sentence = text.trim() === shown ? null : onTake(text);
    setComplaint(sentence);
    if (sentence === null) setTyped(null);
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
        aria-invalid={complaint !== null}
        aria-describedby={complaint === null ? undefined : `${id}-complaint`}
        onFocus={(event) => {
          onFocus?.();
          event.currentTarget.select();
        }}
        onChange={(event) => setTyped(event.currentTarget.value)}
        onKeyDown={onKeyDown}
        onBlur={(event) => {
          if (typed !== null) take(event.currentTarget.value);
        }}
      />
      {complaint === null ? null : (
        <p className="complaint" id={`${id}-complaint`} role="alert">
          {complaint}
        </p>
      )}
    </div>
  );
}
