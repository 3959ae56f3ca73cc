/** The figure on a dimension line: press it to type another. */

import { useRef, useState, type ReactElement } from 'react';
import { formatLength } from '../../core/quantity/length';
import { type Side, SIZE_LIMITS_M } from '../../core/room/project';
import { LengthField } from '../controls/LengthField';
import { useProject, useSession } from '../state/session';

export const SIDE_NAMES: Readonly<Record<Side, string>> = {
  width: 'Width',
  length: 'Length',
  height: 'Height',
};

export function DimensionFigure({
  side,
  marked,
}: {
  readonly side: Side;
  readonly marked: boolean;
}): ReactElement {
  const { size } = useProject().room;
  const units = useSession((session) => session.units);
  const change = useSession((session) => session.change);
  const [typing, setTyping] = useState(false);
  const typed = useRef(false);
  const close = (): void => {
    typed.current = true;
    setTyping(false);
  };
  const [lowM, highM] = SIZE_LIMITS_M[side];
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
          label={SIDE_NAMES[side]}
          valueM={size[side]}
          lowM={lowM}
          highM={highM}
          kind="room"
          onChange={(value, gesture, isDoubtful) => {
            change({ kind: 'size', size: { ...size, [side]: value } }, gesture);
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
      className={marked ? 'dimension-figure marked' : 'dimension-figure'}
      aria-label={`${SIDE_NAMES[side]} ${formatLength(size[side], units)}: type another`}
      onClick={() => setTyping(true)}
    >
      {formatLength(size[side], units)}
    </button>
  );
}
