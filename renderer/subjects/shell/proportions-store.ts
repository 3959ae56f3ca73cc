/** What the proportions view knows beside the room: the search in the bay. */

import { create } from 'zustand';
import { bayOf } from '../../../core/proportions/bay';
import type { SearchResult } from '../../../core/proportions/search';
import type { Bay, ShellSize } from '../../../core/room/project';
import { onOtherRoom, projectOf, useSession } from '../../state/session';
import { compute, type Job } from '../../workers/compute';

export type SearchState =
  | { readonly kind: 'none' }
  | { readonly kind: 'running'; readonly share: number }
  | {
      readonly kind: 'found';
      readonly result: SearchResult;
      readonly bay: Bay;
      readonly ms: number;
    }
  | { readonly kind: 'failed'; readonly sentence: string };

export interface ProportionsState {
  readonly search: SearchState;
  readonly start: () => void;
  /** Stop the search and keep the rooms that it has found so far. */
  readonly stop: () => void;
}

let job: Job<'search'> | null = null;

export const useProportions = create<ProportionsState>((set) => ({
  search: { kind: 'none' },
  start: () => {
    job?.stop();
    const session = useSession.getState();
    const project = projectOf(session);
    const bay = bayOf(project, session.units);
    const present: ShellSize = project.room.size;
    const began = performance.now();
    session.show('shell', 'proportions');
    set({ search: { kind: 'running', share: 0 } });
    const running = compute(
      'search',
      { bay, present, speedMS: session.analysis.air.speedOfSoundMS },
      (share) => set({ search: { kind: 'running', share } }),
    );
    job = running;
    running.result.then(
      (result) => {
        if (job !== running) return;
        if (result === null) set({ search: { kind: 'none' } });
        else set({ search: { kind: 'found', result, bay, ms: performance.now() - began } });
      },
      (error: unknown) => {
        if (job !== running) return;
        set({
          search: {
            kind: 'failed',
            sentence: error instanceof Error ? error.message : String(error),
          },
        });
      },
    );
  },
  stop: () => job?.stopAndKeep(),
}));

onOtherRoom(() => {
  job?.stop();
  job = null;
  useProportions.setState({ search: { kind: 'none' } });
});
