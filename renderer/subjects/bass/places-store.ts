/** The search for better subwoofer places: what is asked for, how far it is, what it found. */

import { create } from 'zustand';
import { asSubwoofers } from '../../../core/bass/as-subwoofers';
import { searchDefaultsM } from '../../../core/bass/places';
import type { Driven } from '../../../core/bass/measure';
import { DEFAULT_BAND_HZ } from '../../../core/bass/transfer';
import type { PlaceSearch, PlaceSearchOptions } from '../../../core/analysis/subwoofer-search';
import type { FoundBass } from '../../../core/findings/bass';
import type { Project } from '../../../core/room/project';
import { isSame } from '../../../core/room/same';
import { MODES_LIMIT_HZ } from '../../../core/room-modes/room-modes';
import { fineOf, spaceKey, useBuilt } from '../../pressure/built-store';
import { roomKey } from '../../state/room-key';
import { onOtherRoom, projectOf, useSession, type Session } from '../../state/session';
import { compute, type Job } from '../../workers/compute';

export interface FoundPlaces {
  readonly found: PlaceSearch;
  readonly options: PlaceSearchOptions;
  /** Room that they were found for, as far as it matters here. */
  readonly key: string;
  readonly ms: number;
}

export interface PlacesStore {
  readonly options: PlaceSearchOptions;
  /** Share done; null while nothing runs. */
  readonly share: number | null;
  /** The newest answer; a first one while the whole search runs, or where it was stopped. */
  readonly answer: FoundPlaces | null;
  readonly failure: string | null;
  readonly set: (change: Partial<PlaceSearchOptions>) => void;
  readonly start: () => void;
  readonly stop: () => void;
  readonly take: (set: readonly Driven[]) => void;
}

/** Says for which rooms places hold: the room, and the loudspeakers that stand in the way. */
export const placesKey = (project: Project): string => {
  const { layout, recommendation, placed } = project.speakers;
  return JSON.stringify([roomKey(project), layout, recommendation, placed]);
};

/**
 * The best set of `answer` where it was found for `project` and over the band that findings judge;
 * null where it was not.
 */
export function foundBassOf(
  answer: FoundPlaces | null,
  project: Project,
  of: 'shell' | 'built',
): FoundBass | null {
  const best = answer?.found.search?.sets[0];
  const figures = answer?.found.best;
  if (!answer || !best || !figures || answer.found.of !== of) return null;
  if (answer.key !== placesKey(project) || !isSame(answer.options.bandHz, DEFAULT_BAND_HZ))
    return null;
  const { allowed } = answer.found.places;
  return {
    subwoofers: asSubwoofers(
      best.subwoofers,
      allowed,
      project.speakers.subwoofers,
      answer.options.boxM,
    ),
    figures,
  };
}

/** Step and box of a search that nobody has said more about: the box that the subwoofers have, if any says. */
function askedFor(session: Session): Pick<PlaceSearchOptions, 'stepM' | 'boxM'> {
  const usual = searchDefaultsM(session.units);
  const stated = projectOf(session).speakers.subwoofers.find(({ boxM }) => boxM !== undefined);
  return { ...usual, boxM: stated?.boxM ?? usual.boxM };
}

let job: Job<'subwoofers'> | null = null;

export const usePlaces = create<PlacesStore>((set, get) => ({
  options: {
    count: 2,
    ...askedFor(useSession.getState()),
    drives: false,
    bandHz: DEFAULT_BAND_HZ,
  },
  share: null,
  answer: null,
  failure: null,
  set: (change) => set({ options: { ...get().options, ...change } }),
  start: () => {
    job?.stop();
    const project = projectOf(useSession.getState());
    const built = useBuilt.getState();
    const fine = fineOf(built, spaceKey(project));
    // Where they are still being solved the search waits for modes as built, of its own if need be.
    const asBuilt = fine !== null || built.share !== null;
    const limitHz = fine?.shape.limitHz ?? MODES_LIMIT_HZ;
    const { options } = get();
    const key = placesKey(project);
    const began = performance.now();
    useSession.getState().show('bass', 'places');
    set({ share: 0, failure: null });
    const run = async (quick: boolean): Promise<boolean> => {
      const running = compute(
        'subwoofers',
        { project, asBuilt, limitHz, options: { ...options, quick } },
        (share) => {
          if (job === running) set({ share });
        },
      );
      job = running;
      const found = await running.result;
      if (job !== running || found === null) return false;
      set({ answer: { found, options, key, ms: performance.now() - began } });
      return true;
    };
    // A first answer at once, then the proof.
    run(true)
      .then((going) => (going ? run(false) : false))
      .then((ended) => {
        if (ended) set({ share: null });
      })
      .catch((error: unknown) => {
        set({ share: null, failure: error instanceof Error ? error.message : String(error) });
      });
  },
  stop: () => {
    job?.stop();
    job = null;
    set({ share: null });
  },
  take: (chosen) => {
    const { answer } = get();
    const session = useSession.getState();
    if (!answer || answer.key !== placesKey(projectOf(session))) return;
    const { subwoofers } = projectOf(session).speakers;
    session.change({
      kind: 'subwoofers',
      subwoofers: asSubwoofers(
        chosen,
        answer.found.places.allowed,
        subwoofers,
        answer.options.boxM,
      ),
      what: 'subwoofer places',
    });
  },
}));

onOtherRoom(() => {
  const { stop, options } = usePlaces.getState();
  stop();
  const { boxM } = askedFor(useSession.getState());
  usePlaces.setState({ answer: null, failure: null, options: { ...options, boxM } });
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
