/** A figure in the drawing: press it to type another. */

import { useRef, useState, type ReactElement } from 'react';
import { formatLength } from '../../core/quantity/length';
import { LengthField, type LengthFieldProps } from '../kit/controls/LengthField';
import { useSession } from '../state/session';
import type { Gesture } from '../state/gesture';

export interface TypedFigureProps extends Pick<
  LengthFieldProps,
  'label' | 'valueM' | 'lowM' | 'highM' | 'kind'
> {
  readonly className: string;
  readonly onChange: (valueM: number, gesture: Gesture | null) => void;
}

export function TypedFigure(props: TypedFigureProps): ReactElement {
  const { label, valueM, lowM, highM, kind = 'part', className, onChange } = props;
  const units = useSession((session) => session.units);
  const [typing, setTyping] = useState(false);
  const typed = useRef(false);
  const close = (): void => {
    typed.current = true;
    setTyping(false);
  };
  if (typing) {
    return (
      <div
        className="dimension-typing"
        onBlur={(event) => {
          if (!event.currentTarget.contains(event.relatedTarget)) setTyping(false);
        }}
        onKeyDown={(event) => {
          if (event.key === 'Escape') close();
        }}
        ref={(element) => element?.querySelector('input')?.focus()}
      >
        <LengthField
          label={label}
          valueM={valueM}
          lowM={lowM}
          highM={highM}
          kind={kind}
          onChange={(value, gesture, isDoubtful) => {
            onChange(value, gesture);
            // A field that asks which unit was meant stays open for the answer.
            if (gesture === null && !isDoubtful) close();
          }}
        />
      </div>
    );
  }
  return (
    <button
      type="button"
      // After typing, the keyboard goes on from the figure and not from the top of the page.
      ref={(element) => {
        if (typed.current) element?.focus();
        typed.current = false;
      }}
      className={className}
      aria-label={`${label} ${formatLength(valueM, units)}: type another`}
      onClick={() => setTyping(true)}
    >
      {formatLength(valueM, units)}
    </button>
  );
}
