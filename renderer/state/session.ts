/**
 * The window's one store. The project lives in the history; its analysis is made in the same breath
 * as every change, so that drawing, charts and findings never show two different rooms.
 */

import { create } from 'zustand';
import type { Analysis } from '../../core/analysis/analyze';
import type { OctaveHz } from '../../core/quantity/bands';
import type { LengthUnits } from '../../core/quantity/length';
import { applyEdit, editName, type Edit } from '../../core/room/edits';
import type { Project } from '../../core/room/project';
import { readBack } from '../../core/room/read-back';
import type { Layout } from '../../core/speakers/layouts';
import { exampleRoom } from './examples';
import { faultLines } from './fault-lines';
import { asOne, gestureEdits, type Gesture } from './gesture';
import * as history from './history';
import type { Painted } from './painted';
import { keepPreferences, readPreferences, showAppearance, type Appearance } from './preferences';
import {
  isSameThing,
  selectedId,
  withoutKind,
  withSelected,
  type Selected,
  type Selection,
  type ThingKind,
} from './selection';
import { results } from './results';
import { hasUnsaved, type FileState, type DocumentState } from './document';

export const VIEWS = ['room', 'plan', 'section', 'front'] as const;
export type View = (typeof VIEWS)[number];

/** A message to the person: stays until closed or replaced. */
export interface Notice {
  readonly tone: 'good' | 'bad';
  readonly title: string;
  readonly lines: readonly string[];
  /** What the person can do about it, by one press; the notice goes with it. */
  readonly actions?: readonly NoticeAction[];
}

export interface NoticeAction {
  readonly label: string;
  readonly run: () => unknown;
}

export interface Session {
  readonly work: history.History<DocumentState>;
  readonly analysis: Analysis;
  readonly units: LengthUnits;
  readonly appearance: Appearance;
  readonly view: View;
  /** Counts the wishes to see the whole room: a view pressed (again), another room opened. */
  readonly refit: number;
  /** Id of the open subject; null for the first one. */
  readonly subject: string | null;
  /** What is open of each pane that shows one of several things: the tab of a subject's evidence, say. */
  readonly shown: Readonly<Record<string, string>>;
  readonly findingId: string | null;
  /** The chosen things. */
  readonly selected: Selection;
  /** Seat that is looked at, as `row|seat`; null for the reference place. */
  readonly seat: string | null;
  /** Seat that is pointed at for the moment. */
  readonly pointedSeat: string | null;
  /** Face whose reflection is looked at: of the shell, or `solid-id:face`; null leaves it to the view. */
  readonly face: string | null;
  readonly pointedFace: string | null;
  /** What is painted in the drawing. */
  readonly painted: Painted | null;
  /** Octave whose absorption is shown, Hz. */
  readonly bandHz: OctaveHz;
  readonly notice: Notice | null;
  /** Change the room; edits of one gesture are one step of the history. */
  readonly change: (edit: Edit, gesture?: Gesture | null) => void;
  /** A gesture begins with the room as it is. */
  readonly begin: () => Gesture;
  readonly load: (work: DocumentState, name: string) => void;
  /** Recovery at start: the room, and the unsaved one that it had replaced, for undo. */
  readonly restore: (work: DocumentState, before: DocumentState | null) => void;
  /** The file that the room of `old` has now been saved to; the present room's where it is not given. */
  readonly markSaved: (file: FileState, old?: FileState) => void;
  readonly undo: () => void;
  readonly redo: () => void;
  readonly setUnits: (units: LengthUnits) => void;
  readonly setAppearance: (appearance: Appearance) => void;
  readonly setView: (view: View) => void;
  readonly setSubject: (subject: string) => void;
  readonly show: (pane: string, what: string) => void;
  readonly chooseFinding: (id: string | null) => void;
  readonly select: (thing: Selected) => void;
  readonly deselect: (kind: ThingKind) => void;
  /** Choose it, or let it go where it is the chosen one of its kind. */
  readonly toggle: (thing: Selected) => void;
  readonly chooseSeat: (seat: string | null) => void;
  readonly pointSeat: (seat: string | null) => void;
  readonly chooseFace: (face: string | null) => void;
  readonly pointFace: (face: string | null) => void;
  readonly paint: (painted: Painted | null) => void;
  readonly chooseBand: (bandHz: OctaveHz) => void;
  readonly notify: (notice: Notice | null) => void;
}

