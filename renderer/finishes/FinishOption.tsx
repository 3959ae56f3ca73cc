/** One finish of the list: name, how it is built, what it absorbs at a glance, what it does to the target. */

import type { ReactElement } from 'react';
import { measuresIn } from '../../core/quantity/measures';
import { bandName } from '../../core/quantity/bands';
import { absorptionAt } from '../../core/room/finishes';
import { mountingText, takesText } from '../../core/room/mounting';
import { useSession } from '../state/session';
import { effectText, madeFor, type FinishRow, type FinishSpot } from './finish-list';

export interface FinishOptionProps {
  readonly row: FinishRow;
  readonly id: string;
  readonly spot: FinishSpot;
  /** Seconds outside the target as the room is. */
  readonly nowS: number;
  readonly active: boolean;
  /** The finish that is on now. */
  readonly present: boolean;
  readonly onLook: () => void;
  readonly onChoose: () => void;
}

export const GLANCE_HZ = [125, 500, 2000] as const;

export function FinishOption(props: FinishOptionProps): ReactElement {
  const { row, id, spot, nowS, active, present, onLook, onChoose } = props;
  const measures = measuresIn(useSession((session) => session.units));
  const { finish, name, effect } = row;
  const face = spot.kind === 'solid' ? 'front' : spot.face;
  const taken = takesText(finish, face, measures);
  const other = madeFor(finish, spot);
  return (
    <div
      id={id}
      role="option"
      className={`finish-option${active ? ' active' : ''}`}
      aria-selected={active}
      onPointerMove={active ? undefined : onLook}
      onClick={onChoose}
    >
      <span className="finish-name">
        {name}
        {present ? <b> (as it is now)</b> : null}
        <small>
          {[mountingText(finish, measures), other].filter((text) => text !== null).join('; ')}
          {taken === null ? null : <b>; {taken}</b>}
        </small>
      </span>
      <Glance row={row} />
      <span className="finish-effect" data-helps={(effect?.nearerS ?? 0) >= 0.005}>
        {effectText(effect, nowS)}
      </span>
    </div>
  );
}

/** Three small bars for 125 Hz, 500 Hz and 2 kHz; in words for a screen reader. */
function Glance({ row: { finish } }: { readonly row: FinishRow }): ReactElement {
  const values = GLANCE_HZ.map((hz) => absorptionAt(finish, hz));
  const words = GLANCE_HZ.map(
    (hz, i) => `${bandName(hz)} ${values[i]?.toFixed(2) ?? 'no figure'}`,
  ).join(', ');
  return (
    <span className="finish-glance">
      <span className="for-readers">absorbs {words}</span>
      {GLANCE_HZ.map((hz, i) => {
        const value = values[i] ?? null;
        return (
          <span key={hz} aria-hidden="true">
            <svg width="26" height="22" viewBox="0 0 26 22">
              <rect className="glance-whole" x="0.5" y="0.5" width="25" height="21" />
              <rect
                className="glance-part"
                x="1"
                width="24"
                y={21 - 20 * Math.min(1, value ?? 0)}
                height={20 * Math.min(1, value ?? 0)}
              />
            </svg>
            <small>{value === null ? '–' : value.toFixed(2)}</small>
          </span>
        );
      })}
    </span>
  );
}
