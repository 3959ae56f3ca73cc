/** A length as a builder types it; arrow keys move by the carpenter's step. */

import type { ReactElement } from 'react';
import { carpenterStepM, snapLength } from '../../../core/quantity/carpenter-step';
import { formatLength, type LengthKind } from '../../../core/quantity/length';
import { measuresIn } from '../../../core/quantity/measures';
import { useSession } from '../../state/session';
import { useKeyGesture } from './use-key-gesture';
import { typedLength } from './typed-length';
import { TypedField, type Remark } from './TypedField';
import type { Gesture } from '../../state/gesture';

export interface LengthFieldProps {
  readonly label: string;
  readonly valueM: number;
  readonly lowM: number;
  readonly highM: number;
  /** What is measured: a bare number is feet for the room itself, inches for any part of it. */
  readonly kind?: Exclude<LengthKind, 'fine'>;
  /** `isDoubtful` where the field asks whether the number was meant in another unit. */
  readonly onChange: (valueM: number, gesture: Gesture | null, isDoubtful: boolean) => void;
  readonly size?: 'large' | 'small';
  /** Shown instead of the label where the place is tight; the label still names the field. */
  readonly shortLabel?: string;
}

export function LengthField(props: LengthFieldProps): ReactElement {
  const { label, valueM, lowM, highM, onChange, size = 'small', shortLabel } = props;
  const { kind = 'part' } = props;
  const units = useSession((session) => session.units);
  const keys = useKeyGesture();

  const take = (text: string): Remark | null => {
    const typed = typedLength(text, { label, lowM, highM, units, kind });
    const withReading = (
      sentence: string,
      other: { readonly text: string; readonly metres: number } | undefined,
    ): Remark => ({
      sentence,
      taken: typed.ok,
      ...(other
        ? { other: { text: other.text, take: () => onChange(other.metres, null, false) } }
        : {}),
    });
    if (!typed.ok) return withReading(typed.sentence, typed.other);
    onChange(typed.metres, null, typed.doubt !== undefined);
    return typed.doubt ? withReading(typed.doubt.sentence, typed.doubt.other) : null;
  };

  const step = (direction: 1 | -1, fine: boolean): void => {
    const stepM = carpenterStepM(units, fine);
    const next = snapLength(valueM + direction * stepM, stepM);
    if (next >= lowM && next <= highM) onChange(next, keys.press(), false);
  };

  return (
    <TypedField
      className={`field-${size}`}
      inputMode="text"
      shown={
        kind === 'part' && units === 'imperial'
          ? measuresIn(units).part(valueM)
          : formatLength(valueM, units)
      }
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
      onLeave={keys.end}
    />
  );
}
