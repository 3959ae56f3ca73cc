import { execFile, spawn } from 'node:child_process';
import * as fs from 'node:fs/promises';
import path from 'node:path';
import { promisify } from 'node:util';
import { _electron } from 'playwright-core';
import { beforeAll, describe, expect, it } from 'vitest';
import { CHANNELS } from '../../electron/ipc/channels';
import { CONTENT_SECURITY_POLICY } from '../../electron/policy/content-security-policy';
import { buildProgram, needsBuild } from '../../electron/start/build';
import { findRuntime, reasonAgainstDesktop } from '../../electron/start/desktop-runtime';
import { freshFolder } from './support/temp-folder';

const root = path.resolve(import.meta.dirname, '../..');
const temp = freshFolder();

beforeAll(async () => {
  if (!(await needsBuild(root))) return;
  if (!(await buildProgram(root))) throw new Error('The program could not be built.');
}, 120_000);

interface StandInReport {
  readonly webPreferences: Record<string, unknown>;
  readonly privileges: readonly { readonly scheme: string }[];
  readonly channels: readonly string[];
  readonly bridge: readonly string[];
  readonly saved: { readonly value: { readonly token: string } };
}

describe('the built desktop program on a stand-in for its runtime', () => {
  it('starts with its locks on, answers its own page, and refuses all others', async () => {
    const { stdout } = await promisify(execFile)(
      process.execPath,
      ['--import', 'tsx', path.join(import.meta.dirname, 'support/run-on-stand-in.ts')],
      { cwd: root, env: { ...process.env, STAND_IN_FOLDER: temp.at() } },
    );
    const report = JSON.parse(stdout) as StandInReport;

    expect(report).toMatchObject({
      sandboxed: true,
      loaded: ['app://roomwright/'],
      permission: false,
      windowOpening: { action: 'deny' },
      webPreferences: {
        contextIsolation: true,
        sandbox: true,
        nodeIntegration: false,
        webSecurity: true,
        webviewTag: false,
        preload: path.join(root, 'out/preload/preload.cjs'),
      },
      page: { status: 200, policy: CONTENT_SECURITY_POLICY },
      foreign: expect.stringContaining('refused') as string,
      misfit: expect.stringContaining('refused') as string,
      exposed: ['roomwrightBridge'],
      heard: [['undo']],
    });
    expect(report.privileges.map(({ scheme }) => scheme)).toEqual(['app']);
    expect([...report.channels].sort()).toEqual(Object.values(CHANNELS).sort());
    expect([...report.bridge].sort()).toEqual([...Object.keys(CHANNELS), 'onMenuCommand'].sort());

    expect(report.saved).toMatchObject({ kind: 'done', value: { name: 'den.room.json' } });
    expect(report.saved.value.token).not.toContain('den');
    expect(await fs.readFile(temp.at('den.room.json'), 'utf8')).toBe('{"one":1}');
  });
});

describe('the start without a screen', () => {
  const start = (...args: string[]) =>
    spawn(
      process.execPath,
      ['--import', 'tsx', path.join(root, 'electron/start/start.ts'), ...args],
      { cwd: root, stdio: ['ignore', 'pipe', 'pipe'] },
    );

  it('prints one line that ends with the address, serves there, and ends with 0', async () => {
    const child = start('--browser', '--no-open');
    let out = '';
    const ended = new Promise<number | null>((resolve) => child.on('close', resolve));
    const line = await new Promise<string>((resolve) =>
      child.stdout.on('data', (part: Buffer) => {
        out += part.toString();
        if (out.includes('\n')) resolve(out.trim());
      }),
    );
    try {
      expect(line).toMatch(/browser edition.* http:\/\/127\.0\.0\.1:\d+\/\?token=[\w-]+$/);
      const address = line.split(' ').at(-1) ?? '';
      const entrance = await fetch(address, { redirect: 'manual' });
      const cookie = entrance.headers.get('set-cookie')?.split(';')[0] ?? '';
      const page = await fetch(new URL('/', address), { headers: { cookie } });
      expect(page.status).toBe(200);
      expect(await page.text()).toContain('<script type="module"');
    } finally {
      child.kill('SIGTERM');
    }
    expect(await ended).toBe(0);
    expect(out.trim()).toBe(line);
  });

  it('refuses an unknown option by a sentence', async () => {
    const child = start('--brwser');
    let complaint = '';
    child.stderr.on('data', (part: Buffer) => (complaint += part.toString()));
    expect(await new Promise((resolve) => child.on('close', resolve))).toBe(2);
    expect(complaint).toContain('Unknown option "--brwser"');
  });
});

/** Why the real program cannot be tried here, or null where it can. */
function reasonNotToTry(): string | null {
  const surroundings = {
    root,
    env: process.env,
    platform: process.platform,
    node: process.version,
    userId: process.getuid?.() ?? null,
  };
  if (findRuntime(surroundings) === null) return 'the desktop runtime is not installed';
  return reasonAgainstDesktop(surroundings);
}

const against = reasonNotToTry();
if (against !== null) {
  process.stderr.write(
    `\nTHE REAL DESKTOP PROGRAM WAS NOT TRIED: ${against}. ` +
      'Run "npx install-electron" and the tests again, as a person with a display.\n\n',
  );
}

describe.runIf(against === null)('the real desktop program', () => {
  it('shows its page in a locked window', async () => {
    const runtime = findRuntime({
      root,
      env: process.env,
      platform: process.platform,
      node: process.version,
      userId: null,
    });
    const program = await _electron.launch({
      executablePath: runtime ?? '',
      args: [root, `--user-data-dir=${temp.at('settings')}`],
      cwd: root,
    });
    try {
      const page = await program.firstWindow();
      await page.waitForLoadState('domcontentloaded');
      expect(page.url()).toBe('app://roomwright/');
      const seen = await page.evaluate(async () => ({
        bridge: Object.keys(window.roomwrightBridge ?? {}).length,
        recent: await window.roomwrightBridge?.recent(),
        node: 'require' in window || 'process' in window,
        policy: (await fetch('/')).headers.get('content-security-policy'),
      }));
      expect(seen).toEqual({
        bridge: Object.keys(CHANNELS).length + 1,
        recent: [],
        node: false,
        policy: CONTENT_SECURITY_POLICY,
      });
    } finally {
      await program.close();
    }
  }, 60_000);
});
