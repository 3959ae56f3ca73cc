/** A length as a builder types it; arrow keys move by the carpenter's step. */

import { useRef, type ReactElement } from 'react';
import { carpenterStepM, formatLength, parseLength, snapLength } from '../../core/quantity/length';
import { startBursts, type Burst } from '../state/burst';
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

/** A limit is shown to the nearest sixteenth of an inch; typed as shown it is taken as the limit. */
const SHOWN_M = 0.0254 / 32;

export function LengthField(props: LengthFieldProps): ReactElement {
  const { label, valueM, lowM, highM, onChange, size = 'small', shortLabel } = props;
  const units = useSession((session) => session.units);
  const bursts = useRef<Burst | null>(null);

  const take = (text: string): string | null => {
    const parsed = parseLength(text, units);
    if (!parsed.ok) return parsed.sentence;
    const within = Math.min(Math.max(parsed.metres, lowM), highM);
    if (Math.abs(parsed.metres - within) > SHOWN_M) {
      const nearest = parsed.metres < lowM ? lowM : highM;
      return `${label} can be ${formatLength(lowM, units)} to ${formatLength(highM, units)}. The nearest to what you typed is ${formatLength(nearest, units)}.`;
    }
    onChange(within, null);
    return null;
  };

  const step = (direction: 1 | -1, fine: boolean): void => {
    const stepM = carpenterStepM(units, fine);
    const next = snapLength(valueM + direction * stepM, stepM);
    bursts.current ??= startBursts();
    if (next >= lowM && next <= highM) onChange(next, bursts.current.press());
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
    />
  );
}
