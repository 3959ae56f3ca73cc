import * as fs from 'node:fs/promises';
import path from 'node:path';
import { PassThrough } from 'node:stream';
import { describe, expect, it, vi } from 'vitest';
import { runBrowserEdition } from '../../electron/start/browser-edition';
import { needsBuild } from '../../electron/start/build';
import { chooseEdition } from '../../electron/start/choose-edition';
import { desktopEnvironment, runDesktop } from '../../electron/start/desktop-edition';
import { fetchRuntime, findRuntime, type FetchResult } from '../../electron/start/desktop-runtime';
import { enterKey } from '../../electron/start/enter-key';
import { openCommand } from '../../electron/start/open-browser';
import { parseOptions } from '../../electron/start/options';
import { failedToday, recall, remember } from '../../electron/start/start-memory';
import { freshFolder } from './support/temp-folder';

const temp = freshFolder();

async function put(name: string, text = '', mode = 0o644): Promise<string> {
  const file = temp.at(...name.split('/'));
  await fs.mkdir(path.dirname(file), { recursive: true });
  await fs.writeFile(file, text, { mode });
  return file;
}

const desktop = (env: Record<string, string> = { DISPLAY: ':0' }) => ({
  root: temp.at(),
  env,
  platform: 'linux' as const,
  node: 'v22.12.0',
  userId: 1000,
});

async function putRuntime(version = '45.0.0'): Promise<string> {
  await put('node_modules/electron/package.json', '{"version": "45.0.0"}');
  await put('node_modules/electron/path.txt', 'electron');
  await put('node_modules/electron/dist/version', version);
  return put('node_modules/electron/dist/electron');
}

describe('the options of the start', () => {
  it('are none, --browser, --no-open and --help', () => {
    const options = { browser: false, open: true, help: false };
    expect(parseOptions([])).toEqual({ ok: true, options });
    expect(parseOptions(['--browser', '--no-open'])).toEqual({
      ok: true,
      options: { browser: true, open: false, help: false },
    });
    expect(parseOptions(['-h'])).toEqual({ ok: true, options: { ...options, help: true } });
  });

  it.each([['--brwser'], ['den.room.json'], ['--browser=yes'], ['--port', '80']])(
    'refuse %s by a sentence',
    (...args) => {
      expect(parseOptions(args)).toEqual({
        ok: false,
        sentence: `Unknown option "${args[0]}". Known are --browser, --no-open and --help.`,
      });
    },
  );
});

describe('the build before the start', () => {
  it('is needed where a result is missing or a source is newer', async () => {
    expect(await needsBuild(temp.at())).toBe(true);
    const source = await put('core/air/medium.ts');
    const results = ['out/main/main.js', 'out/preload/preload.cjs', 'out/renderer/index.html'];
    for (const result of results) await put(result);
    expect(await needsBuild(temp.at())).toBe(false);
    const later = new Date(Date.now() + 10_000);
    await fs.utimes(source, later, later);
    expect(await needsBuild(temp.at())).toBe(true);
    for (const result of results) await fs.utimes(temp.at(result), later, later);
    expect(await needsBuild(temp.at())).toBe(false);
    await fs.rm(temp.at('out/preload/preload.cjs'));
    expect(await needsBuild(temp.at())).toBe(true);
  });
});

