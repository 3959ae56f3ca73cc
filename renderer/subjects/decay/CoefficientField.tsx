/** An absorption coefficient of one octave, which may be left empty. */

import type { ReactElement } from 'react';
import type { OctaveHz } from '../../../core/quantity/bands';
import { bandName } from '../../../core/quantity/bands';
import { bandMark } from '../../../core/quantity/bands';
import { MOST_ABSORPTION } from '../../../core/room/limits';
import { TypedField } from '../../kit/controls/TypedField';

export interface CoefficientFieldProps {
  readonly hz: OctaveHz;
  readonly value: number | undefined;
  readonly onChange: (value: number | undefined) => void;
}

export function CoefficientField({ hz, value, onChange }: CoefficientFieldProps): ReactElement {
  const name = bandName(hz);
  const take = (text: string): string | null => {
    const typed = text.trim().replace(',', '.');
    if (typed === '') {
      onChange(undefined);
      return null;
    }
    const number = Number(typed);
    if (!Number.isFinite(number)) {
      return `The coefficient at ${name} is a number from 0 to ${MOST_ABSORPTION}, such as 0.45. Leave it empty where there is no figure.`;
    }
    if (number < 0 || number > MOST_ABSORPTION) {
      return `The coefficient at ${name} can be 0 to ${MOST_ABSORPTION}. The nearest to what you typed is ${number < 0 ? 0 : MOST_ABSORPTION}.`;
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
          <span aria-hidden="true">{bandMark(hz)}</span>
          <span className="for-readers">Coefficient at {name}</span>
        </>
      }
      shown={value === undefined ? '' : String(value)}
      onTake={take}
    />
  );
}
