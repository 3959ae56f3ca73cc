/** The seat that is looked at: chosen or pointed at, else the reference place. */

import { useMemo } from 'react';
import { listeningPlaces, referencePlace, type ListeningPlace } from '../../core/room/seats';
import type { Project } from '../../core/room/project';
import { seatKey } from './seat-names';
import { useProject, useSession } from './session';

/** The place of `key` (`row|seat`) in the room, else the reference place; null where nobody sits. */
export const placeOf = (project: Project, key: string | null): ListeningPlace | null =>
  listeningPlaces(project).find((place) => seatKey(place) === key) ?? referencePlace(project);

/** The chosen seat, for what is computed at one seat. */
export function useLookedAt(): ListeningPlace | null {
  const project = useProject();
  const seat = useSession((session) => session.seat);
  return useMemo(() => placeOf(project, seat), [project, seat]);
}

/** The seat that rays are drawn from: the one pointed at, else the reference place. */
export function useHearingSeat(): ListeningPlace | null {
  const project = useProject();
  const pointed = useSession((session) => session.pointedSeat);
  return useMemo(() => placeOf(project, pointed), [project, pointed]);
}
