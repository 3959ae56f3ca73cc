/**
 * Every result by name: what it is computed from, and whether it comes at once or in slices. The window,
 * its worker, the batch command and the findings ask for results here alone, by way of an evaluator
 * (`evaluator.ts`). A new result is its types and its entry.
 */

import type { Design } from '../absorbers/design';
import { evaluateDesign, type Evaluation } from '../absorbers/evaluate';
import { speedOfSoundMS } from '../air/medium';
import { subwooferPlaces, type PlaceOptions, type Places } from '../bass/places';
import { finishesFor } from '../findings/early-reflections';
import { shellModes, type ShellMode } from '../modes/shell-modes';
import type { PlacerOptions, PlacerResult } from '../placing/placer';
import type { ProportionMap } from '../proportions/map';
import type { SearchResult } from '../proportions/search';
import type { LengthUnits } from '../quantity/length';
import type { Slices } from '../quantity/slices';
import { earlyAtSeat, type EarlyAtSeat, type SeatReflection } from '../reflections/early-at-seat';
import { treatmentFor, type Treatment } from '../reflections/treatment';
import { modesBehind, type Contribution } from '../response/modes-behind';
import type { Bay, Point, Project } from '../room/project';
import type { ListeningPlace } from '../room/seats';
import { HIGHEST_LIMIT_HZ, MODES_LIMIT_HZ } from '../room-modes/room-modes';
import { atSeats, type SeatTable } from '../speakers/at-seats';
import type { Window } from '../speakers/layouts';
import { stripsOf, type Strip } from '../speakers/strips';
import { analyze, type Analysis } from './analyze';
import { spaceOf, type NamedModesOutcome } from './named-modes';
import { nearFaces, type NearFaces } from './near-faces';
import { drivenSource, roomField, type RoomField } from './room-field';
import type { SeatResponses } from './seat-response';
import type { PlaceSearch, PlaceSearchOptions } from './subwoofer-search';

/** Highest frequencies to which the modes of the free space are solved, Hz. */
export const MODE_LIMITS_HZ = [MODES_LIMIT_HZ, HIGHEST_LIMIT_HZ] as const;
export type ModeLimitHz = (typeof MODE_LIMITS_HZ)[number];
/** A hand that drags is followed up to here, Hz. */
export const COARSE_LIMIT_HZ = 150;

/** Nothing has to be said beside the room. */
export type NoRequest = Readonly<Record<string, never>>;

interface InUnits {
  readonly units: LengthUnits;
}

/** The modes that pressure is summed from, which must be known; null for those of the plain shell. */
export interface FromModes {
  readonly modes: SolvedModes | null;
}

export type SolvedModes =
  | { readonly result: 'roomModes'; readonly limitHz: ModeLimitHz }
  | { readonly result: 'coarseModes' };

/** As built, with its modes to here, where these can be had; null for the plain shell. */
export interface OfRoom {
  readonly modesToHz: ModeLimitHz | null;
}

interface Result<Request, Answer> {
  readonly request: Request;
  readonly answer: Answer;
}

/** Quick enough for every frame of a drag: a few milliseconds at most. */
export interface QuickResults {
  /** All that goes with the room at every moment, with the quick findings. */
  readonly analysis: Result<InUnits, Analysis>;
  /** Modes of the plain shell, rising. */
  readonly shellModes: Result<{ readonly limitHz: number }, readonly ShellMode[]>;
  /** All channels at all seats. */
  readonly seatAngles: Result<NoRequest, SeatTable>;
  /** Where a window of the layout meets the faces, as the ears see it. */
  readonly windowStrips: Result<
    {
      readonly ears: Point;
      readonly window: Pick<Window, 'azimuth' | 'elevation' | 'nominalAzimuth'>;
    },
    readonly Strip[]
  >;
  /** Where a subwoofer could stand, and what is in its way elsewhere. */
  readonly subwooferPlaces: Result<PlaceOptions, Places>;
  readonly earlyReflections: Result<
    { readonly channel: string; readonly seat: ListeningPlace },
    EarlyAtSeat
  >;
  /** What would bring a reflection to its limit; null where nothing is proposed. */
  readonly reflectionTreatment: Result<
    InUnits & { readonly reflection: SeatReflection },
    Treatment | null
  >;
  readonly nearFaces: Result<{ readonly source: Point; readonly ears: Point }, NearFaces | null>;
  /** The field that pressure is summed from. */
  readonly roomField: Result<FromModes, RoomField>;
  /** The modes that make one frequency at one place, the strongest first. */
  readonly modesBehind: Result<
    FromModes & { readonly at: Point; readonly frequencyHz: number; readonly most: number },
    readonly Contribution[]
  >;
  readonly absorber: Result<InUnits & { readonly design: Design }, Evaluation>;
}

