/** The worker: runs one slice after another and listens in between, so that a job can be stopped. */

import type { FromWorker, TaskName, Tasks, ToWorker } from './messages';
import { beginTask } from './tasks';

const SLICE_MS = 12;
const stopped = new Set<number>();

const say = (message: FromWorker): void => self.postMessage(message);
const breathe = (): Promise<void> => new Promise((resolve) => setTimeout(resolve, 0));

async function run(job: number, name: TaskName, input: unknown): Promise<void> {
  try {
    const slices = beginTask(name, input as Tasks[TaskName]['input'] as never);
    let until = performance.now() + SLICE_MS;
    for (let step = slices.next(); ; step = slices.next()) {
      if (step.done) {
        say({ kind: 'done', job, output: step.value });
        return;
      }
      if (performance.now() < until) continue;
      say({ kind: 'progress', job, share: step.value });
      await breathe();
      if (stopped.delete(job)) return;
      until = performance.now() + SLICE_MS;
    }
  } catch (error) {
    const why = error instanceof Error ? error.message : String(error);
    say({ kind: 'failed', job, sentence: `The computation failed: ${why}` });
  }
}

self.addEventListener('message', ({ data }: MessageEvent<ToWorker>) => {
  if (data.kind === 'stop') stopped.add(data.job);
  else void run(data.job, data.name, data.input);
});
