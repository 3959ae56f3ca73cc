/** The subwoofers at every seat, followed as the room changes: the newest room is computed, others dropped. */

import { useEffect } from 'react';
import { settledRoom } from '../../../core/analysis/all-findings';
import { resultKey } from '../../../core/analysis/evaluator';
import type { OfRoom } from '../../../core/analysis/results';
import type { SeatResponses } from '../../../core/analysis/seat-response';
import { useBuilt, useSolved } from '../../pressure/built-store';
import { failureOf, followerOf } from '../../state/jobs';
import { results } from '../../state/results';
import { fileOf, onOtherRoom, projectOf, useProject, useSession } from '../../state/session';
import { useKnown } from '../../state/use-result';

const useFollower = followerOf('seatResponses');

/** Where bass is not looked at it is computed once the room has rested for so long, ms. */
const REST_MS = 400;

/** What is computed now: of the room as built once its modes are known, until then of the plain shell. */
function useRequest(): OfRoom {
  const solved = useSolved();
  const project = useProject();
  return solved ? settledRoom(project, solved.limitHz) : { modesToHz: null };
}

/** Keep the responses up to date while this is mounted: at once for a subject that shows them. */
export function useFollowedResponses(atOnce: boolean): void {
  const { modesToHz } = useRequest();
  const key = resultKey('seatResponses', useProject(), { modesToHz });
  const opening = useSession((session) => fileOf(session).opening);
  useEffect(() => {
    const now = (): void => {
      const project = projectOf(useSession.getState());
      if (!results.known('seatResponses', project, { modesToHz }))
        useFollower.getState().startNext(project, { modesToHz });
    };
    if (atOnce) {
      now();
      return undefined;
    }
    const rest = setTimeout(now, REST_MS);
    return () => clearTimeout(rest);
    // The room by what its bass depends on; another one with the same bass was forgotten all the same.
  }, [key, opening, atOnce, modesToHz]);
}

export interface ShownResponses {
  readonly responses: SeatResponses;
  /** False where it is of the room just before, and that of the present one is being computed. */
  readonly isOfRoom: boolean;
}

/** What can be shown: of the present room, as settled as it is known; else of the room just before. */
export function useShownResponses(): {
  readonly heard: ShownResponses | null;
  readonly failure: string | null;
  readonly retry: () => void;
} {
  const settled = useBassOfRoom();
  const ofShell = useKnown('seatResponses', { modesToHz: null });
  const before = useFollower((store) => store.newest);
  const failure = useFollower(failureOf);
  const retry = useFollower((store) => store.again);
  const present = settled ?? ofShell;
  const heard = present
    ? { responses: present, isOfRoom: true }
    : before && { responses: before.answer, isOfRoom: false };
  return { heard, failure: present ? null : failure, retry };
}

/** True while nothing can be said yet of the bass at the seats, though there is some. */
export function useBassPending(): boolean {
  const { seating, speakers } = useProject();
  const known = useBassOfRoom() !== null;
  const failed = useFollower((store) => failureOf(store) !== null);
  return !known && !failed && speakers.subwoofers.length > 0 && seating.rows.length > 0;
}

/**
 * The bass at the seats of the present room; null until it is known. Where fittings fill part of the
 * shell that is known with its modes as built, or when they cannot be had.
 */
export function useBassOfRoom(): SeatResponses | null {
  const wanted = useBuilt((store) => store.limitHz);
  const modesToHz = useSolved()?.limitHz ?? wanted;
  return useKnown('seatResponses', settledRoom(useProject(), modesToHz));
}

onOtherRoom(() => useFollower.getState().forget());
