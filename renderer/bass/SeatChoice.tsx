/** The seat that low frequencies are looked at from: one choice for bass and for the near walls. */

import { useMemo, type ReactElement } from 'react';
import { referenceSeat, seatsOf, type Seat } from '../../core/room/seats';
import { SelectField } from '../controls/SelectField';
import { seatKey, seatName } from '../state/seat-names';
import { useProject } from '../state/session';
import { useResponses } from './response-store';

/** The seat looked at: the chosen one, else the reference seat. */
export function useLookedAt(): Seat | null {
  const project = useProject();
  const seat = useResponses((store) => store.seat);
  return useMemo(
    () => seatsOf(project).find((known) => seatKey(known) === seat) ?? referenceSeat(project),
    [project, seat],
  );
}

export function SeatChoice({
  label = 'Seat looked at',
}: {
  readonly label?: string;
}): ReactElement | null {
  const project = useProject();
  const chooseSeat = useResponses((store) => store.chooseSeat);
  const lookedAt = useLookedAt();
  if (!lookedAt) return null;
  return (
    <SelectField
      label={label}
      value={seatKey(lookedAt)}
      groups={[
        {
          heading: '',
          options: seatsOf(project).map((seat) => ({
            value: seatKey(seat),
            label: `${seatName(project, seat)} from the left`,
          })),
        },
      ]}
      onChange={chooseSeat}
    />
  );
}