describe('the desktop runtime', () => {
  it('is found where its package puts it, if it is of the same version', async () => {
    expect(findRuntime(desktop())).toBeNull();
    const file = await putRuntime();
    expect(findRuntime(desktop())).toBe(file);
    await putRuntime('44.9.9');
    expect(findRuntime(desktop())).toBeNull();
  });

  it('is found where the environment says it is', async () => {
    const file = await put('elsewhere/electron');
    const env = { ELECTRON_OVERRIDE_DIST_PATH: temp.at('elsewhere') };
    expect(findRuntime(desktop(env))).toBe(file);
    expect(findRuntime({ ...desktop(env), platform: 'win32' })).toBeNull();
  });

  const watch = { stallMs: 5_000, lookMs: 20, onBytes: () => undefined };

  it('is waited for as long as bytes arrive, however long that takes', async () => {
    const slow = await put(
      'slow.cjs',
      `const fs = require('node:fs'), path = require('node:path'), os = require('node:os');
       const file = path.join(os.tmpdir(), 'part.zip');
       let left = 12;
       const timer = setInterval(() => {
         fs.appendFileSync(file, 'x'.repeat(1000));
         if (--left === 0) { clearInterval(timer); }
       }, 250);`,
    );
    const told: number[] = [];
    const began = Date.now();
    const result = await fetchRuntime(slow, {
      stallMs: 1_500,
      lookMs: 50,
      onBytes: (bytes) => told.push(bytes),
    });
    expect(result).toBe('fetched');
    expect(Date.now() - began).toBeGreaterThan(2_500);
    expect(told.length).toBeGreaterThan(3);
    expect(told).toEqual([...told].sort((a, b) => a - b));
    expect(told.at(-1)).toBeLessThanOrEqual(12_000);
  });

  it('is given up when nothing more comes, and leaves nothing in the temporary folder', async () => {
    const stuck = await put(
      'stuck.cjs',
      `const fs = require('node:fs'), path = require('node:path'), os = require('node:os');
       fs.writeFileSync(path.join(os.tmpdir(), 'part.zip'), 'x');
       fs.writeFileSync(${JSON.stringify(temp.at('where'))}, os.tmpdir());
       setTimeout(() => {}, 60000);`,
    );
    expect(await fetchRuntime(stuck, { ...watch, stallMs: 600 })).toBe('stopped-coming');
    const folder = await fs.readFile(temp.at('where'), 'utf8');
    await expect(fs.stat(folder)).rejects.toThrow();
  });

  it('that could not be fetched is told apart from one that was', async () => {
    expect(await fetchRuntime(await put('bad.cjs', 'process.exit(1);'), watch)).toBe('failed');
    expect(await fetchRuntime(await put('good.cjs', ''), watch)).toBe('fetched');
  });

  it('starts without what is meant for Node', async () => {
    expect(
      desktopEnvironment({
        NODE_OPTIONS: '--require ./own.cjs',
        node_extra_ca_certs: 'x',
        ELECTRON_RUN_AS_NODE: '1',
        PATH: '/bin',
        DISPLAY: ':0',
      }),
    ).toEqual({ PATH: '/bin', DISPLAY: ':0' });
    const look = await put(
      'look',
      '#!/bin/sh\ntest -z "$NODE_OPTIONS$ELECTRON_RUN_AS_NODE"\n',
      0o755,
    );
    process.env['ELECTRON_RUN_AS_NODE'] = '1';
    const before = process.env['NODE_OPTIONS'];
    process.env['NODE_OPTIONS'] = '--no-warnings';
    try {
      expect(await runDesktop(look, temp.at())).toEqual({ kind: 'ended', exitCode: 0 });
    } finally {
      delete process.env['ELECTRON_RUN_AS_NODE'];
      if (before === undefined) delete process.env['NODE_OPTIONS'];
      else process.env['NODE_OPTIONS'] = before;
    }
  });

  it('that ends badly at once is told apart from one that was closed', async () => {
    const bad = await put('bad', '#!/bin/sh\nexit 133\n', 0o755);
    expect(await runDesktop(bad, temp.at())).toMatchObject({ kind: 'did-not-start' });
    const good = await put('good', '#!/bin/sh\nexit 0\n', 0o755);
    expect(await runDesktop(good, temp.at())).toEqual({ kind: 'ended', exitCode: 0 });
    expect(await runDesktop(temp.at('none'), temp.at())).toMatchObject({ kind: 'did-not-start' });
  });
});

