/** The window's side of the worker: start a task, hear of its progress, stop it. */

import type { FromWorker, TaskName, Tasks, ToWorker } from './messages';

export interface Job<N extends TaskName> {
  /** The result; null where the job was stopped. Rejects with a sentence where it failed. */
  readonly result: Promise<Tasks[N]['output'] | null>;
  readonly stop: () => void;
  /** Stop and let the result be what was found so far; null where the task gives nothing before its end. */
  readonly stopAndKeep: () => void;
}

interface Waiting {
  readonly onProgress: (share: number) => void;
  readonly settle: (message: FromWorker | null) => void;
}

let worker: Worker | null = null;
let jobs = 0;
const waiting = new Map<number, Waiting>();

function theWorker(): Worker {
  if (worker) return worker;
  worker = new Worker(new URL('./compute.worker.ts', import.meta.url), { type: 'module' });
  worker.addEventListener('message', ({ data }: MessageEvent<FromWorker>) => {
    const job = waiting.get(data.job);
    if (!job) return;
    if (data.kind === 'progress') job.onProgress(data.share);
    else job.settle(data);
  });
  worker.addEventListener('error', () => {
    for (const [job, { settle }] of waiting) {
      settle({ kind: 'failed', job, sentence: 'The computation could not be started.' });
    }
    worker = null;
  });
  return worker;
}

/** Start a task in the worker. */
export function compute<N extends TaskName>(
  name: N,
  input: Tasks[N]['input'],
  onProgress: (share: number) => void = () => undefined,
): Job<N> {
  jobs += 1;
  const job = jobs;
  const send = (message: ToWorker): void => theWorker().postMessage(message);
  const result = new Promise<Tasks[N]['output'] | null>((resolve, reject) => {
    const settle = (message: FromWorker | null): void => {
      waiting.delete(job);
      if (message === null) resolve(null);
      else if (message.kind === 'done') resolve(message.output as Tasks[N]['output']);
      else if (message.kind === 'failed') reject(new Error(message.sentence));
    };
    waiting.set(job, { onProgress, settle });
  });
  send({ kind: 'start', job, name, input });
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
