/** A plain number with its unit; out of range gets a sentence. */

import type { ReactElement } from 'react';
import { typedNumber, type NumberRange } from './typed-number';
import { TypedField } from './TypedField';

export interface NumberFieldProps extends NumberRange {
  readonly value: number;
  readonly digits: number;
  readonly onChange: (value: number) => void;
}

export function NumberField(props: NumberFieldProps): ReactElement {
  const { label, unit, value, digits, onChange } = props;

  const take = (text: string): string | null => {
    const typed = typedNumber(text, props);
    if (!typed.ok) return typed.sentence;
    onChange(typed.value);
    return null;
  };

  return (
    <TypedField
      className="field-small"
      inputMode="decimal"
      shown={String(Number(value.toFixed(digits)))}
      label={
        <>
          {label} <span className="unit">{unit}</span>
        </>
      }
      onTake={take}
    />
  );
}
