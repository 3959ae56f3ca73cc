import { randomBytes } from 'node:crypto';
import { readdir, readFile, rename, rm } from 'node:fs/promises';
import path from 'node:path';
import { z } from 'zod';
import type {
  AutosaveRecord,
  HostOutcome,
  KeptRoom,
  KeptWork,
  UnreadableWork,
} from '../../renderer/host/host';
import { loneRecord, sortedRecord } from '../../renderer/host/autosave-record';
import { writeAtomically } from '../files/atomic-write';
import { errorCode } from '../files/error-code';
import { saveFailure } from '../files/file-sentences';
import { UNREADABLE_NAME } from '../files/unreadable-name';
import type { PathTokens } from './path-tokens';

const stamp = z.object({ modifiedMs: z.number(), sizeBytes: z.number() });
const storedRoom = {
  text: z.string(),
  name: z.string(),
  path: z.string().nullable(),
  stamp: stamp.nullable().default(null),
};
const storedAutosave = z.object({
  version: z.literal(1),
  ...storedRoom,
  savedAtMs: z.number(),
  unsaved: z.boolean(),
  before: z.object(storedRoom).nullable().default(null),
});

type Stored = z.infer<typeof storedAutosave>;
type StoredRoom = Pick<Stored, 'text' | 'name' | 'path' | 'stamp'>;

const UNNAMED = 'kept-work.room.json';
const REMEDY = 'Save the room to a file: what you do here is not kept for the next start.';

/**
 * The work at hand, kept beside the program's settings. A token is good for one run only, so the
 * file's path is kept in its place and gets a new token when it is read. What cannot be read is put
 * aside in a file of its own before anything is written over it, and stays until it is forgotten.
 */
export class AutosaveFile {
  constructor(
    private readonly storeFile: string,
    private readonly tokens: PathTokens,
  ) {}

  async keep(record: AutosaveRecord): Promise<HostOutcome<null>> {
    try {
      await writeAtomically(this.storeFile, JSON.stringify(this.stored(record)));
      return { kind: 'done', value: null };
    } catch (error) {
      return { kind: 'failed', sentence: saveFailure(this.storeFile, error, REMEDY) };
    }
  }

  async read(): Promise<KeptWork> {
    const record = await this.newest().catch(() => this.putAside());
    return { record, unreadable: await this.unreadable() };
  }

  async forget(id: string): Promise<void> {
    if (UNREADABLE_NAME.test(id)) await rm(this.beside(id), { force: true });
  }

  /** The record as far as it opens; what does not is put aside first. */
  private async newest(): Promise<AutosaveRecord | null> {
    const text = await readFile(this.storeFile, 'utf8').catch((error: unknown) => {
      if (errorCode(error) === 'ENOENT') return null;
      throw error;
    });
    if (text === null) return null;
    const kept = this.asKept(text);
    if (kept === null) return this.putAside();
    const { record, unreadable } = sortedRecord(kept);
    for (const room of unreadable) {
      const aside = JSON.stringify(this.stored(loneRecord(room, kept.savedAtMs)));
      await writeAtomically(this.beside(unreadableName()), aside);
    }
    if (unreadable.length > 0) {
      if (record === null) await rm(this.storeFile, { force: true });
      else await this.keep(record);
    }
    return record;
  }

  /** What is there gets another name, so that nothing is written over it. */
  private async putAside(): Promise<null> {
    await rename(this.storeFile, this.beside(unreadableName())).catch(() => undefined);
    return null;
  }

  private async unreadable(): Promise<readonly UnreadableWork[]> {
    const names = await readdir(path.dirname(this.storeFile)).catch(() => []);
    const found = names.filter((name) => UNREADABLE_NAME.test(name)).sort();
    return Promise.all(
      found.map(async (id) => {
        const text = await readFile(this.beside(id), 'utf8').catch(() => '');
        const kept = this.asKept(text);
        return { id, name: kept?.name ?? UNNAMED, text: kept?.text ?? text };
      }),
    );
  }

  private beside(name: string): string {
    return path.join(path.dirname(this.storeFile), name);
  }

  private asKept(text: string): AutosaveRecord | null {
    try {
      const stored = storedAutosave.parse(JSON.parse(text));
      const { savedAtMs, unsaved, before } = stored;
      return { ...this.kept(stored), savedAtMs, unsaved, before: before && this.kept(before) };
    } catch {
      return null;
    }
  }

  private stored(record: AutosaveRecord): Stored {
    const { savedAtMs, unsaved, before } = record;
    return {
      version: 1,
      ...this.storedRoom(record),
      savedAtMs,
      unsaved,
      before: before && this.storedRoom(before),
    };
  }

  private storedRoom({ text, name, token, stamp: seen }: KeptRoom): StoredRoom {
    return { text, name, path: token === null ? null : this.tokens.pathOf(token), stamp: seen };
  }

  private kept({ text, name, path: file, stamp: seen }: StoredRoom): KeptRoom {
    const token = file === null ? null : this.tokens.tokenFor(file);
    return { text, name, token, stamp: seen };
  }
}

const unreadableName = (): string => `autosave-unreadable-${randomBytes(8).toString('hex')}.json`;
