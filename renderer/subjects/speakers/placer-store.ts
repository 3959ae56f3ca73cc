/** The search for loudspeaker places: what may be used, and what it said. */

import { create } from 'zustand';
import type { PlacerResult } from '../../../core/placing/placer';
import type { Project } from '../../../core/room/project';
import { followerOf } from '../../state/jobs';
import { onOtherRoom, projectOf, useSession } from '../../state/session';

export type Studs = 'any' | 'imperial' | 'metric';

/** How far the search is. */
export const usePlacerSearch = followerOf('speakerPlaces');

export interface PlacerStore {
  readonly studs: Studs;
  /** What was done, and the room with its loudspeakers where they were put. */
  readonly placed: { readonly result: PlacerResult; readonly project: Project } | null;
  /** Why what was found was not taken. */
  readonly refusal: string | null;
  readonly setStuds: (studs: Studs) => void;
  /** Look for places and put the loudspeakers there; one step of the history. */
  readonly start: (studPitchM: number | null) => Promise<void>;
  readonly forget: () => void;
}

export const usePlacer = create<PlacerStore>((set) => ({
  studs: 'any',
  placed: null,
  refusal: null,
  setStuds: (studs) => set({ studs }),
  start: async (studPitchM) => {
    const session = useSession.getState();
    const project = projectOf(session);
    set({ placed: null, refusal: null });
    const found = await usePlacerSearch.getState().start(project, {
      units: session.units,
      options: studPitchM === null ? {} : { studPitchM },
    });
    if (!found) return;
    // The room may have changed meanwhile: then the places are not for it.
    if (projectOf(useSession.getState()) !== project) {
      set({ refusal: 'The room changed meanwhile: place them again.' });
      return;
    }
    session.change(found.answer.edit);
    set({ placed: { result: found.answer, project: projectOf(useSession.getState()) } });
  },
  forget: () => set({ placed: null }),
}));

onOtherRoom(() => {
  usePlacerSearch.getState().forget();
  usePlacer.setState({ placed: null, refusal: null });
});
