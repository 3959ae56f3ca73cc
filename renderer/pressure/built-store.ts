/**
 * Follows the room with the modes of its free space. A change is answered by a coarse solution at once,
 * as fast as they come, and by the fine one when the hand rests; the fine one under way is given up.
 */

import { create } from 'zustand';
import { spaceOf, type NamedModes, type NamedModesOutcome } from '../../core/analysis/named-modes';
import type { Project } from '../../core/room/project';
import { HIGHEST_LIMIT_HZ, MODES_LIMIT_HZ } from '../../core/room-modes/room-modes';
import { projectOf, useSession } from '../state/session';
import { compute, type Job } from '../workers/compute';

export const LIMITS_HZ = [MODES_LIMIT_HZ, HIGHEST_LIMIT_HZ] as const;
export type LimitHz = (typeof LIMITS_HZ)[number];

/** A hand that drags is followed up to here, Hz. */
const COARSE_LIMIT_HZ = 150;
/** After this long without a change the fine solution starts, ms. */
const REST_MS = 180;

export interface BuiltStore {
  readonly limitHz: LimitHz;
  /** Newest answer, and the room that it is of, whole and by its `spaceKey`. */
  readonly outcome: NamedModesOutcome | null;
  readonly project: Project | null;
  readonly key: string | null;
  readonly quality: 'fine' | 'coarse';
  /** Share done of the fine solution; null while none is under way. */
  readonly share: number | null;
  /** How long the last fine solution took, ms. */
  readonly ms: number | null;
  readonly stopped: boolean;
  readonly failure: string | null;
  readonly setLimit: (limitHz: LimitHz) => void;
  readonly stop: () => void;
  readonly restart: () => void;
}

/** Says which rooms have the same modes. */
export const spaceKey = (project: Project): string => JSON.stringify(spaceOf(project));

let job: { readonly running: Job<'built'>; readonly coarse: boolean } | null = null;
let changed = false;
let rest: ReturnType<typeof setTimeout> | undefined;

export const useBuilt = create<BuiltStore>((set) => ({
  limitHz: MODES_LIMIT_HZ,
  outcome: null,
  project: null,
  key: null,
  quality: 'fine',
  share: null,
  ms: null,
  stopped: false,
  failure: null,
  setLimit: (limitHz) => {
    set({ limitHz });
    begin('fine');
  },
  stop: () => {
    drop();
    set({ stopped: true, share: null });
  },
  restart: () => begin('fine'),
}));

function drop(): void {
  clearTimeout(rest);
  job?.running.stop();
  job = null;
  changed = false;
}

/** Start a solution of the present room; one under way is given up. */
function begin(quality: 'fine' | 'coarse'): void {
  drop();
  const project = projectOf(useSession.getState());
  if (project.room.solids.length === 0) {
    useBuilt.setState({
      outcome: null,
      project: null,
      key: null,
      share: null,
      stopped: false,
      failure: null,
    });
    return;
  }
  const coarse = quality === 'coarse';
  const limitHz = coarse ? COARSE_LIMIT_HZ : useBuilt.getState().limitHz;
  const key = spaceKey(project);
  const began = performance.now();
  useBuilt.setState({ stopped: false, failure: null, share: coarse ? null : 0 });
  const running = compute('built', { space: spaceOf(project), limitHz, quality }, (share) => {
    if (!coarse) useBuilt.setState({ share });
  });
  job = { running, coarse };
  running.result.then(
    (outcome) => {
      if (job?.running !== running || outcome === null) return;
      job = null;
      const ms = coarse ? {} : { ms: performance.now() - began };
      useBuilt.setState({ outcome, project, key, quality, share: null, ...ms });
      if (!coarse) return;
      if (changed) begin('coarse');
      else rest = setTimeout(() => begin('fine'), REST_MS);
    },
    (error: unknown) => {
      if (job?.running !== running) return;
      job = null;
      const failure = error instanceof Error ? error.message : String(error);
      useBuilt.setState({ share: null, failure });
    },
  );
}

/** The room has changed. A coarse solution under way is let finish, or a fast hand would never see one. */
function follow(): void {
  if (job?.coarse) changed = true;
  else begin('coarse');
}

/** Follow the session's room from now on. Returns the way to stop. */
export function followRoom(): () => void {
  let key = spaceKey(projectOf(useSession.getState()));
  begin('fine');
  const leave = useSession.subscribe((session, before) => {
    const [now, then] = [projectOf(session), projectOf(before)];
    if (now.room === then.room && now.air === then.air) return;
    const next = spaceKey(now);
    if (next === key) return;
    key = next;
    follow();
  });
  return () => {
    leave();
    drop();
  };
}

/** The room that modes are shown for: the present one, or the one a moment ago under a hand that drags. */
export interface ShownBuilt {
  readonly built: NamedModes;
  readonly project: Project;
}

/** The newest modes where they are of the present room, or of the same fittings as they were just before. */
export function shownBuilt(
  { outcome, project }: Pick<BuiltStore, 'outcome' | 'project'>,
  present: Project,
): ShownBuilt | null {
  if (!project || !outcome?.ok) return null;
  const ids = ({ room }: Project): string => room.solids.map((solid) => solid.id).join();
  return ids(project) === ids(present) ? { built: outcome.built, project } : null;
}

/** The fine modes as built of the present room, which pressure is summed from; null without. */
export function fineOf(store: BuiltStore, key: string): NamedModes | null {
  return store.quality === 'fine' ? builtOf(store, key) : null;
}

/** The modes as built of the present room, however coarse; null where they are not known (yet). */
export function builtOf(store: BuiltStore, key: string): NamedModes | null {
  return store.key === key && store.outcome?.ok ? store.outcome.built : null;
}
