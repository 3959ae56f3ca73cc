/**
 * The window's side of the worker: start a task, hear of its progress, stop it. A worker that cannot
 * be started, that breaks, or that says nothing for long is ended, and every job in it fails with a
 * sentence; the next job gets a fresh one.
 */

import type { AnswerOf, RequestOf, SlowName } from '../../core/analysis/results';
import type { Project } from '../../core/room/project';
import type { FromWorker, ToWorker } from './messages';

export interface Job<N extends SlowName> {
  /** The result; null where the job was stopped. Rejects with a sentence where it failed. */
  readonly result: Promise<AnswerOf<N> | null>;
  readonly stop: () => void;
  /** Stop and let the result be what was found so far; null where the task gives nothing before its end. */
  readonly stopAndKeep: () => void;
}

interface Waiting {
  readonly onProgress: (share: number, interim?: unknown) => void;
  readonly settle: (message: FromWorker | null) => void;
}

/**
 * How long a worker that has work may say nothing, in looks of one second each. Looks are counted
 * rather than time: a computer that slept, or a page whose timers are held back, gives it no less.
 */
export const SILENT_LOOKS = 10;
export const LOOK_MS = 1000;

const AGAIN = 'Try again, or change the room first.';
export const NOT_STARTED = `The computation could not be started: the program's worker did not load. ${AGAIN}`;
export const BROKEN = `The computation broke off and was ended. ${AGAIN}`;
export const SILENT = `The computation gave no sign of life for ${SILENT_LOOKS} s and was ended. ${AGAIN}`;

let worker: Worker | null = null;
/** True where the present worker has said something: its script has been loaded. */
let heard = false;
let silentLooks = 0;
let watch: ReturnType<typeof setInterval> | undefined;
let jobs = 0;
const waiting = new Map<number, Waiting>();

/** End the worker; whatever waits for it fails with `sentence`. */
function end(sentence: string): void {
  worker?.terminate();
  worker = null;
  const left = [...waiting];
  for (const [job, { settle }] of left) settle({ kind: 'failed', job, sentence });
}

function theWorker(): Worker {
  if (worker) return worker;
  const made = new Worker(new URL('./compute.worker.ts', import.meta.url), { type: 'module' });
  heard = false;
  // What comes from a worker that was ended is not listened to.
  const heardFrom = <E extends Event>(listener: (event: E) => void) => {
    return (event: E): void => {
      if (made === worker) listener(event);
    };
  };
  made.addEventListener(
    'message',
    heardFrom(({ data }: MessageEvent<FromWorker>) => {
      heard = true;
      silentLooks = 0;
      const job = waiting.get(data.job);
      if (!job) return;
      if (data.kind === 'progress') job.onProgress(data.share, data.interim);
      else job.settle(data);
    }),
  );
  made.addEventListener(
    'error',
    heardFrom(() => end(heard ? BROKEN : NOT_STARTED)),
  );
  made.addEventListener(
    'messageerror',
    heardFrom(() => end(BROKEN)),
  );
  worker = made;
  return made;
}

/** Look every second whether the worker is still alive, for as long as something waits for it. */
function keepWatch(): void {
  if (watch !== undefined) return;
  silentLooks = 0;
  watch = setInterval(() => {
    silentLooks += 1;
    if (silentLooks >= SILENT_LOOKS) end(SILENT);
    if (waiting.size > 0) return;
    clearInterval(watch);
    watch = undefined;
  }, LOOK_MS);
}

/** Ask the worker for a result. */
export function compute<N extends SlowName>(
  name: N,
  project: Project,
  request: RequestOf<N>,
  onProgress: (share: number, interim?: AnswerOf<N>) => void = () => undefined,
): Job<N> {
  jobs += 1;
  const job = jobs;
  const send = (message: ToWorker): void => worker?.postMessage(message);
  const result = new Promise<AnswerOf<N> | null>((resolve, reject) => {
    const settle = (message: FromWorker | null): void => {
      waiting.delete(job);
      if (message === null) resolve(null);
      else if (message.kind === 'done') resolve(message.output as AnswerOf<N>);
      else if (message.kind === 'failed') reject(new Error(message.sentence));
    };
    waiting.set(job, {
      onProgress: (share, interim) => onProgress(share, interim as AnswerOf<N> | undefined),
      settle,
    });
  });
  if (waiting.size === 1) silentLooks = 0;
  try {
    theWorker();
    send({ kind: 'start', job, name, project, request });
    keepWatch();
  } catch {
    // There are no workers in this window, or this one takes nothing.
    end(NOT_STARTED);
  }
  return {
    result,
    stop: () => {
      const known = waiting.get(job);
      if (!known) return;
      send({ kind: 'stop', job, keep: false });
      known.settle(null);
    },
    stopAndKeep: () => {
      if (waiting.has(job)) send({ kind: 'stop', job, keep: true });
    },
  };
}