describe('the edition that is started', () => {
  const options = { browser: false, open: true, help: false };
  const fetched: string[] = [];
  const fetching =
    (result: FetchResult, then: () => Promise<unknown> = () => Promise.resolve()) =>
    async (installer: string): Promise<FetchResult> => {
      fetched.push(installer);
      await then();
      return result;
    };
  const never = (): Promise<never> => Promise.reject(new Error('must not fetch'));
  const quiet = (): void => undefined;

  it('is the browser one where it was asked for, or where a desktop program cannot run', async () => {
    await putRuntime();
    const choose = (asked: boolean, surroundings: Parameters<typeof findRuntime>[0]) =>
      chooseEdition({ ...options, browser: asked }, surroundings, quiet, never);
    expect(await choose(true, desktop())).toMatchObject({ kind: 'browser' });
    expect(await choose(false, desktop({}))).toEqual({
      kind: 'browser',
      reason: 'there is no display',
    });
    expect(await choose(false, { ...desktop(), userId: 0 })).toMatchObject({ kind: 'browser' });
    expect(await choose(false, desktop({ WAYLAND_DISPLAY: 'wayland-0' }))).toMatchObject({
      kind: 'desktop',
    });
  });

  it('is the browser one, at once, where fetching is forbidden', async () => {
    await put('node_modules/electron/install.js');
    const edition = await chooseEdition(
      options,
      desktop({ DISPLAY: ':0', ROOMWRIGHT_OFFLINE: '1' }),
      quiet,
      never,
    );
    expect(edition).toMatchObject({ kind: 'browser' });
  });

  it('is the desktop one after the runtime was fetched, and says that it fetches', async () => {
    const installer = await put('node_modules/electron/install.js');
    const said: string[] = [];
    const fetch = fetching('fetched', () => putRuntime());
    const edition = await chooseEdition(options, desktop(), (line) => said.push(line), fetch);
    expect(edition).toMatchObject({ kind: 'desktop' });
    expect(fetched.at(-1)).toBe(installer);
    expect(said).toEqual([expect.stringContaining('Fetching the desktop runtime')]);
  });

  it.each(['failed', 'stopped-coming', 'fetched'] as const)(
    'is the browser one where nothing came (%s), and the day is not spent on trying',
    async (result) => {
      await put('node_modules/electron/install.js');
      const first = await chooseEdition(options, desktop(), quiet, fetching(result));
      expect(first).toMatchObject({ kind: 'browser' });
      const second = await chooseEdition(options, desktop(), quiet, never);
      expect(second).toMatchObject({
        kind: 'browser',
        reason: expect.stringContaining('earlier today') as string,
      });
    },
  );

  it('says how much has come, now and then, and which Node the installer asks for', async () => {
    await put('node_modules/electron/install.js');
    const said: string[] = [];
    vi.useFakeTimers({ toFake: ['Date'] });
    try {
      const edition = await chooseEdition(
        options,
        { ...desktop(), node: 'v20.19.4' },
        (line) => said.push(line),
        (_installer, { onBytes }) => {
          for (let second = 1; second <= 11; second++) {
            vi.advanceTimersByTime(1_000);
            onBytes(second * 4e6);
          }
          return Promise.resolve('failed');
        },
      );
      expect(said.slice(1)).toEqual(['  20 MB so far', '  40 MB so far']);
      expect(edition).toMatchObject({
        reason: expect.stringContaining('asks for Node 22.12 or newer, this is v20.19.4') as string,
      });
    } finally {
      vi.useRealTimers();
    }
  });

  it('tries again the next day', () => {
    const hour = 3_600_000;
    expect(failedToday({}, 0)).toBe(false);
    expect(failedToday({ fetchFailedAtMs: 0 }, 23 * hour)).toBe(true);
    expect(failedToday({ fetchFailedAtMs: 0 }, 25 * hour)).toBe(false);
  });
});

describe('what a start remembers', () => {
  it('adds to what was there, and takes a broken memory for none', async () => {
    expect(await recall(temp.at())).toEqual({});
    await remember(temp.at(), { port: 40_000 });
    await remember(temp.at(), { fetchFailedAtMs: 5 });
    expect(await recall(temp.at())).toEqual({ port: 40_000, fetchFailedAtMs: 5 });
    await put('node_modules/.cache/roomwright/start.json', '{"port": 80}');
    expect(await recall(temp.at())).toEqual({});
  });
});

