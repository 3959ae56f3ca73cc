/** The seat that everything is shown of: the one pointed at, else the chosen one, else the reference place. */

import { useMemo } from 'react';
import type { Project } from '../../core/room/project';
import { listeningPlaces, referencePlace, type ListeningPlace } from '../../core/room/seats';
import { seatKey } from './seat-names';
import { useProject, useSession, type Session } from './session';

/** Null where nobody sits. A seat that is not in the room is none. */
export function shownSeat(
  project: Project,
  { seat, pointedSeat }: Pick<Session, 'seat' | 'pointedSeat'>,
): ListeningPlace | null {
  const places = listeningPlaces(project);
  const placeOf = (key: string | null): ListeningPlace | undefined =>
    places.find((place) => seatKey(place) === key);
  return placeOf(pointedSeat) ?? placeOf(seat) ?? referencePlace(project);
}

export function useShownSeat(): ListeningPlace | null {
  const project = useProject();
  const seat = useSession((session) => session.seat);
  const pointedSeat = useSession((session) => session.pointedSeat);
  return useMemo(() => shownSeat(project, { seat, pointedSeat }), [project, seat, pointedSeat]);
}
