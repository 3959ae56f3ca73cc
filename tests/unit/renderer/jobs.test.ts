import { beforeEach, describe, expect, it, vi } from 'vitest';
import type * as Jobs from '../../../renderer/state/jobs';
import type { results as Results } from '../../../renderer/state/results';
import type { Project } from '../../../core/room/project';
import { roomOf } from '../support/rooms';

/** What a job was asked for, and the ways to let it end. */
interface Asked {
  readonly project: Project;
  readonly say: (share: number, interim?: unknown) => void;
  readonly end: (answer: unknown) => void;
  readonly fail: (sentence: string) => void;
  stopped: 'no' | 'stop' | 'keep';
}

let asked: Asked[] = [];
vi.mock('../../../renderer/workers/compute', () => ({
  compute: (_name: string, project: Project, _request: unknown, say: Asked['say']) => {
    let [end, fail]: [Asked['end'], (error: Error) => void] = [() => undefined, () => undefined];
    const result = new Promise((resolve, reject) => {
      end = resolve;
      fail = reject;
    });
    const job: Asked = {
      project,
      say,
      end: (answer) => end(answer),
      fail: (sentence) => fail(new Error(sentence)),
      stopped: 'no',
    };
    asked.push(job);
    return {
      result,
      stop: () => {
        job.stopped = 'stop';
        end(null);
      },
      stopAndKeep: () => (job.stopped = 'keep'),
    };
  },
}));

const high = (height: number): Project => roomOf({ size: { width: 4, length: 5, height } });
const REQUEST = { columns: 2, rows: 2 };
const settled = (): Promise<void> => new Promise((resolve) => setTimeout(resolve));
const job = (n: number): Asked => {
  const found = asked[n];
  if (!found) throw new Error(`job ${n} was not asked for`);
  return found;
};

let jobs: typeof Jobs;
let results: typeof Results;
let follower: Jobs.UseJob<'proportionMap'>;
const state = () => follower.getState().state;
const start = (project: Project) => follower.getState().start(project, REQUEST);

beforeEach(async () => {
  vi.resetModules();
  asked = [];
  jobs = await import('../../../renderer/state/jobs');
  ({ results } = await import('../../../renderer/state/results'));
  follower = jobs.followerOf('proportionMap');
});

describe('the follower of a long computation', () => {
  it('tells its share, then the answer with the room that it is of', async () => {
    expect(state()).toEqual({ kind: 'idle' });
    const end = start(high(2.4));
    job(0).say(0.5);
    expect(state()).toMatchObject({ kind: 'running', share: 0.5, interim: null });
    job(0).end('map');
    const answered = await end;
    expect(answered).toMatchObject({ answer: 'map', isWhole: true, request: REQUEST });
    expect(state()).toEqual({ kind: 'done', answered });
    if (!answered) throw new Error('no answer');
    expect(jobs.isOf('proportionMap', answered, high(2.4))).toBe(true);
    expect(jobs.isOf('proportionMap', answered, high(2.5))).toBe(false);
    expect(results.known('proportionMap', high(2.4), REQUEST)).toBe('map');
    expect(results.known('proportionMap', high(2.5), REQUEST)).toBeNull();
  });

  it('gives up what is under way for a new start, and does not listen to it any more', async () => {
    const first = start(high(2.4));
    const second = start(high(2.5));
    expect(job(0).stopped).toBe('stop');
    job(0).say(0.9);
    expect(state()).toMatchObject({ kind: 'running', share: 0 });
    expect(await first).toBeNull();
    job(1).end('map');
    expect(await second).toMatchObject({ project: high(2.5) });
  });

  it('waits where it is asked to, and then computes the last wish alone', async () => {
    follower.getState().startNext(high(2.4), REQUEST);
    follower.getState().startNext(high(2.5), REQUEST);
    follower.getState().startNext(high(2.6), REQUEST);
    expect(asked).toHaveLength(1);
    expect(job(0).stopped).toBe('no');
    job(0).end('old');
    await settled();
    expect(asked).toHaveLength(2);
    expect(job(1).project).toEqual(high(2.6));
    // The answer before stays to be read, as what it is: of another room.
    const { newest } = follower.getState();
    expect(newest?.answer).toBe('old');
    expect(newest && jobs.isOf('proportionMap', newest, high(2.6))).toBe(false);
  });

  it('shows a first answer, which stays where the rest is stopped but is no whole one', () => {
    void start(high(2.4));
    job(0).say(0.2, 'first');
    expect(state()).toMatchObject({ kind: 'running', interim: { answer: 'first' } });
    job(0).say(0.6);
    expect(state()).toMatchObject({ share: 0.6, interim: { answer: 'first', isWhole: false } });
    follower.getState().stop();
    expect(state()).toEqual({ kind: 'idle' });
    expect(follower.getState().newest).toMatchObject({ answer: 'first', isWhole: false });
    expect(results.known('proportionMap', high(2.4), REQUEST)).toBeNull();
  });

  it('keeps what was found so far where it is asked to, without taking it for the whole', async () => {
    const end = start(high(2.4));
    follower.getState().stopAndKeep();
    expect(job(0).stopped).toBe('keep');
    job(0).end('part');
    expect(await end).toMatchObject({ answer: 'part', isWhole: false });
    expect(results.known('proportionMap', high(2.4), REQUEST)).toBeNull();
  });

  it('says why it failed, goes on with the next wish, and can try again', async () => {
    const end = start(high(2.4));
    job(0).fail('It broke.');
    expect(await end).toBeNull();
    expect(state()).toEqual({ kind: 'failed', sentence: 'It broke.' });
    expect(jobs.failureOf(follower.getState())).toBe('It broke.');
    follower.getState().again();
    expect(job(1).project).toEqual(high(2.4));
    follower.getState().startNext(high(2.5), REQUEST);
    job(1).fail('It broke.');
    await settled();
    expect(job(2).project).toEqual(high(2.5));
    expect(state()).toMatchObject({ kind: 'running' });
  });

  it('forgets every answer where another room is opened, that of a job under way too', async () => {
    const first = start(high(2.4));
    job(0).end('map');
    await first;
    const second = start(high(2.5));
    follower.getState().forget();
    job(1).end('late');
    expect(await second).toBeNull();
    expect(follower.getState()).toMatchObject({ state: { kind: 'idle' }, newest: null });
    follower.getState().again();
    expect(asked).toHaveLength(2);
  });
});
