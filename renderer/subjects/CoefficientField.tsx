/** An absorption coefficient of one octave, which may be left empty. */

import type { ReactElement } from 'react';
import type { OctaveHz } from '../../core/quantity/bands';
import { TypedField } from '../controls/TypedField';

/** What a room file takes: raw test values exceed 1 where a sample absorbs at its edges (ISO 354). */
const MOST = 1.25;

export interface CoefficientFieldProps {
  readonly hz: OctaveHz;
  readonly value: number | undefined;
  readonly onChange: (value: number | undefined) => void;
}

export function CoefficientField({ hz, value, onChange }: CoefficientFieldProps): ReactElement {
  const name = hz >= 1000 ? `${hz / 1000} kHz` : `${hz} Hz`;
  const take = (text: string): string | null => {
    const typed = text.trim().replace(',', '.');
    if (typed === '') {
      onChange(undefined);
      return null;
    }
    const number = Number(typed);
    if (!Number.isFinite(number)) {
      return `The coefficient at ${name} is a number from 0 to ${MOST}, such as 0.45. Leave it empty where there is no figure.`;
    }
    if (number < 0 || number > MOST) {
      return `The coefficient at ${name} can be 0 to ${MOST}. The nearest to what you typed is ${number < 0 ? 0 : MOST}.`;
    }
    onChange(number);
    return null;
  };
  return (
    <TypedField
      className="field-small"
      inputMode="decimal"
      label={
        <>
          <span aria-hidden="true">{hz >= 1000 ? `${hz / 1000}k` : hz}</span>
          <span className="for-readers">Coefficient at {name}</span>
        </>
      }
      shown={value === undefined ? '' : String(value)}
      onTake={take}
    />
  );
}