/** Slower: computed in slices, in the window by the worker. */
export interface SlowResults {
  /** Modes of the free space with its fittings. */
  readonly roomModes: Result<{ readonly limitHz: ModeLimitHz }, NamedModesOutcome>;
  /** The same to `COARSE_LIMIT_HZ`, as fast as can be. */
  readonly coarseModes: Result<NoRequest, NamedModesOutcome>;
  /** All subwoofers together at every seat. */
  readonly seatResponses: Result<OfRoom, SeatResponses>;
  /** Better places for the subwoofers: a first answer soon, then the whole search. */
  readonly subwooferSearch: Result<OfRoom & { readonly options: PlaceSearchOptions }, PlaceSearch>;
  /** Places for the loudspeakers of the layout. */
  readonly speakerPlaces: Result<InUnits & { readonly options: PlacerOptions }, PlacerResult>;
  /** The evenest rooms in a bay. */
  readonly baySearch: Result<{ readonly bay: Bay }, SearchResult>;
  /** Unevenness over width and length at the room's height. */
  readonly proportionMap: Result<
    { readonly columns: number; readonly rows: number },
    ProportionMap
  >;
  /** The analysis with the modes as built in it, and the findings of all that is known then. */
  readonly wholeAnalysis: Result<InUnits, Analysis>;
}

export type QuickName = keyof QuickResults;
export type SlowName = keyof SlowResults;
export type ResultName = QuickName | SlowName;
type Results = QuickResults & SlowResults;
export type RequestOf<N extends ResultName> = Results[N]['request'];
export type AnswerOf<N extends ResultName> = Results[N]['answer'];

/** The way to other results, from inside a computation and from outside. */
export interface Ask {
  /** At once. */
  readonly quick: <N extends QuickName>(
    name: N,
    project: Project,
    request: RequestOf<N>,
  ) => AnswerOf<N>;
  /** As part of another computation: yields the share done, and ends at once where the answer is known. */
  readonly part: <N extends SlowName>(
    name: N,
    project: Project,
    request: RequestOf<N>,
  ) => Generator<number, AnswerOf<N>>;
  /** The answer where it has been computed and is still kept; null where not. */
  readonly known: <N extends SlowName>(
    name: N,
    project: Project,
    request: RequestOf<N>,
  ) => AnswerOf<N> | null;
}

interface Entry<N extends ResultName> {
  /** The parts of the project that the answer depends on; the request goes into the key by itself. */
  readonly dependsOn: (project: Project) => readonly unknown[];
  /** So many of the newest answers are kept. */
  readonly keeps: number;
  /** The answer as it leaves the worker: without what only further computing needs. */
  readonly sent?: (answer: AnswerOf<N>) => AnswerOf<N>;
}

export interface QuickEntry<N extends QuickName> extends Entry<N> {
  readonly cost: 'at once';
  readonly compute: (project: Project, request: RequestOf<N>, ask: Ask) => AnswerOf<N>;
}

/** How it is computed is in `slow-work.ts`, which the window leaves to its worker. */
export interface SlowEntry<N extends SlowName> extends Entry<N> {
  readonly cost: 'in slices';
}

/** How the slow results are computed. */
export type SlowWork = {
  readonly [N in SlowName]: (
    project: Project,
    request: RequestOf<N>,
    ask: Ask,
  ) => Slices<AnswerOf<N>>;
};

type Table = { readonly [N in QuickName]: QuickEntry<N> } & {
  readonly [N in SlowName]: SlowEntry<N>;
};

const everything = (project: Project): readonly unknown[] => [project];
const shell = ({ room, air }: Project): readonly unknown[] => [room.size, air.temperatureC];
/** The free space and what sounds in it. */
const sound = ({ room, air, objects, finishesCustom }: Project): readonly unknown[] => [
  room,
  air,
  objects,
  finishesCustom,
];

