/**
 * The one follower of long work: a slow result is asked of the worker, its share is told, its answer kept
 * with what it is of. The newest answer stays to be read while the next one is computed; `isOf` says
 * whether it is one of the present room.
 */

import { create, type StoreApi, type UseBoundStore } from 'zustand';
import { resultKey } from '../../core/analysis/evaluator';
import type { AnswerOf, RequestOf, SlowName } from '../../core/analysis/results';
import type { Project } from '../../core/room/project';
import { compute, type Job } from '../workers/compute';
import { results } from './results';

export interface Answered<N extends SlowName> {
  readonly answer: AnswerOf<N>;
  /** What it is of. */
  readonly key: string;
  readonly project: Project;
  readonly request: RequestOf<N>;
  /** From the start of the work to this answer, ms. */
  readonly ms: number;
  /** False for a first answer, and for one that was cut short. */
  readonly isWhole: boolean;
}

export type JobState<N extends SlowName> =
  | { readonly kind: 'idle' }
  | { readonly kind: 'running'; readonly share: number; readonly interim: Answered<N> | null }
  | { readonly kind: 'done'; readonly answered: Answered<N> }
  | { readonly kind: 'failed'; readonly sentence: string };

export interface JobStore<N extends SlowName> {
  readonly state: JobState<N>;
  /** The newest answer, a first one too; it outlives stops, failures and the next start. */
  readonly newest: Answered<N> | null;
  /** Start; what is under way is given up. The answer, or null where it was given up or failed. */
  readonly start: (project: Project, request: RequestOf<N>) => Promise<Answered<N> | null>;
  /** Start once what is under way has ended; of several wishes the last one counts. */
  readonly startNext: (project: Project, request: RequestOf<N>) => void;
  /** Start what was started last once more. */
  readonly again: () => void;
  /** Give up; a first answer stays. */
  readonly stop: () => void;
  /** Give up and keep what was found so far, where the work can tell. */
  readonly stopAndKeep: () => void;
  /** Stop, and forget every answer: they are of another room. */
  readonly forget: () => void;
}

interface Wish<N extends SlowName> {
  readonly project: Project;
  readonly request: RequestOf<N>;
}

export type UseJob<N extends SlowName> = UseBoundStore<StoreApi<JobStore<N>>>;

/** True where the answer would be the same for `project`. */
export const isOf = <N extends SlowName>(
  name: N,
  { key, request }: Answered<N>,
  project: Project,
): boolean => resultKey(name, project, request) === key;

/** A follower of the result `name`. */
export function followerOf<N extends SlowName>(name: N): UseJob<N> {
  let running: Job<N> | null = null;
  let isCut = false;
  let last: Wish<N> | null = null;
  let next = null as Wish<N> | null;

  return create<JobStore<N>>((set) => {
    const start = async (project: Project, request: RequestOf<N>): Promise<Answered<N> | null> => {
      running?.stop();
      next = null;
      isCut = false;
      last = { project, request };
      const began = performance.now();
      const key = resultKey(name, project, request);
      const answered = (answer: AnswerOf<N>, isWhole: boolean): Answered<N> => {
        return { answer, key, project, request, isWhole, ms: performance.now() - began };
      };
      set({ state: { kind: 'running', share: 0, interim: null } });
      const job: Job<N> = compute(name, project, request, (share, first) => {
        if (running !== job) return;
        if (first === undefined) {
          set(({ state }) => ({
            state: { kind: 'running', share, interim: interimOf(state) },
          }));
        } else {
          const interim = answered(first, false);
          set({ state: { kind: 'running', share, interim }, newest: interim });
        }
      });
      running = job;
      const [state, sentence] = await job.result.then(
        (answer) => [answer, null] as const,
        (error: unknown) => [null, error instanceof Error ? error.message : String(error)] as const,
      );
      if (running !== job) return null;
      running = null;
      const done = state === null ? null : answered(state, !isCut);
      if (done) {
        if (done.isWhole) results.keep(name, key, done.answer);
        set({ state: { kind: 'done', answered: done }, newest: done });
      } else {
        set({ state: sentence === null ? { kind: 'idle' } : { kind: 'failed', sentence } });
      }
      const wish = next as Wish<N> | null;
      if (wish) void start(wish.project, wish.request);
      return done;
    };
    const stop = (): void => {
      running?.stop();
      running = null;
      next = null;
      set({ state: { kind: 'idle' } });
    };
    return {
      state: { kind: 'idle' },
      newest: null,
      start,
      startNext: (project, request) => {
        if (running) next = { project, request };
        else void start(project, request);
      },
      again: () => {
        if (last) void start(last.project, last.request);
      },
      stop,
      stopAndKeep: () => {
        isCut = true;
        running?.stopAndKeep();
      },
      forget: () => {
        stop();
        last = null;
        set({ newest: null });
      },
    };
  });
}

const interimOf = <N extends SlowName>(state: JobState<N>): Answered<N> | null =>
  state.kind === 'running' ? state.interim : null;

/** Share done; null while nothing runs. */
export const shareOf = <N extends SlowName>({ state }: JobStore<N>): number | null =>
  state.kind === 'running' ? state.share : null;

/** Why there is no answer; null where none failed. */
export const failureOf = <N extends SlowName>({ state }: JobStore<N>): string | null =>
  state.kind === 'failed' ? state.sentence : null;
