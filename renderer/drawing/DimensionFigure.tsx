/** The figure on a dimension line: press it to type another. */

import { useState, type ReactElement } from 'react';
import { formatLength } from '../../core/quantity/length';
import { SIZE_LIMITS_M } from '../../core/room/project';
import { LengthField } from '../controls/LengthField';
import { useProject, useSession } from '../state/session';
import type { Side } from './dimension-lines';

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
  const [lowM, highM] = SIZE_LIMITS_M[side];
  if (typing) {
    return (
      <div
        className="dimension-typing"
        onBlur={(event) => {
          const inside = event.currentTarget.contains(event.relatedTarget);
          const broken = event.currentTarget.querySelector('[aria-invalid="true"]');
          if (!inside && !broken) setTyping(false);
        }}
        onKeyDown={(event) => {
          if (event.key === 'Escape') setTyping(false);
        }}
        ref={(element) => element?.querySelector('input')?.focus()}
      >
        <LengthField
          label={SIDE_NAMES[side]}
          valueM={size[side]}
          lowM={lowM}
          highM={highM}
          onChange={(value, gesture) => {
            change({ kind: 'size', size: { ...size, [side]: value } }, gesture);
            if (gesture === null) setTyping(false);
          }}
        />
      </div>
    );
  }
  return (
    <button
      type="button"
      className={marked ? 'dimension-figure marked' : 'dimension-figure'}
      aria-label={`${SIDE_NAMES[side]} ${formatLength(size[side], units)}: type another`}
      onClick={() => setTyping(true)}
    >
      {formatLength(size[side], units)}
    </button>
  );
}