const analysisOf = (project: Project, units: LengthUnits): Analysis =>
  results.quick('analysis', project, { units });

const preferences = readPreferences();
showAppearance(preferences.appearance);
const first = exampleRoom('basement-bay', preferences.units);

type Field = {
  [K in keyof Session]: Session[K] extends (...args: never[]) => unknown ? never : K;
}[keyof Session];

/**
 * Whom each field belongs to: the file (with its history, and what follows from it), this person on this
 * computer, the room that is open (another room has no part of it), or this run of the window.
 */
export const BELONGS_TO = {
  work: 'file',
  analysis: 'file',
  units: 'person',
  appearance: 'person',
  findingId: 'room',
  selected: 'room',
  seat: 'room',
  pointedSeat: 'room',
  face: 'room',
  pointedFace: 'room',
  painted: 'room',
  view: 'run',
  refit: 'run',
  subject: 'run',
  shown: 'run',
  bandHz: 'run',
  notice: 'run',
} as const satisfies Readonly<Record<Field, 'file' | 'person' | 'room' | 'run'>>;

type RoomField = {
  [K in Field]: (typeof BELONGS_TO)[K] extends 'room' ? K : never;
}[Field];

/** The fields of a room as they are when it is opened; the type asks for every one of them. */
const FRESH_ROOM = {
  findingId: null,
  selected: [],
  seat: null,
  pointedSeat: null,
  face: null,
  pointedFace: null,
  painted: null,
} satisfies Pick<Session, RoomField>;

