/** The seat that is looked at: one choice for everything that is shown of one seat. */

import type { ReactElement } from 'react';
import { listeningPlaces } from '../../../core/room/seats';
import { seatKey, seatOption } from '../../state/seat-names';
import { useProject, useSession } from '../../state/session';
import { useShownSeat } from '../../state/shown-seat';
import { SelectField } from './SelectField';

export function SeatChoice({
  label = 'Seat looked at',
}: {
  readonly label?: string;
}): ReactElement | null {
  const project = useProject();
  const chooseSeat = useSession((session) => session.chooseSeat);
  const shown = useShownSeat();
  if (!shown) return null;
  return (
    <SelectField
      label={label}
      value={seatKey(shown)}
      groups={[
        {
          heading: '',
          options: listeningPlaces(project).map((seat) => ({
            value: seatKey(seat),
            label: seatOption(project, seat),
          })),
        },
      ]}
      onChange={chooseSeat}
    />
  );
}
