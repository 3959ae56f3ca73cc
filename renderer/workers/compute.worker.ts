/** The worker: runs one slice after another and listens in between, so that a job can be stopped. */

import { finish } from '../../core/quantity/slices';
import { roomModes } from '../../core/room-modes/room-modes';
import type { FromWorker, TaskName, Tasks, ToWorker } from './messages';
import { beginTask } from './tasks';

const SLICE_MS = 12;
/** Jobs to stop, and whether what they have found is still wanted. */
const stopped = new Map<number, { readonly keep: boolean }>();
let begun = 0;

const say = (message: FromWorker): void => self.postMessage(message);

/** A turn of the event loop. Not by a timer: nested timers wait 4 ms each. */
const channel = new MessageChannel();
const resting: (() => void)[] = [];
channel.port1.onmessage = () => resting.shift()?.();
const breathe = (): Promise<void> =>
  new Promise((resolve) => {
    resting.push(resolve);
    channel.port2.postMessage(null);
  });

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
      const asked = stopped.get(job);
      if (asked) {
        stopped.delete(job);
        if (asked.keep) {
          const last = slices.next(true);
          say({ kind: 'done', job, output: last.done ? last.value : null });
        }
        return;
      }
      until = performance.now() + SLICE_MS;
    }
  } catch (error) {
    const why = error instanceof Error ? error.message : String(error);
    say({ kind: 'failed', job, sentence: `The computation failed: ${why}` });
  }
}

self.addEventListener('message', ({ data }: MessageEvent<ToWorker>) => {
  if (data.kind === 'stop') {
    stopped.set(data.job, { keep: data.keep });
    return;
  }
  begun += 1;
  void run(data.job, data.name, data.input);
});

/** Code that has run before runs several times faster: solve small rooms until the first job comes. */
async function warmUp(): Promise<void> {
  const soffit = { min: [0, 0, 2.1], max: [0.6, 3, 2.4] } as const;
  for (let turn = 0; turn < 6 && begun === 0; turn++) {
    const size = { width: 2.4 + 0.1 * turn, length: 3, height: 2.4 };
    finish(roomModes({ size, solids: [soffit], speedMS: 343 }, { limitHz: 180 }));
    await breathe();
  }
}

void warmUp();
