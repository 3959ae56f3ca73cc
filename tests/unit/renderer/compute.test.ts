import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import type { compute as Compute } from '../../../renderer/workers/compute';
import { roomOf } from '../support/rooms';
import type { FromWorker, ToWorker } from '../../../renderer/workers/messages';

/** A worker that does as it is told by the test. */
class FakeWorker extends EventTarget {
  static made: FakeWorker[] = [];
  readonly got: ToWorker[] = [];
  ended = false;
  constructor() {
    super();
    FakeWorker.made.push(this);
  }
  postMessage(message: ToWorker): void {
    this.got.push(message);
  }
  terminate(): void {
    this.ended = true;
  }
  say(message: FromWorker): void {
    this.dispatchEvent(new MessageEvent('message', { data: message }));
  }
  /** Number of the newest job that it was given. */
  get job(): number {
    return this.got.findLast(({ kind }) => kind === 'start')?.job ?? 0;
  }
}

const REQUEST = { columns: 2, rows: 2 };
const newest = (): FakeWorker => {
  const worker = FakeWorker.made.at(-1);
  if (!worker) throw new Error('no worker was made');
  return worker;
};

let compute: typeof Compute;

beforeEach(async () => {
  vi.useFakeTimers();
  vi.resetModules();
  FakeWorker.made = [];
  vi.stubGlobal('Worker', FakeWorker);
  ({ compute } = await import('../../../renderer/workers/compute'));
});

afterEach(() => {
  vi.useRealTimers();
  vi.unstubAllGlobals();
});

/** How a job ended: its result, or the sentence that it failed with. */
const endOf = (job: { readonly result: Promise<unknown> }): Promise<unknown> =>
  job.result.catch((error: unknown) => (error as Error).message);

describe('a worker that has work', () => {
  it('and says nothing for 10 s is ended, and all that waits for it fails with a sentence', async () => {
    const ends = [
      endOf(compute('proportionMap', roomOf(), REQUEST)),
      endOf(compute('proportionMap', roomOf(), REQUEST)),
    ];
    const first = newest();
    vi.advanceTimersByTime(9_500);
    expect(first.ended).toBe(false);
    vi.advanceTimersByTime(1_000);
    expect(first.ended).toBe(true);
    for (const end of ends) expect(await end).toMatch(/no sign of life for 10 s.*Try again/);
  });

  it('is replaced by a fresh one for the next job', async () => {
    const lost = endOf(compute('proportionMap', roomOf(), REQUEST));
    vi.advanceTimersByTime(11_000);
    await lost;
    const next = endOf(compute('proportionMap', roomOf(), REQUEST));
    expect(FakeWorker.made).toHaveLength(2);
    newest().say({ kind: 'done', job: newest().job, output: 'map' });
    expect(await next).toBe('map');
    // Nothing waits any more: the second worker may rest for as long as it likes.
    vi.advanceTimersByTime(60_000);
    expect(newest().ended).toBe(false);
  });

  it('and goes on telling how far it is may take as long as it needs', async () => {
    const shares: number[] = [];
    const end = endOf(compute('proportionMap', roomOf(), REQUEST, (share) => shares.push(share)));
    for (let turn = 1; turn <= 30; turn++) {
      vi.advanceTimersByTime(9_000);
      newest().say({ kind: 'progress', job: newest().job, share: turn / 30 });
    }
    newest().say({ kind: 'done', job: newest().job, output: 'map' });
    expect(await end).toBe('map');
    expect(shares).toHaveLength(30);
    expect(FakeWorker.made).toHaveLength(1);
  });

  it('gets its full time again after a rest', () => {
    compute('proportionMap', roomOf(), REQUEST).stop();
    vi.advanceTimersByTime(8_000);
    void endOf(compute('proportionMap', roomOf(), REQUEST));
    vi.advanceTimersByTime(9_500);
    expect(newest().ended).toBe(false);
    vi.advanceTimersByTime(1_000);
    expect(newest().ended).toBe(true);
  });

  it('and keeps quiet about a stopped job does not hold up the next', async () => {
    const stopped = compute('proportionMap', roomOf(), REQUEST);
    stopped.stop();
    expect(await stopped.result).toBeNull();
    const next = endOf(compute('proportionMap', roomOf(), REQUEST));
    vi.advanceTimersByTime(11_000);
    expect(await next).toMatch(/no sign of life/);
  });
});

describe('a worker that breaks', () => {
  it('before its first word could not be started; it is ended and the next job gets another', async () => {
    const end = endOf(compute('proportionMap', roomOf(), REQUEST));
    const first = newest();
    first.dispatchEvent(new Event('error'));
    expect(await end).toMatch(/could not be started.*Try again/);
    expect(first.ended).toBe(true);
    void endOf(compute('proportionMap', roomOf(), REQUEST));
    expect(FakeWorker.made).toHaveLength(2);
  });

  it('later broke off', async () => {
    const end = endOf(compute('proportionMap', roomOf(), REQUEST));
    newest().say({ kind: 'progress', job: newest().job, share: 0.5 });
    newest().dispatchEvent(new Event('error'));
    expect(await end).toMatch(/broke off.*Try again/);
    expect(newest().ended).toBe(true);
  });

  it('is not listened to once it was ended', async () => {
    const lost = endOf(compute('proportionMap', roomOf(), REQUEST));
    const first = newest();
    first.dispatchEvent(new Event('error'));
    await lost;
    const next = endOf(compute('proportionMap', roomOf(), REQUEST));
    first.dispatchEvent(new Event('error'));
    first.say({ kind: 'done', job: newest().job, output: 'old' });
    newest().say({ kind: 'done', job: newest().job, output: 'new' });
    expect(await next).toBe('new');
  });
});

describe('a window that has no workers', () => {
  it.each([
    ['none at all', undefined],
    [
      'one that throws',
      class {
        constructor() {
          throw new Error('refused');
        }
      },
    ],
  ])('(%s) says so for each job, and tries again with the next', async (_which, Broken) => {
    vi.stubGlobal('Worker', Broken);
    expect(await endOf(compute('proportionMap', roomOf(), REQUEST))).toMatch(
      /could not be started/,
    );
    vi.stubGlobal('Worker', FakeWorker);
    const next = endOf(compute('proportionMap', roomOf(), REQUEST));
    newest().say({ kind: 'done', job: newest().job, output: 'map' });
    expect(await next).toBe('map');
  });
});
