/**
 * A length as a builder types it. Enter or leaving the field takes it; what cannot be read or does not
 * fit stays in the field with a sentence beside it; arrow keys move by the carpenter's step.
 */

import { useId, useRef, useState, type KeyboardEvent, type ReactElement } from 'react';
import { carpenterStepM, formatLength, parseLength, snapLength } from '../../core/quantity/length';
import { useSession } from '../state/session';

export interface LengthFieldProps {
  readonly label: string;
  readonly valueM: number;
  readonly lowM: number;
  readonly highM: number;
  readonly onChange: (valueM: number, gesture: string | null) => void;
  readonly size?: 'large' | 'small';
  /** Shown instead of the label where the place is tight; the label still names the field. */
  readonly shortLabel?: string;
}

let focusCount = 0;

export function LengthField(props: LengthFieldProps): ReactElement {
  const { label, valueM, lowM, highM, onChange, size = 'small', shortLabel } = props;
  const units = useSession((session) => session.units);
  const [typed, setTyped] = useState<string | null>(null);
  const [complaint, setComplaint] = useState<string | null>(null);
  const gesture = useRef('');
  const id = useId();
  const shown = formatLength(valueM, units);

  const take = (text: string): boolean => {
    const parsed = parseLength(text, units);
    if (!parsed.ok) {
      setComplaint(parsed.sentence);
      return false;
    }
    if (parsed.metres < lowM || parsed.metres > highM) {
      const nearest = parsed.metres < lowM ? lowM : highM;
      setComplaint(
        `${label} can be ${formatLength(lowM, units)} to ${formatLength(highM, units)}. The nearest to what you typed is ${formatLength(nearest, units)}.`,
      );
      return false;
    }
    setComplaint(null);
    setTyped(null);
    if (text.trim() !== shown) onChange(parsed.metres, null);
    return true;
  };

  const step = (direction: 1 | -1, fine: boolean): void => {
    const stepM = carpenterStepM(units, fine);
    const next = snapLength(valueM + direction * stepM, stepM);
    if (next < lowM || next > highM) return;
    setTyped(null);
    setComplaint(null);
    onChange(next, gesture.current);
  };

  const onKeyDown = (event: KeyboardEvent<HTMLInputElement>): void => {
    if (event.key === 'Enter') take(event.currentTarget.value);
    if (event.key === 'Escape') {
      setTyped(null);
      setComplaint(null);
    }
    if (event.key === 'ArrowUp' || event.key === 'ArrowDown') {
      event.preventDefault();
      step(event.key === 'ArrowUp' ? 1 : -1, event.shiftKey);
    }
  };

  return (
    <div className={`field field-${size}`}>
      <label htmlFor={id}>
        {shortLabel === undefined ? (
          label
        ) : (
          <>
            <span aria-hidden="true">{shortLabel}</span>
            <span className="for-readers">{label}</span>
          </>
        )}
      </label>
      <input
        id={id}
        type="text"
        inputMode="text"
        autoComplete="off"
        spellCheck={false}
        value={typed ?? shown}
        data-typing={typed !== null}
        aria-invalid={complaint !== null}
        aria-describedby={complaint === null ? undefined : `${id}-complaint`}
        onFocus={(event) => {
          focusCount += 1;
          gesture.current = `field-${focusCount}`;
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
