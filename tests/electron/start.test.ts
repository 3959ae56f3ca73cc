import * as fs from 'node:fs/promises';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { runBrowserEdition } from '../../electron/start/browser-edition';
import { needsBuild } from '../../electron/start/build';
import { chooseEdition } from '../../electron/start/choose-edition';
import { runDesktop } from '../../electron/start/desktop-edition';
import { fetchRuntime, findRuntime, type FetchResult } from '../../electron/start/desktop-runtime';
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

  it('is not waited for beyond the limit', async () => {
    const slow = await put('slow.cjs', 'setTimeout(() => {}, 60000);');
    expect(await fetchRuntime(slow, 200)).toBe('too-slow');
    expect(await fetchRuntime(await put('bad.cjs', 'process.exit(1);'), 5_000)).toBe('failed');
    expect(await fetchRuntime(await put('good.cjs', ''), 5_000)).toBe('fetched');
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
    expect(said).toEqual([expect.stringContaining('up to 60 seconds')]);
  });

  it.each(['failed', 'too-slow', 'fetched'] as const)(
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
      stopped,
    });
    expect(told).toHaveLength(1);
    expect(told[0]).toMatch(/browser edition.* http:\/\/127\.0\.0\.1:\d+\/\?token=[\w-]+$/);
    expect(answer).toMatchObject({ status: 303 });
    const { port } = await recall(temp.at());
    expect(told[0]).toContain(`:${port}/`);
  });

  it('is opened by the usual command of each system', () => {
    expect(openCommand('http://x', 'linux').program).toBe('xdg-open');
    expect(openCommand('http://x', 'darwin').program).toBe('open');
    expect(openCommand('http://x', 'win32').args.at(-1)).toBe('"http://x"');
  });
});
