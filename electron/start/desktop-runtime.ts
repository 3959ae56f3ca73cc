import { spawn } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { mkdtemp, readdir, rm, stat } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { setTimeout as delay } from 'node:timers/promises';

/** Where the desktop runtime's program file is, and whether it can be used here. */

export interface Surroundings {
  readonly root: string;
  readonly env: Readonly<Record<string, string | undefined>>;
  readonly platform: NodeJS.Platform;
  /** Version of Node that this runs in, such as `v22.12.0`. */
  readonly node: string;
  /** User number of this process, or null where there is no such thing. */
  readonly userId: number | null;
}

/** Why the desktop program cannot run here at all, or null where it may. */
export function reasonAgainstDesktop(surroundings: Surroundings): string | null {
  const { env, platform, userId } = surroundings;
  if (platform !== 'linux') return null;
  if (!env['DISPLAY'] && !env['WAYLAND_DISPLAY']) return 'there is no display';
  if (userId === 0) return 'the desktop runtime refuses to run as root with its sandbox on';
  return null;
}

/**
 * The runtime's program file, or null. It is looked for where the runtime's package puts it,
 * without loading that package, which would start to fetch what is missing.
 */
export function findRuntime(surroundings: Surroundings): string | null {
  const { root, env, platform } = surroundings;
  const home = path.join(root, 'node_modules/electron');
  const named = readText(path.join(home, 'path.txt'));
  const override = env['ELECTRON_OVERRIDE_DIST_PATH'];
  if (override) return existing(path.join(override, named ?? usualName(platform)));
  if (named === null || !isOfThisVersion(home)) return null;
  return existing(path.join(home, 'dist', named));
}

/** The runtime's own installer, or null where its package is not there. */
export function runtimeInstaller(root: string): string | null {
  return existing(path.join(root, 'node_modules/electron/install.js'));
}

export type FetchResult = 'fetched' | 'failed' | 'stopped-coming';

export interface FetchWatch {
  /** It is given up when nothing has come for so long, ms. */
  readonly stallMs: number;
  /** How often is looked, ms. */
  readonly lookMs: number;
  /** Told at each look where more has come: bytes on the disk so far. */
  readonly onBytes: (bytes: number) => void;
}

/**
 * Run the installer for as long as bytes arrive: in a temporary folder of its own, where it puts what
 * it fetches, and then in the runtime's. What it says is not shown: the caller says it shorter.
 */
export async function fetchRuntime(installer: string, watch: FetchWatch): Promise<FetchResult> {
  const temporary = await mkdtemp(path.join(tmpdir(), 'roomwright-fetch-'));
  const places = [temporary, path.join(path.dirname(installer), 'dist')];
  try {
    return await runInstaller(installer, temporary, places, watch);
  } finally {
    await rm(temporary, { recursive: true, force: true }).catch(() => undefined);
  }
}

async function runInstaller(
  installer: string,
  temporary: string,
  places: readonly string[],
  { stallMs, lookMs, onBytes }: FetchWatch,
): Promise<FetchResult> {
  const env = { ...process.env, TMPDIR: temporary, TEMP: temporary, TMP: temporary };
  const child = spawn(process.execPath, [installer], { stdio: 'ignore', env });
  let result: FetchResult | null = null;
  const ended = new Promise<void>((resolve) => {
    child.once('error', () => {
      result = 'failed';
      resolve();
    });
    child.once('exit', (code) => {
      result ??= code === 0 ? 'fetched' : 'failed';
      resolve();
    });
  });
  let bytes = await bytesIn(places);
  let cameAtMs = Date.now();
  for (;;) {
    await Promise.race([ended, delay(lookMs)]);
    if (result !== null) return result;
    const now = await bytesIn(places);
    if (now !== bytes) {
      if (now > bytes) onBytes(now);
      bytes = now;
      cameAtMs = Date.now();
    } else if (Date.now() - cameAtMs > stallMs) {
      result = 'stopped-coming';
      child.kill('SIGKILL');
      await ended;
    }
  }
}

async function bytesIn(places: readonly string[]): Promise<number> {
  const sizes = await Promise.all(
    places.map(async (place) => {
      const entries = await readdir(place, { withFileTypes: true, recursive: true }).catch(
        () => [],
      );
      const files = entries.filter((entry) => entry.isFile());
      return Promise.all(
        files.map((file) =>
          stat(path.join(file.parentPath, file.name)).then(
            ({ size }) => size,
            () => 0,
          ),
        ),
      );
    }),
  );
  return sizes.flat().reduce((sum, size) => sum + size, 0);
}

/** A runtime left over from another version of the package is not used. */
function isOfThisVersion(home: string): boolean {
  const manifest = readText(path.join(home, 'package.json'));
  const present = readText(path.join(home, 'dist/version'));
  if (manifest === null || present === null) return false;
  const { version } = JSON.parse(manifest) as { version?: unknown };
  return present.replace(/^v/, '') === version;
}

function usualName(platform: NodeJS.Platform): string {
  if (platform === 'darwin') return 'Electron.app/Contents/MacOS/Electron';
  return platform === 'win32' ? 'electron.exe' : 'electron';
}

function existing(file: string): string | null {
  return existsSync(file) ? file : null;
}

function readText(file: string): string | null {
  try {
    return readFileSync(file, 'utf8').trim();
  } catch {
    return null;
  }
}
