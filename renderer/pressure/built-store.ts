/**
 * Follows the room with the modes of its free space. A change is answered by a coarse solution at once,
 * as fast as they come, and by the fine one when the hand rests; the fine one under way is given up.
 */

import { useMemo } from 'react';
import { create } from 'zustand';
import { resultKey } from '../../core/analysis/evaluator';
import { MODE_LIMITS_HZ, type ModeLimitHz, type SolvedModes } from '../../core/analysis/results';
import type { NamedModes, NamedModesOutcome } from '../../core/analysis/named-modes';
import type { Project } from '../../core/room/project';
import { failureOf, followerOf, shareOf, type Answered } from '../state/jobs';
import { results } from '../state/results';
import { fileOf, projectOf, useProject, useSession } from '../state/session';
import { useKnown } from '../state/use-result';

/** After this long without a change the fine solution starts, ms. */
const REST_MS = 180;

const useFine = followerOf('roomModes');
const useCoarse = followerOf('coarseModes');

interface Newest {
  readonly quality: 'fine' | 'coarse';
  readonly answered: Answered<'roomModes'> | Answered<'coarseModes'>;
}

export interface BuiltStore {
  /** The modes are wanted to here. */
  readonly limitHz: ModeLimitHz;
  /** Newest answer, of whatever room; null where nothing fills the shell. */
  readonly newest: Newest | null;
  readonly stopped: boolean;
  readonly setLimit: (limitHz: ModeLimitHz) => void;
  readonly stop: () => void;
  readonly restart: () => void;
}

let rest: ReturnType<typeof setTimeout> | undefined;

function wakeUp(): void {
  clearTimeout(rest);
  rest = undefined;
}

export const useBuilt = create<BuiltStore>((set) => ({
  limitHz: MODE_LIMITS_HZ[0],
  newest: null,
  stopped: false,
  setLimit: (limitHz) => {
    set({ limitHz });
    solve();
  },
  stop: () => {
    drop();
    set({ stopped: true });
  },
  restart: () => solve(),
}));

function drop(): void {
  wakeUp();
  useCoarse.getState().stop();
  useFine.getState().stop();
}

function forget(): void {
  wakeUp();
  useCoarse.getState().forget();
  useFine.getState().forget();
  useBuilt.setState({ newest: null, stopped: false });
}

/** Start the fine solution of the present room, unless it is known. */
function solve(): void {
  drop();
  const project = projectOf(useSession.getState());
  if (project.room.solids.length === 0) {
    forget();
    return;
  }
  useBuilt.setState({ stopped: false });
  const request = { limitHz: useBuilt.getState().limitHz };
  if (!results.known('roomModes', project, request))
    void useFine.getState().start(project, request);
}

/** The room has changed. A coarse solution under way is let finish, or a fast hand would never see one. */
function follow(): void {
  const project = projectOf(useSession.getState());
  const { limitHz } = useBuilt.getState();
  if (project.room.solids.length === 0 || results.known('roomModes', project, { limitHz })) {
    solve();
    return;
  }
  wakeUp();
  useFine.getState().stop();
  useBuilt.setState({ stopped: false });
  useCoarse.getState().startNext(project, {});
}

useCoarse.subscribe(({ state }) => {
  wakeUp();
  if (state.kind !== 'done') return;
  useBuilt.setState({ newest: { quality: 'coarse', answered: state.answered } });
  rest = setTimeout(solve, REST_MS);
});

useFine.subscribe(({ state }) => {
  if (state.kind === 'done') {
    useBuilt.setState({ newest: { quality: 'fine', answered: state.answered } });
  }
});

/** Follow the session's room from now on. Returns the way to stop. */
export function followRoom(): () => void {
  let of = projectOf(useSession.getState());
  solve();
  const leave = useSession.subscribe((session, before) => {
    const other = fileOf(session).opening !== fileOf(before).opening;
    if (other) forget();
    const now = projectOf(session);
    if (!other && now.room === of.room && now.air === of.air) return;
    const same = hasSameSpace(now, of);
    of = now;
    if (other || !same) follow();
  });
  return () => {
    leave();
    drop();
  };
}

const hasSameSpace = (a: Project, b: Project): boolean =>
  resultKey('coarseModes', a, {}) === resultKey('coarseModes', b, {});

/** True while the modes as built are on their way. */
export const isSolving = (): boolean =>
  [useFine.getState().state, useCoarse.getState().state].some(({ kind }) => kind === 'running') ||
  rest !== undefined;

/** How far the modes as built are, and what came of them. */
export function useSolving(): {
  /** Share done of the fine solution; null while none is under way. */
  readonly share: number | null;
  readonly failure: string | null;
  readonly outcome: NamedModesOutcome | null;
  readonly quality: 'fine' | 'coarse';
} {
  const share = useFine(shareOf);
  const failed = useFine(failureOf);
  const failedCoarse = useCoarse(failureOf);
  const newest = useBuilt((store) => store.newest);
  const solved = useSolved();
  return {
    share,
    failure: failed ?? failedCoarse,
    outcome: solved?.outcome ?? newest?.answered.answer ?? null,
    quality: solved ? 'fine' : (newest?.quality ?? 'fine'),
  };
}

export interface Solved {
  readonly limitHz: ModeLimitHz;
  readonly outcome: NamedModesOutcome;
}

/** The fine outcome of the present room: to the limit that is wanted, else to the other; null without. */
export function useSolved(): Solved | null {
  const wanted = useBuilt((store) => store.limitHz);
  const other = otherLimit(wanted);
  const first = useKnown('roomModes', { limitHz: wanted });
  const second = useKnown('roomModes', { limitHz: other });
  if (first) return { limitHz: wanted, outcome: first };
  return second && { limitHz: other, outcome: second };
}

/** To which limit the fine modes of `project` are known, Hz; null where they are not. */
export function solvedToHz(project: Project): ModeLimitHz | null {
  const { limitHz } = useBuilt.getState();
  const known = [limitHz, otherLimit(limitHz)].find((limit) => {
    return results.known('roomModes', project, { limitHz: limit })?.ok;
  });
  return known ?? null;
}

const otherLimit = (limitHz: ModeLimitHz): ModeLimitHz =>
  MODE_LIMITS_HZ.find((limit) => limit !== limitHz) ?? limitHz;

/** The fine modes as built of the present room, which pressure is summed from; null without. */
export function useFineModes(): NamedModes | null {
  const solved = useSolved();
  return solved?.outcome.ok ? solved.outcome.built : null;
}

/** The modes that are meant when pressure is summed: the fine ones as built, else the plain shell's. */
export function useFineRequest(): SolvedModes | null {
  const solved = useSolved();
  return solved?.outcome.ok ? { result: 'roomModes', limitHz: solved.limitHz } : null;
}

/** The room that modes are shown for: the present one, or the one a moment ago under a hand that drags. */
export interface ShownBuilt {
  readonly built: NamedModes;
  readonly project: Project;
}

/** The newest modes where they are of the present room, or of the same fittings as they were just before. */
export function useShownModes(): ShownBuilt | null {
  const project = useProject();
  const fine = useFineModes();
  const newest = useBuilt((store) => store.newest?.answered ?? null);
  return useMemo(() => {
    if (fine) return { built: fine, project };
    if (!newest?.answer.ok) return null;
    const ids = ({ room }: Project): string => room.solids.map((solid) => solid.id).join();
    return ids(newest.project) === ids(project)
      ? { built: newest.answer.built, project: newest.project }
      : null;
  }, [fine, newest, project]);
}
