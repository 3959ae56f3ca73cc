/** The subwoofers at every seat, followed as the room changes: the newest room is computed, others dropped. */

import { useEffect, useMemo } from 'react';
import { create } from 'zustand';
import type { SeatResponses } from '../../../core/analysis/seat-response';
import type { Project } from '../../../core/room/project';
import { MODES_LIMIT_HZ } from '../../../core/room-modes/room-modes';
import { spaceKey, useBuilt } from '../../pressure/built-store';
import { useFineModes } from '../../pressure/use-painting';
import { roomKey } from '../../state/room-key';
import { projectOf, useProject, useSession } from '../../state/session';
import { compute } from '../../workers/compute';

export interface ResponseStore {
  readonly responses: SeatResponses | null;
  /** `bassKey` of the room that they are of. */
  readonly key: string | null;
  readonly failure: string | null;
  /** Compute the last room asked for once more, where it failed. */
  readonly retry: () => void;
}

export const useResponses = create<ResponseStore>((set) => ({
  responses: null,
  key: null,
  failure: null,
  retry: () => {
    set({ failure: null });
    if (asked) ask(asked);
  },
}));

/** Says which rooms have the same bass at their seats. */
const bassKey = (project: Project): string =>
  JSON.stringify([roomKey(project), project.speakers.subwoofers]);

interface Wish {
  readonly project: Project;
  readonly asBuilt: boolean;
  readonly limitHz: number;
}

let running = false;
let wish: Wish | null = null;
let asked: Wish | null = null;

/** One at a time: a wish that comes while one is computed waits, and the last one wins. */
function ask(next: Wish): void {
  wish = next;
  asked = next;
  if (running) return;
  running = true;
  void (async () => {
    while (wish) {
      const now: Wish = wish;
      wish = null;
      const key = bassKey(now.project);
      try {
        const responses = await compute('response', now).result;
        if (responses) useResponses.setState({ responses, key, failure: null });
      } catch (error) {
        const failure = error instanceof Error ? error.message : String(error);
        useResponses.setState({ responses: null, key, failure });
      }
    }
    running = false;
  })();
}

/** Where bass is not looked at it is computed once the room has rested for so long, ms. */
const REST_MS = 400;

/** Keep the responses up to date while this is mounted: at once for a subject that shows them. */
export function useFollowedResponses(atOnce: boolean): void {
  const project = useProject();
  const key = useMemo(() => bassKey(project), [project]);
  // The limit is that of the solution that is there, so that the worker need not solve another.
  const solvedHz = useFineModes()?.shape.limitHz ?? null;
  const asBuilt = solvedHz !== null;
  const limitHz = solvedHz ?? MODES_LIMIT_HZ;
  useEffect(() => {
    const now = (): void => ask({ project: projectOf(useSession.getState()), asBuilt, limitHz });
    if (atOnce) {
      now();
      return undefined;
    }
    const rest = setTimeout(now, REST_MS);
    return () => clearTimeout(rest);
    // The room by what its bass depends on.
  }, [key, atOnce, asBuilt, limitHz]);
}

/** True while nothing can be said yet of the bass at the seats, though there is some. */
export function useBassPending(): boolean {
  const { seating, speakers } = useProject();
  const known = useBassOfRoom() !== null;
  const failed = useResponses((store) => store.failure !== null);
  return !known && !failed && speakers.subwoofers.length > 0 && seating.rows.length > 0;
}

/**
 * The bass at the seats of the present room; null until it is known. Where fittings fill part of the
 * shell that is known with its modes as built, or when they cannot be had.
 */
export function useBassOfRoom(): SeatResponses | null {
  const project = useProject();
  const key = useMemo(() => bassKey(project), [project]);
  const space = useMemo(() => spaceKey(project), [project]);
  const responses = useResponses((store) => (store.key === key ? store.responses : null));
  const refused = useBuilt(({ key: of, outcome }) => of === space && outcome?.ok === false);
  if (responses?.of === 'built' || project.room.solids.length === 0 || refused) return responses;
  return null;
}