describe('the browser edition', () => {
  it('tells one line that ends with the address, and serves until it is stopped', async () => {
    await put('out/renderer/index.html', '<!doctype html>');
    const told: string[] = [];
    let stop = (): void => undefined;
    const stopped = new Promise<void>((resolve) => {
      stop = resolve;
    });
    let answer: Response | null = null;
    const tell = (line: string): void => {
      told.push(line);
      void fetch(line.split(' ').at(-1) ?? '', { redirect: 'manual' })
        .then((response) => {
          answer = response;
        })
        .finally(stop);
    };
    await runBrowserEdition({
      root: temp.at(),
      open: false,
      say: (line) => told.push(line),
      tell,
      enterKey: null,
      stopped,
    });
    expect(told).toHaveLength(1);
    expect(told[0]).toMatch(/browser edition.* http:\/\/127\.0\.0\.1:\d+\/\?token=[\w-]+$/);
    expect(answer).toMatchObject({ status: 303 });
    const { port } = await recall(temp.at());
    expect(told[0]).toContain(`:${port}/`);
  });

  /** Runs the edition while `visit` looks at it; what it told and said comes back. */
  async function served(
    visit: (told: readonly string[], press: () => void) => Promise<void>,
  ): Promise<{ told: string[]; said: string[] }> {
    await put('out/renderer/index.html', '<!doctype html>');
    const [told, said]: string[][] = [[], []];
    let press = (): void => undefined;
    let stop = (): void => undefined;
    const stopped = new Promise<void>((resolve) => (stop = resolve));
    const running = runBrowserEdition({
      root: temp.at(),
      open: false,
      say: (line) => said?.push(line),
      tell: (line) => told?.push(line),
      enterKey: (pressed) => {
        press = pressed;
        return () => undefined;
      },
      stopped,
    });
    await vi.waitFor(() => expect(told).toHaveLength(1));
    await visit(told ?? [], () => press());
    stop();
    await running;
    return { told: told ?? [], said: said ?? [] };
  }
  const addressIn = (line: string | undefined): string => line?.split(' ').at(-1) ?? '';
  const statusOf = async (address: string): Promise<number> =>
    (await fetch(address, { redirect: 'manual' })).status;

  it('in a terminal spends the key in the address on use; Enter prints a fresh one', async () => {
    const { told, said } = await served(async (lines, press) => {
      const first = addressIn(lines[0]);
      expect(await statusOf(first)).toBe(303);
      expect(await statusOf(first)).toBe(403);
      press();
      const second = addressIn(lines[1]);
      expect(second).not.toBe(first);
      expect(await statusOf(second)).toBe(303);
      expect(await statusOf(second)).toBe(403);
    });
    expect(told).toHaveLength(2);
    expect(said).toEqual([expect.stringContaining('Press Enter for a fresh one')]);
  });

  it('says that its port is taken, and what follows', async () => {
    await served(async () => {
      const { port } = await recall(temp.at());
      const { said, told } = await served(() => Promise.resolve());
      expect(addressIn(told[0])).not.toContain(`:${port}/`);
      const line = said.find((one) => one.startsWith(`Port ${port}`));
      expect(line).toMatch(/is taken.*rooms that the browser kept.*do not show here.*start again/);
      expect(line).not.toContain('\n');
      // The next start asks for the same port again.
      expect((await recall(temp.at())).port).toBe(port);
    });
  });

  it('has an Enter key only in a terminal that is its own to read', () => {
    const terminal = Object.assign(new PassThrough(), { isTTY: true }) as never;
    const pipe = new PassThrough() as never;
    expect(enterKey(pipe, () => true)).toBeNull();
    expect(enterKey(terminal, () => false)).toBeNull();
    const key = enterKey(terminal, () => true);
    let presses = 0;
    const leave = key?.(() => (presses += 1));
    const input = terminal as PassThrough;
    input.emit('data', Buffer.from('\n'));
    input.emit('data', Buffer.from('x'));
    leave?.();
    input.emit('data', Buffer.from('\n'));
    expect(presses).toBe(1);
  });

  it('is opened by the usual command of each system', () => {
    expect(openCommand('http://x', 'linux').program).toBe('xdg-open');
    expect(openCommand('http://x', 'darwin').program).toBe('open');
    expect(openCommand('http://x', 'win32').args.at(-1)).toBe('"http://x"');
  });
});
