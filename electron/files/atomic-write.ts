import * as fs from 'node:fs/promises';
import path from 'node:path';
import {
  force,
  renamePatiently,
  sweepTemporaries,
  targetOf,
  temporaryBeside,
  writeBeside,
  type FileSteps,
} from './temporary';

export interface WriteOptions {
  /** Keep the previous content beside the file as `NAME.bak`. */
  readonly backup?: boolean;
  readonly steps?: FileSteps;
}

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
  const target = await targetOf(steps, file);
  const { previous } = target;
  await sweepTemporaries(path.dirname(target.file));

  const fresh = temporaryBeside(target.file);
  const spare = temporaryBeside(target.file);
  try {
    await writeBeside(steps, target, fresh, bytes);
    if (
      options.backup &&
      previous &&
      (await isWorthKeeping(steps, target.file, previous.size, bytes))
    ) {
      await steps.copyFile(target.file, spare);
      await force(steps, spare);
      await renamePatiently(steps, spare, `${target.file}.bak`);
    }
    await renamePatiently(steps, fresh, target.file);
  } finally {
    await Promise.allSettled([steps.rm(fresh, { force: true }), steps.rm(spare, { force: true })]);
  }
  // The content is safe already; a file system that cannot force a folder is no failure.
  await force(steps, path.dirname(target.file)).catch(() => undefined);
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
