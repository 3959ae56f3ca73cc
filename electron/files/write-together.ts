import * as fs from 'node:fs/promises';
import path from 'node:path';
import { setTimeout as delay } from 'node:timers/promises';
import { errorCode } from './error-code';
import {
  force,
  renamePatiently,
  sweepTemporaries,
  targetOf,
  temporaryBeside,
  writeBeside,
  type FileSteps,
  type Target,
} from './temporary';

/** Several files that belong together, written all or none. */

export interface FileOfSet {
  /** Name in the folder, without a path. */
  readonly name: string;
  readonly text: string;
}

/** Which file of the set stood in the way; `cause` is the system's error. */
export class FileOfSetError extends Error {
  override name = 'FileOfSetError';
  constructor(
    readonly file: string,
    override readonly cause: unknown,
  ) {
    super(`could not write ${path.basename(file)}`, { cause });
  }
}

interface Staged {
  readonly target: Target;
  readonly fresh: string;
  /** A second name of the content before, until the whole set is in place. */
  readonly spare: string;
}

/** Held while a set is put in place, so that two programs never mix theirs. */
const LOCK_NAME = '.roomwright-writing.lock';
const LOCK_PAUSE_MS = 25;
const LOCK_TRIES = 400;
/** Putting a set in place takes far less: an older lock was left by a program that was killed. */
const LOCK_LEFT_AFTER_MS = 60_000;

/**
 * Write `files` into `folder`, which must be there. All are written to temporary files first and put in
 * place only when every one is safe; where that fails for one, those before it are put back. Gives the
 * names of the files that were replaced.
 */
export async function writeTogether(
  folder: string,
  files: readonly FileOfSet[],
  steps: FileSteps = fs,
): Promise<readonly string[]> {
  await sweepTemporaries(folder);
  const staged: Staged[] = [];
  try {
    for (const { name, text } of files) {
      const file = path.join(folder, path.basename(name));
      await naming(file, async () => {
        const target = await targetOf(steps, file);
        const one = {
          target,
          fresh: temporaryBeside(target.file),
          spare: temporaryBeside(target.file),
        };
        staged.push(one);
        await writeBeside(steps, target, one.fresh, Buffer.from(text, 'utf8'));
      });
    }
    await holdingLock(folder, () => putInPlace(steps, staged));
  } finally {
    const left = staged.flatMap(({ fresh, spare }) => [fresh, spare]);
    await Promise.allSettled(left.map((file) => steps.rm(file, { force: true })));
  }
  await force(steps, folder).catch(() => undefined);
  return staged
    .filter(({ target }) => target.previous !== null)
    .map(({ target }) => path.basename(target.file));
}

async function putInPlace(steps: FileSteps, staged: readonly Staged[]): Promise<void> {
  const placed: Staged[] = [];
  try {
    for (const one of staged) {
      await naming(one.target.file, async () => {
        if (one.target.previous) await steps.copyFile(one.target.file, one.spare);
        await renamePatiently(steps, one.fresh, one.target.file);
      });
      placed.push(one);
    }
  } catch (error) {
    for (const { target, spare } of placed.reverse()) {
      if (target.previous) await fs.rename(spare, target.file).catch(() => undefined);
      else await fs.rm(target.file, { force: true }).catch(() => undefined);
    }
    throw error;
  }
}

async function naming(file: string, work: () => Promise<void>): Promise<void> {
  try {
    await work();
  } catch (error) {
    throw new FileOfSetError(file, error);
  }
}

async function holdingLock(folder: string, work: () => Promise<void>): Promise<void> {
  const lock = path.join(folder, LOCK_NAME);
  await naming(lock, () => takeLock(lock));
  try {
    await work();
  } finally {
    await fs.rm(lock, { force: true });
  }
}

async function takeLock(lock: string): Promise<void> {
  for (let attempt = 1; ; attempt += 1) {
    try {
      await (await fs.open(lock, 'wx')).close();
      return;
    } catch (error) {
      if (errorCode(error) !== 'EEXIST') throw error;
      if (attempt === LOCK_TRIES)
        throw Object.assign(new Error('another program writes there'), { code: 'EBUSY' });
    }
    const found = await fs.stat(lock).catch(() => null);
    if (found && Date.now() - found.mtimeMs > LOCK_LEFT_AFTER_MS)
      await fs.rm(lock, { force: true });
    else await delay(LOCK_PAUSE_MS);
  }
}