export const useSession = create<Session>((set, get) => {
  /** The edits of the gesture that the present step belongs to. */
  let going: readonly Edit[] = [];
  let openings = 0;
  const opened = ({ project, file }: DocumentState): DocumentState => {
    openings += 1;
    return { project, file: { ...file, opening: openings } };
  };
  const show = (work: history.History<DocumentState>): void => {
    const before = get();
    const same = before.work.present.state.project === work.present.state.project;
    const other = openingOf(before) !== work.present.state.file.opening;
    set({
      work,
      ...(other ? { ...FRESH_ROOM, refit: before.refit + 1 } : {}),
      ...(same ? {} : { analysis: analysisOf(work.present.state.project, before.units) }),
    });
  };
  return {
    work: history.startHistory(first),
    analysis: analysisOf(first.project, preferences.units),
    units: preferences.units,
    appearance: preferences.appearance,
    view: 'room',
    refit: 0,
    subject: null,
    shown: {},
    ...FRESH_ROOM,
    bandHz: 500,
    notice: null,
    change: (edit, gesture = null) => {
      const { work } = get();
      const { project, file } = work.present.state;
      // A gesture tells where it has got to, not how far it has come: it always starts from the room
      // that it found, so that a drag in and back leaves nothing behind.
      const base = history.baseOf(work, gesture).project;
      const goesOn = gesture !== null && gesture === work.present.gesture;
      const edits = gestureEdits(goesOn ? going : [], edit);
      const nameOf = (one: Edit): string => stepName(one, base, get().analysis.layout);
      const whole = asOne(edits, nameOf) ?? edit;
      const next = applyEdit(base, whole);
      if (next === project || (next === base && base === project)) return;
      if (next === base) {
        show(history.dropPresent(work));
        return;
      }
      const back = readBack(next);
      if (!back.ok) {
        const title = 'The change was not made: a room file cannot hold it';
        set({ notice: { tone: 'bad', title, lines: faultLines(back.faults) } });
        return;
      }
      going = edits;
      show(history.record(work, { project: next, file }, nameOf(whole), gesture));
    },
    begin: () => {
      const gesture: Gesture = {
        // Kept by the history alone, so that a drag can't measure from another room than its edits do.
        get base() {
          return history.baseOf(get().work, gesture).project;
        },
        takeBack: () => show(history.takeBack(get().work, gesture)),
        end: () => {
          const { work } = get();
          const ended = history.endGesture(work, gesture);
          if (ended !== work) set({ work: ended });
        },
      };
      return gesture;
    },
    load: (state, name) => {
      show(history.record(get().work, opened(state), name));
    },
    restore: (state, before) =>
      show(
        before
          ? history.startAfter(opened(before), opened(state), `open ${state.file.name}`)
          : history.startHistory(opened(state)),
      ),
    markSaved: (file, old = fileOf(get())) => {
      const { work } = get();
      // Every step since the room was opened belongs to the file it now has: after undo, saving must
      // not write to the one before.
      const now = { ...old, ...file };
      set({
        work: history.amendAll(work, (state) =>
          state.file === old ? { ...state, file: now } : state,
        ),
      });
    },
    undo: () => show(history.undo(get().work)),
    redo: () => show(history.redo(get().work)),
    setUnits: (units) => {
      keepPreferences({ units, appearance: get().appearance });
      set({ units, analysis: analysisOf(projectOf(get()), units) });
    },
    setAppearance: (appearance) => {
      keepPreferences({ units: get().units, appearance });
      showAppearance(appearance);
      set({ appearance });
    },
    setView: (view) => set(({ refit }) => ({ view, refit: refit + 1 })),
    setSubject: (subject) =>
      set((now) => ({
        subject,
        selected: withoutKind(now.selected, 'row'),
        pointedSeat: null,
        pointedFace: null,
        // Paint belongs to the subject that it was asked for in: leaving that takes it off.
        painted: subject === now.subject ? now.painted : null,
      })),
    show: (pane, what) => set(({ shown }) => ({ shown: { ...shown, [pane]: what } })),
    chooseFinding: (findingId) => set({ findingId }),
    select: (thing) => set(({ selected }) => ({ selected: withSelected(selected, thing) })),
    deselect: (kind) => set(({ selected }) => ({ selected: withoutKind(selected, kind) })),
    toggle: (thing) =>
      set(({ selected }) => ({
        selected: selected.some((one) => isSameThing(one, thing))
          ? withoutKind(selected, thing.kind)
          : withSelected(selected, thing),
      })),
    chooseSeat: (seat) => set({ seat }),
    pointSeat: (pointedSeat) => set({ pointedSeat }),
    chooseFace: (face) => set({ face }),
    pointFace: (pointedFace) => set({ pointedFace }),
    paint: (painted) => set({ painted }),
    chooseBand: (bandHz) => set({ bandHz }),
    notify: (notice) => set({ notice }),
  };
});

/** Name of a step, with a loudspeaker by its name rather than its label. */
function stepName(edit: Edit, project: Project, layout: Layout | null): string {
  const channel =
    edit.kind === 'speaker'
      ? layout?.channels.find((known) => known.label === edit.channel)
      : undefined;
  return channel ? `place of ${channel.name}` : editName(edit, project);
}

export const projectOf = (session: Pick<Session, 'work'>): Project =>
  session.work.present.state.project;
export const fileOf = (session: Pick<Session, 'work'>): FileState =>
  session.work.present.state.file;
/** Tells the opened room from another one, also where undo goes back to it. */
const openingOf = (session: Session): number | undefined => fileOf(session).opening;
export const isUnsaved = (session: Session): boolean => hasUnsaved(session.work.present.state);

/** The present project, for components. */
export const useProject = (): Project => useSession(projectOf);
export const useAnalysis = (): Analysis => useSession((session) => session.analysis);

/** Id of the chosen thing of a kind. */
export const useSelected = (kind: ThingKind): string | null =>
  useSession(({ selected }) => selectedId(selected, kind));

/** What `pane` shows, and how it is made to show something else; `first` until somebody has chosen. */
export function useShown<T extends string>(pane: string, first: T): [T, (what: T) => void] {
  const shown = useSession((session) => session.shown[pane]) ?? first;
  return [shown as T, (what) => useSession.getState().show(pane, what)];
}

/** Calls `forget` whenever another room is opened, by undo and redo too: for what belongs to the old one. */
export const onOtherRoom = (forget: () => void): (() => void) =>
  useSession.subscribe((now, before) => {
    if (openingOf(now) !== openingOf(before)) forget();
  });
