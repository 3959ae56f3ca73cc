/** The search for loudspeaker places: what may be used, and what it said. */

import { create } from 'zustand';
import type { PlacerResult } from '../../../core/placing/placer';
import type { Project } from '../../../core/room/project';
import { onOtherRoom, projectOf, useSession } from '../../state/session';
import { compute, type Job } from '../../workers/compute';

export type Studs = 'any' | 'imperial' | 'metric';

export interface PlacerStore {
  readonly studs: Studs;
  readonly share: number | null;
  readonly result: PlacerResult | null;
  /** Room that the result is of, with its loudspeakers. */
  readonly of: Project | null;
  readonly failure: string | null;
  readonly setStuds: (studs: Studs) => void;
  /** Look for places and put the loudspeakers there; one step of the history. */
  readonly start: (studPitchM: number | null) => void;
  readonly stop: () => void;
  readonly forget: () => void;
}

let job: Job<'placing'> | null = null;

export const usePlacer = create<PlacerStore>((set) => ({
  studs: 'any',
  share: null,
  result: null,
  of: null,
  failure: null,
  setStuds: (studs) => set({ studs }),
  start: (studPitchM) => {
    job?.stop();
    const session = useSession.getState();
    const project = projectOf(session);
    set({ share: 0, failure: null, result: null });
    const running = compute(
      'placing',
      {
        project,
        units: session.units,
        options: studPitchM === null ? {} : { studPitchM },
      },
      (share) => set({ share }),
    );
    job = running;
    running.result.then(
      (result) => {
        if (job !== running || result === null) return;
        // The room may have changed meanwhile: then the places are not for it.
        if (projectOf(useSession.getState()) !== project) {
          set({ share: null, failure: 'The room changed meanwhile: place them again.' });
          return;
        }
        session.change(result.edit);
        set({ share: null, result, of: projectOf(useSession.getState()) });
      },
      (error: unknown) => {
        if (job !== running) return;
        set({ share: null, failure: error instanceof Error ? error.message : String(error) });
      },
    );
  },
  stop: () => {
    job?.stop();
    job = null;
    set({ share: null });
  },
  forget: () => set({ result: null }),
}));

onOtherRoom(() => {
  usePlacer.getState().stop();
  usePlacer.setState({ result: null, of: null, failure: null });
});