/** The solved modes that are meant; an exception where they are not known, which callers see to. */
function solved(project: Project, { modes }: FromModes, ask: Ask) {
  if (!modes) return null;
  const outcome =
    modes.result === 'roomModes'
      ? ask.known('roomModes', project, { limitHz: modes.limitHz })
      : ask.known('coarseModes', project, {});
  if (!outcome?.ok) throw new Error('The modes as built were asked for before they were known.');
  return outcome.built.shape;
}

export const RESULTS: Table = {
  analysis: {
    cost: 'at once',
    dependsOn: everything,
    keeps: 4,
    compute: (project, { units }) => analyze(project, units),
  },
  shellModes: {
    cost: 'at once',
    dependsOn: shell,
    keeps: 4,
    compute: ({ room, air }, { limitHz }) =>
      shellModes(room.size, speedOfSoundMS(air.temperatureC), limitHz),
  },
  seatAngles: {
    cost: 'at once',
    dependsOn: everything,
    keeps: 2,
    compute: atSeats,
  },
  windowStrips: {
    cost: 'at once',
    dependsOn: ({ room }) => [room],
    keeps: 16,
    compute: ({ room }, { ears, window }) => stripsOf(room, ears, window),
  },
  subwooferPlaces: {
    cost: 'at once',
    dependsOn: everything,
    keeps: 4,
    compute: subwooferPlaces,
  },
  earlyReflections: {
    cost: 'at once',
    dependsOn: everything,
    keeps: 32,
    compute: (project, { channel, seat }) =>
      earlyAtSeat(project, speedOfSoundMS(project.air.temperatureC), channel, seat),
  },
  reflectionTreatment: {
    cost: 'at once',
    dependsOn: everything,
    keeps: 16,
    compute: (project, { reflection, units }) =>
      reflection.overDb > 0
        ? treatmentFor(project, reflection, finishesFor(reflection), units)
        : null,
  },
  nearFaces: {
    cost: 'at once',
    dependsOn: ({ room, air, finishesCustom }) => [room, air, finishesCustom],
    keeps: 16,
    compute: (project, { source, ears }) => nearFaces(project, source, ears),
  },
  roomField: {
    cost: 'at once',
    dependsOn: sound,
    keeps: 2,
    compute: (project, request, ask) => roomField(project, solved(project, request, ask)),
  },
  modesBehind: {
    cost: 'at once',
    dependsOn: (project) => [...sound(project), project.speakers.subwoofers],
    keeps: 8,
    compute: (project, { at, frequencyHz, most, modes }, ask) => {
      const { field, damping } = ask.quick('roomField', project, { modes });
      const sources = project.speakers.subwoofers.map(drivenSource);
      return modesBehind(field, sources, at, frequencyHz, damping, most);
    },
  },
  absorber: {
    cost: 'at once',
    dependsOn: ({ air }) => [air],
    keeps: 4,
    compute: ({ air }, { design, units }) => evaluateDesign(design, air, units),
  },
  roomModes: {
    cost: 'in slices',
    dependsOn: (project) => [spaceOf(project)],
    keeps: 1,
    sent: (outcome) =>
      outcome.ok
        ? {
            ok: true,
            built: { ...outcome.built, shape: { ...outcome.built.shape, factor: null } },
          }
        : outcome,
  },
  coarseModes: {
    cost: 'in slices',
    dependsOn: (project) => [spaceOf(project)],
    keeps: 1,
  },
  seatResponses: {
    cost: 'in slices',
    dependsOn: (project) => [...sound(project), project.seating, project.speakers.subwoofers],
    keeps: 2,
  },
  subwooferSearch: {
    cost: 'in slices',
    dependsOn: everything,
    keeps: 1,
  },
  speakerPlaces: {
    cost: 'in slices',
    dependsOn: everything,
    keeps: 1,
  },
  baySearch: {
    cost: 'in slices',
    dependsOn: shell,
    keeps: 1,
  },
  proportionMap: {
    cost: 'in slices',
    dependsOn: ({ room, air }) => [room.size.height, air.temperatureC],
    keeps: 2,
  },
  wholeAnalysis: {
    cost: 'in slices',
    dependsOn: everything,
    keeps: 1,
  },
};
