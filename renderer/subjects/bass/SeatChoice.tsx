/** The seat that low frequencies are looked at from: one choice for bass and for the near walls. */

import { useMemo, type ReactElement } from 'react';
import { listeningPlaces, referencePlace, type ListeningPlace } from '../../../core/room/seats';
import { SelectField } from '../../kit/controls/SelectField';
import { seatKey, seatOption } from '../../state/seat-names';
import { useProject } from '../../state/session';
import { useResponses } from './response-store';

/** The seat looked at: the chosen one, else the reference place. */
export function useLookedAt(): ListeningPlace | null {
  const project = useProject();
  const seat = useResponses((store) => store.seat);
  return useMemo(
    () =>
      listeningPlaces(project).find((known) => seatKey(known) === seat) ?? referencePlace(project),
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
