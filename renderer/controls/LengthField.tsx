/** A length as a builder types it; arrow keys move by the carpenter's step. */

import { useRef, type ReactElement } from 'react';
import { carpenterStepM, formatLength, parseLength, snapLength } from '../../core/quantity/length';
import { useSession } from '../state/session';
import { TypedField } from './TypedField';

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
  const gesture = useRef('');

  const take = (text: string): string | null => {
    const parsed = parseLength(text, units);
    if (!parsed.ok) return parsed.sentence;
    if (parsed.metres < lowM || parsed.metres > highM) {
      const nearest = parsed.metres < lowM ? lowM : highM;
      return `${label} can be ${formatLength(lowM, units)} to ${formatLength(highM, units)}. The nearest to what you typed is ${formatLength(nearest, units)}.`;
    }
    onChange(parsed.metres, null);
    return null;
  };

  const step = (direction: 1 | -1, fine: boolean): void => {
    const stepM = carpenterStepM(units, fine);
    const next = snapLength(valueM + direction * stepM, stepM);
    if (next >= lowM && next <= highM) onChange(next, gesture.current);
  };

  return (
    <TypedField
      className={`field-${size}`}
      inputMode="text"
      shown={formatLength(valueM, units)}
      label={
        shortLabel === undefined ? (
          label
        ) : (
          <>
            <span aria-hidden="true">{shortLabel}</span>
            <span className="for-readers">{label}</span>
          </>
        )
      }
      onTake={take}
      onStep={step}
      onFocus={() => {
        focusCount += 1;
        gesture.current = `field-${focusCount}`;
      }}
    />
  );
}
