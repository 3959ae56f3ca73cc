/** A plain number with its unit; out of range gets a sentence. */

import type { ReactElement } from 'react';
import { TypedField } from './TypedField';

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

  const take = (text: string): string | null => {
    const number = Number(text.trim().replace(',', '.'));
    if (text.trim() === '' || !Number.isFinite(number) || number < low || number > high) {
      return `${label} must be a number from ${low} to ${high} ${unit}.`;
    }
    onChange(number);
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
