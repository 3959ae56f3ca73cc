import { randomBytes } from 'node:crypto';
import * as fs from 'node:fs/promises';
import path from 'node:path';
import { setTimeout as delay } from 'node:timers/promises';
import { errorCode } from './error-code';

/** The file operations used in writing; tests replace one to see what a failure leaves behind. */
export type FileSteps = Pick<
  typeof fs,
  'access' | 'chmod' | 'copyFile' | 'open' | 'readFile' | 'realpath' | 'rename' | 'rm' | 'stat'
>;

/** The file itself, not its folder, is marked read-only: replacing it would go against its owner's wish. */
export class ReadOnlyFileError extends Error {
  override name = 'ReadOnlyFileError';
}

const RENAME_TRIES = 4;
const RENAME_PAUSE_MS = 40;
const PERMISSIONS = 0o7777;
const NEW_FILE_MODE = 0o666;

const TEMPORARY = /^\.roomwright-[0-9a-f]{16}\.tmp$/;
/** No write takes this long: what is older was left by one that was killed. */
const LEFT_AFTER_MS = 60 * 60 * 1000;

export function temporaryBeside(target: string): string {
  return path.join(path.dirname(target), `.roomwright-${randomBytes(8).toString('hex')}.tmp`);
}

/** Remove the temporary files that writes which were killed have left in `folder`. Never fails. */
export async function sweepTemporaries(folder: string): Promise<void> {
  const names = await fs.readdir(folder).catch(() => []);
  for (const name of names.filter((known) => TEMPORARY.test(known))) {
    const file = path.join(folder, name);
    const found = await fs.lstat(file).catch(() => null);
    if (found?.isFile() && Date.now() - found.mtimeMs > LEFT_AFTER_MS)
      await fs.rm(file, { force: true }).catch(() => undefined);
  }
}

/** What a file is to be written over. */
export interface Target {
  /** A link stays a link: this is what it points at. */
  readonly file: string;
  /** Null where there is no file yet. */
  readonly previous: { readonly mode: number; readonly size: number } | null;
}

/** Where `file` really is, and what is there; refuses a folder and what its owner marked read-only. */
export async function targetOf(steps: FileSteps, file: string): Promise<Target> {
  const target = await steps.realpath(file).catch(() => file);
  const previous = await steps.stat(target).catch(ignoreMissing);
  if (previous?.isDirectory())
    throw Object.assign(new Error('a folder is in the way'), { code: 'EISDIR' });
  if (previous) await refuseReadOnly(steps, target);
  return { file: target, previous };
}

/** Content in a fresh temporary file beside its target, forced to the disk, as private as the target is. */
export async function writeBeside(
  steps: FileSteps,
  { previous }: Target,
  fresh: string,
  bytes: Uint8Array,
): Promise<void> {
  const mode = previous === null ? NEW_FILE_MODE : previous.mode & PERMISSIONS;
  await writeForced(steps, fresh, bytes, mode);
  // The mode asked for on opening is cut by the process's mask.
  if (previous) await steps.chmod(fresh, mode);
}

/** `FileHandle.writeFile` goes on after a short write, so that a filling disk ends in an error, not in half a file. */
async function writeForced(
  steps: FileSteps,
  file: string,
  bytes: Uint8Array,
  mode: number,
): Promise<void> {
  const handle = await steps.open(file, 'wx', mode);
  try {
    await handle.writeFile(bytes);
    await handle.sync();
  } finally {
    await handle.close();
  }
}

export async function force(steps: FileSteps, file: string): Promise<void> {
  const handle = await steps.open(file, 'r');
  try {
    await handle.sync();
  } finally {
    await handle.close();
  }
}

/** A virus scanner or a synchronising program may hold a file for a moment on some systems. */
export async function renamePatiently(steps: FileSteps, from: string, to: string): Promise<void> {
  for (let attempt = 1; ; attempt += 1) {
    try {
      await steps.rename(from, to);
      return;
    } catch (error) {
      const passing = ['EPERM', 'EBUSY'].includes(errorCode(error) ?? '');
      if (!passing || attempt === RENAME_TRIES) throw error;
      await delay(RENAME_PAUSE_MS);
    }
  }
}

async function refuseReadOnly(steps: FileSteps, target: string): Promise<void> {
  try {
    await steps.access(target, fs.constants.W_OK);
  } catch (cause) {
    throw new ReadOnlyFileError('the file is read-only', { cause });
  }
}

function ignoreMissing(error: unknown): null {
  if (errorCode(error) === 'ENOENT') return null;
  throw error;
}
