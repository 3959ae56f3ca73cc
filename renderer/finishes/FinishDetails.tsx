/** All that is known of the finish that is looked at, and the button that takes it. */

import type { ReactElement } from 'react';
import { useSession } from '../state/session';
import { coefficientLine, sourceLine } from './finish-words';
import type { FinishRow } from './finish-list';

export interface FinishDetailsProps {
  readonly row: FinishRow;
  readonly onChoose: () => void;
}

export function FinishDetails({ row, onChoose }: FinishDetailsProps): ReactElement {
  const { finish, name, effect } = row;
  const units = useSession((session) => session.units);
  return (
    <div className="finish-details">
      <p>
        <b>{name}</b>
        {effect === null
          ? ''
          : `: ${effect.midS.toFixed(2)} s in the middle octaves (Eyring).`}{' '}
        {coefficientLine(finish)}. <i>{sourceLine(finish, units)}</i>
      </p>
      <button type="button" className="apply" onClick={onChoose}>
        Take it
      </button>
    </div>
  );
}
