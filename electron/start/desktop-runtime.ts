import { spawn } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import path from 'node:path';

/** Where the desktop runtime's program file is, and whether it can be used here. */

export interface Surroundings {
  readonly root: string;
  readonly env: Readonly<Record<string, string | undefined>>;
  readonly platform: NodeJS.Platform;
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

export type FetchResult = 'fetched' | 'failed' | 'too-slow';

/** Run the installer for `timeoutMs` at most. What it says is not shown: the caller says it shorter. */
export function fetchRuntime(installer: string, timeoutMs: number): Promise<FetchResult> {
  return new Promise((resolve) => {
    const child = spawn(process.execPath, [installer], { stdio: 'ignore' });
    const timer = setTimeout(() => {
      resolve('too-slow');
      child.kill('SIGKILL');
    }, timeoutMs);
    const end = (result: FetchResult): void => {
      clearTimeout(timer);
      resolve(result);
    };
    child.once('error', () => end('failed'));
    child.once('exit', (code) => end(code === 0 ? 'fetched' : 'failed'));
  });
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
