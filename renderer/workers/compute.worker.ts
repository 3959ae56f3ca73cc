/** The worker: runs one slice after another and listens in between, so that a job can be stopped. */

import { finish } from '../../core/quantity/slices';
import { roomModes } from '../../core/room-modes/room-modes';
import { wholeEvaluator } from '../../core/analysis/slow-work';
import { RESULTS, type AnswerOf, type RequestOf, type SlowName } from '../../core/analysis/results';
import type { Project } from '../../core/room/project';
import type { FromWorker, ToWorker } from './messages';

const SLICE_MS = 12;
/** Jobs to stop, and whether what they have found is still wanted. */
const stopped = new Map<number, { readonly keep: boolean }>();
let begun = 0;
/** Keeps the modes as built with what only the worker needs of them. */
const results = wholeEvaluator();

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

/** An answer as it leaves the worker. */
function sent<N extends SlowName>(name: N, answer: AnswerOf<N>): AnswerOf<N> {
  const { sent: trimmed } = RESULTS[name] as { sent?: (whole: AnswerOf<N>) => AnswerOf<N> };
  return trimmed ? trimmed(answer) : answer;
}

async function run<N extends SlowName>(
  job: number,
  name: N,
  project: Project,
  request: RequestOf<N>,
): Promise<void> {
  try {
    const slices = results.begin(name, project, request);
    let until = performance.now() + SLICE_MS;
    for (let step = slices.next(); ; step = slices.next()) {
      if (step.done) {
        say({ kind: 'done', job, output: sent(name, step.value) });
        return;
      }
      const { value } = step;
      if (typeof value !== 'number') {
        say({ kind: 'progress', job, share: value.share, interim: sent(name, value.interim) });
      } else if (performance.now() < until) continue;
      else say({ kind: 'progress', job, share: value });
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
  void run(data.job, data.name, data.project, data.request as RequestOf<SlowName>);
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
