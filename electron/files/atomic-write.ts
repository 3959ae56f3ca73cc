import { randomBytes } from 'node:crypto';
import * as fs from 'node:fs/promises';
import path from 'node:path';
import { setTimeout as delay } from 'node:timers/promises';
import { errorCode } from './error-code';

/** The file operations used here; tests replace one to see what a failure leaves behind. */
export type FileSteps = Pick<
  typeof fs,
  'access' | 'chmod' | 'copyFile' | 'open' | 'readFile' | 'realpath' | 'rename' | 'rm' | 'stat'
>;

export interface WriteOptions {
  /** Keep the previous content beside the file as `NAME.bak`. */
  readonly backup?: boolean;
  readonly steps?: FileSteps;
}

/** The file itself, not its folder, is marked read-only: replacing it would go against its owner's wish. */
export class ReadOnlyFileError extends Error {
  override name = 'ReadOnlyFileError';
}

const RENAME_TRIES = 4;
const RENAME_PAUSE_MS = 40;

/** The last write of each path under way; writes to one path follow one another in order of call. */
const queue = new Map<string, Promise<void>>();

/**
 * Replace a file's content as a whole: the content is written to a temporary file in the same
 * folder, forced to the disk, and then renamed over the file. Whoever reads the file sees the old
 * content or the new, never a part. Where any step fails, the file keeps its content, no temporary
 * file stays, and the error is thrown.
 */
export async function writeAtomically(
  file: string,
  content: string | Uint8Array,
  options: WriteOptions = {},
): Promise<void> {
  const key = path.resolve(file);
  const before = queue.get(key) ?? Promise.resolve();
  const mine = before.catch(() => undefined).then(() => replace(key, content, options));
  queue.set(key, mine);
  try {
    await mine;
  } finally {
    if (queue.get(key) === mine) queue.delete(key);
  }
}

/** Resolves when every write that is under way now has ended, well or badly. */
export async function settleWrites(): Promise<void> {
  await Promise.allSettled(queue.values());
}

async function replace(
  file: string,
  content: string | Uint8Array,
  options: WriteOptions,
): Promise<void> {
  const steps = options.steps ?? fs;
  const bytes = typeof content === 'string' ? Buffer.from(content, 'utf8') : content;
  // A link stays a link: what it points at is replaced.
  const target = await steps.realpath(file).catch(() => file);
  const previous = await steps.stat(target).catch(ignoreMissing);
  if (previous) await refuseReadOnly(steps, target);

  const fresh = temporaryBeside(target);
  const spare = temporaryBeside(target);
  try {
    await writeForced(steps, fresh, bytes);
    if (previous) await steps.chmod(fresh, previous.mode & 0o7777);
    if (options.backup && previous && (await isWorthKeeping(steps, target, previous.size, bytes))) {
      await steps.copyFile(target, spare);
      await force(steps, spare);
      await renamePatiently(steps, spare, `${target}.bak`);
    }
    await renamePatiently(steps, fresh, target);
  } finally {
    await Promise.allSettled([steps.rm(fresh, { force: true }), steps.rm(spare, { force: true })]);
  }
  // The content is safe already; a file system that cannot force a folder is no failure.
  await force(steps, path.dirname(target)).catch(() => undefined);
}

async function refuseReadOnly(steps: FileSteps, target: string): Promise<void> {
  try {
    await steps.access(target, fs.constants.W_OK);
  } catch (cause) {
    throw new ReadOnlyFileError('the file is read-only', { cause });
  }
}

/** An empty file is no good version, and saving unchanged work must not push the older version out. */
async function isWorthKeeping(
  steps: FileSteps,
  target: string,
  size: number,
  bytes: Uint8Array,
): Promise<boolean> {
  if (size === 0) return false;
  return size !== bytes.byteLength || !(await steps.readFile(target)).equals(bytes);
}

function temporaryBeside(target: string): string {
  return path.join(path.dirname(target), `.roomwright-${randomBytes(8).toString('hex')}.tmp`);
}

/** `FileHandle.writeFile` goes on after a short write, so that a filling disk ends in an error, not in half a file. */
async function writeForced(steps: FileSteps, file: string, bytes: Uint8Array): Promise<void> {
  const handle = await steps.open(file, 'wx');
  try {
    await handle.writeFile(bytes);
    await handle.sync();
  } finally {
    await handle.close();
  }
}

async function force(steps: FileSteps, file: string): Promise<void> {
  const handle = await steps.open(file, 'r');
  try {
    await handle.sync();
  } finally {
    await handle.close();
  }
}

/** A virus scanner or a synchronising program may hold a file for a moment on some systems. */
async function renamePatiently(steps: FileSteps, from: string, to: string): Promise<void> {
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

function ignoreMissing(error: unknown): null {
  if (errorCode(error) === 'ENOENT') return null;
  throw error;
}
