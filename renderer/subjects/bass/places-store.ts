/** The search for better subwoofer places: what is asked for, how far it is, what it found. */

import { create } from 'zustand';
import type { OfRoom } from '../../../core/analysis/results';
import {
  proposalKey,
  type PlaceSearch,
  type PlaceSearchOptions,
} from '../../../core/analysis/subwoofer-search';
import { asSubwoofers } from '../../../core/bass/as-subwoofers';
import type { Driven } from '../../../core/bass/measure';
import { searchDefaultsM } from '../../../core/bass/places';
import { DEFAULT_BAND_HZ } from '../../../core/bass/transfer';
import type { Project } from '../../../core/room/project';
import { isSame } from '../../../core/room/same';
import { isSolving, solvedToHz, useBuilt } from '../../pressure/built-store';
import { followerOf, type Answered } from '../../state/jobs';
import { onOtherRoom, projectOf, useProject, useSession, type Session } from '../../state/session';

export type FoundPlaces = Answered<'subwooferSearch'>;

/** How far the search is, and its newest answer: a first one while it runs, or where it was stopped. */
export const usePlaceSearch = followerOf('subwooferSearch');

export interface PlacesStore {
  readonly options: PlaceSearchOptions;
  readonly set: (change: Partial<PlaceSearchOptions>) => void;
  readonly start: () => void;
  readonly take: (set: readonly Driven[]) => void;
}

/** True where the places that were found are those of `project` too. */
export const holdsFor = (found: FoundPlaces, project: Project): boolean =>
  proposalKey(found.project) === proposalKey(project);

/** What the newest search found, where that holds for the present room. */
export function useFoundPlaces(): PlaceSearch | null {
  const project = useProject();
  const newest = usePlaceSearch((store) => store.newest);
  return newest && holdsFor(newest, project) ? newest.answer : null;
}

/** As built where these modes are known or on their way: the worker then waits for them. */
function roomFor(project: Project): OfRoom {
  const known = solvedToHz(project);
  const coming = project.room.solids.length > 0 && isSolving();
  return { modesToHz: known ?? (coming ? useBuilt.getState().limitHz : null) };
}

/** Step and box of a search that nobody has said more about: the box that the subwoofers have, if any says. */
function askedFor(session: Session): Pick<PlaceSearchOptions, 'stepM' | 'boxM'> {
  const usual = searchDefaultsM(session.units);
  const stated = projectOf(session).speakers.subwoofers.find(({ boxM }) => boxM !== undefined);
  return { ...usual, boxM: stated?.boxM ?? usual.boxM };
}

export const usePlaces = create<PlacesStore>((set, get) => ({
  options: {
    count: 2,
    ...askedFor(useSession.getState()),
    drives: false,
    bandHz: DEFAULT_BAND_HZ,
  },
  set: (change) => set({ options: { ...get().options, ...change } }),
  start: () => {
    const session = useSession.getState();
    const project = projectOf(session);
    session.show('bass', 'places');
    const request = { ...roomFor(project), options: get().options };
    void usePlaceSearch.getState().start(project, request);
  },
  take: (chosen) => {
    const { newest } = usePlaceSearch.getState();
    const session = useSession.getState();
    if (!newest || !holdsFor(newest, projectOf(session))) return;
    const { subwoofers } = projectOf(session).speakers;
    session.change({
      kind: 'subwoofers',
      subwoofers: asSubwoofers(
        chosen,
        newest.answer.places.allowed,
        subwoofers,
        newest.request.options.boxM,
      ),
      what: 'subwoofer places',
    });
  },
}));

onOtherRoom(() => {
  const { boxM } = askedFor(useSession.getState());
  usePlaces.getState().set({ boxM });
  usePlaceSearch.getState().forget();
});

// What nobody has typed stands in whole figures of the units that are chosen now.
useSession.subscribe(({ units }, before) => {
  if (units === before.units) return;
  const { options, set } = usePlaces.getState();
  const [old, next] = [searchDefaultsM(before.units), searchDefaultsM(units)];
  set({
    ...(options.stepM === old.stepM ? { stepM: next.stepM } : {}),
    ...(isSame(options.boxM, old.boxM) ? { boxM: next.boxM } : {}),
  });
});
