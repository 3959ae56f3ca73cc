import { spawn } from 'node:child_process';
import { readdir, stat } from 'node:fs/promises';
import path from 'node:path';

/** What the build is made from; the parts that run from source are not in it. */
const SOURCES = [
  'core',
  'renderer',
  'resources',
  'electron/files',
  'electron/ipc',
  'electron/main',
  'electron/policy',
  'electron/preload',
  'electron/serving',
  'electron.vite.config.ts',
  'package.json',
];

const RESULTS = ['out/main/main.js', 'out/preload/preload.cjs', 'out/renderer/index.html'];

/** True where a result is missing or older than a source. A folder's own time tells of removed files. */
export async function needsBuild(root: string): Promise<boolean> {
  const built = await Promise.all(RESULTS.map((file) => changedAt(path.join(root, file))));
  const oldest = Math.min(...built.map((time) => time ?? -Infinity));
  if (oldest === -Infinity) return true;
  const sources = await Promise.all(SOURCES.map((name) => newestIn(path.join(root, name))));
  return Math.max(...sources) > oldest;
}

/** Builds the program; what the builder says goes to stderr. Resolves to whether it succeeded. */
export function buildProgram(root: string): Promise<boolean> {
  const builder = path.join(root, 'node_modules/electron-vite/bin/electron-vite.js');
  return new Promise((resolve) => {
    const child = spawn(process.execPath, [builder, 'build', '--logLevel', 'warn'], {
      cwd: root,
      stdio: ['ignore', 2, 2],
    });
    child.once('error', () => resolve(false));
    child.once('exit', (code) => resolve(code === 0));
  });
}

async function newestIn(place: string): Promise<number> {
  const own = await changedAt(place);
  if (own === null) return -Infinity;
  const entries = await readdir(place, { withFileTypes: true, recursive: true }).catch(() => []);
  const times = await Promise.all(
    entries.map((entry) => changedAt(path.join(entry.parentPath, entry.name))),
  );
  return times.reduce<number>((newest, time) => Math.max(newest, time ?? -Infinity), own);
}

async function changedAt(place: string): Promise<number | null> {
  return stat(place).then(
    (found) => found.mtimeMs,
    () => null,
  );
}
