/** The subwoofers at every seat, followed as the room changes: the newest room is computed, others dropped. */

import { useEffect } from 'react';
import { create } from 'zustand';
import type { SeatResponses } from '../../core/analysis/seat-response';
import type { Project } from '../../core/room/project';
import { SHAPE_LIMIT_HZ } from '../../core/shape-modes/shape-modes';
import { useFineModes } from '../field/use-painting';
import { onOtherRoom, useProject } from '../state/session';
import { compute } from '../workers/compute';

export interface ResponseStore {
  readonly responses: SeatResponses | null;
  readonly failure: string | null;
  /** Seat that is looked at, as `row|seat`; null for the reference seat. */
  readonly seat: string | null;
  readonly chooseSeat: (seat: string | null) => void;
}

export const useResponses = create<ResponseStore>((set) => ({
  responses: null,
  failure: null,
  seat: null,
  chooseSeat: (seat) => set({ seat }),
}));

interface Wish {
  readonly project: Project;
  readonly asBuilt: boolean;
  readonly limitHz: number;
}

let running = false;
let wish: Wish | null = null;

/** One at a time: a wish that comes while one is computed waits, and the last one wins. */
function ask(next: Wish): void {
  wish = next;
  if (running) return;
  running = true;
  void (async () => {
    while (wish) {
      const now: Wish = wish;
      wish = null;
      try {
        const responses = await compute('response', now).result;
        if (responses) useResponses.setState({ responses, failure: null });
      } catch (error) {
        const failure = error instanceof Error ? error.message : String(error);
        useResponses.setState({ responses: null, failure });
      }
    }
    running = false;
  })();
}

/** Keep the responses up to date while this is mounted. */
export function useFollowedResponses(): ResponseStore {
  const project = useProject();
  // The limit is that of the solution that is there, so that the worker need not solve another.
  const solvedHz = useFineModes()?.shape.limitHz ?? null;
  const asBuilt = solvedHz !== null;
  const limitHz = solvedHz ?? SHAPE_LIMIT_HZ;
  useEffect(() => {
    ask({ project, asBuilt, limitHz });
  }, [project, asBuilt, limitHz]);
  return useResponses();
}

onOtherRoom(() => useResponses.setState({ seat: null }));
