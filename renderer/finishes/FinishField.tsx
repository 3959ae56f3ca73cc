/** A finish as a field: what is chosen now, with its mounting; a press opens the chooser. */

import { useId, useState, type ReactElement } from 'react';
import { measuresIn } from '../../core/quantity/measures';
import { finishLookup, finishName } from '../../core/room/finishes';
import { mountingText, takesText } from '../../core/room/mounting';
import { useProject, useSession } from '../state/session';
import { FinishDialog } from './FinishDialog';
import type { FinishSpot } from './finish-list';

export interface FinishFieldProps {
  readonly label: string;
  /** Of what, for the chooser's heading: `the left wall`. */
  readonly of: string;
  readonly value: string;
  readonly spot: FinishSpot;
  readonly onChange: (id: string) => void;
}

export function FinishField(props: FinishFieldProps): ReactElement {
  const { label, of, value, spot, onChange } = props;
  const [open, setOpen] = useState(false);
  const project = useProject();
  const units = useSession((session) => session.units);
  const id = useId();
  const finish = finishLookup(project)(value);
  const measures = measuresIn(units);
  const face = spot.kind === 'solid' ? 'front' : spot.face;
  // What the face itself is made of needs no word about how it is fixed.
  const mounting = finish
    ? [
        finish.mount === 'face' ? null : mountingText(finish, measures),
        takesText(finish, face, measures),
      ]
        .filter((text) => text !== null)
        .join('; ')
    : 'no such finish';
  return (
    <div className="finish-field">
      <span id={`${id}-label`} className="finish-label">
        {label}
      </span>
      <button
        type="button"
        className="finish-chosen"
        aria-haspopup="dialog"
        aria-labelledby={`${id}-label ${id}-name${mounting === '' ? '' : ` ${id}-mounting`}`}
        onClick={() => setOpen(true)}
      >
        <span id={`${id}-name`}>{finish ? finishName(finish, units) : value}</span>{' '}
        {mounting === '' ? null : <small id={`${id}-mounting`}>{mounting}</small>}
      </button>
      {open ? (
        <FinishDialog
          of={of}
          value={value}
          spot={spot}
          onChoose={(chosen) => {
            setOpen(false);
            if (chosen !== value) onChange(chosen);
          }}
          onClose={() => setOpen(false)}
        />
      ) : null}
    </div>
  );
}
