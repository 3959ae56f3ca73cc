/** A plain number with its unit, taken on Enter or on leaving; out of range gets a sentence. */

import { useId, useState, type ReactElement } from 'react';

export interface NumberFieldProps {
  readonly label: string;
  readonly unit: string;
  readonly value: number;
  readonly low: number;
  readonly high: number;
  readonly digits: number;
  readonly onChange: (value: number) => void;
}

export function NumberField(props: NumberFieldProps): ReactElement {
  const { label, unit, value, low, high, digits, onChange } = props;
  const [typed, setTyped] = useState<string | null>(null);
  const [complaint, setComplaint] = useState<string | null>(null);
  const id = useId();
  const shown = String(Number(value.toFixed(digits)));

  const take = (text: string): void => {
    const number = Number(text.trim().replace(',', '.'));
    if (text.trim() === '' || !Number.isFinite(number) || number < low || number > high) {
      setComplaint(`${label} must be a number from ${low} to ${high} ${unit}.`);
      return;
    }
    setComplaint(null);
    setTyped(null);
    if (number !== value) onChange(number);
  };

  return (
    <div className="field field-small">
      <label htmlFor={id}>
        {label} <span className="unit">{unit}</span>
      </label>
      <input
        id={id}
        type="text"
        inputMode="decimal"
        autoComplete="off"
        value={typed ?? shown}
        data-typing={typed !== null}
        aria-invalid={complaint !== null}
        aria-describedby={complaint === null ? undefined : `${id}-complaint`}
        onFocus={(event) => event.currentTarget.select()}
        onChange={(event) => setTyped(event.currentTarget.value)}
        onKeyDown={(event) => {
          if (event.key === 'Enter') take(event.currentTarget.value);
          if (event.key === 'Escape') {
            setTyped(null);
            setComplaint(null);
          }
        }}
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
