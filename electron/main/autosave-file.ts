import { readFile } from 'node:fs/promises';
import { z } from 'zod';
import type { AutosaveRecord, KeptRoom } from '../../renderer/host/host';
import { writeAtomically } from '../files/atomic-write';
import type { PathTokens } from './path-tokens';

const storedRoom = { text: z.string(), name: z.string(), path: z.string().nullable() };
const storedAutosave = z.object({
  version: z.literal(1),
  ...storedRoom,
  savedAtMs: z.number(),
  unsaved: z.boolean(),
  before: z.object(storedRoom).nullable().default(null),
});

type StoredRoom = Pick<z.infer<typeof storedAutosave>, 'text' | 'name' | 'path'>;

/**
 * The work at hand, kept beside the program's settings. A token is good for one run only, so the
 * file's path is kept in its place and gets a new token when it is read.
 */
export class AutosaveFile {
  constructor(
    private readonly storeFile: string,
    private readonly tokens: PathTokens,
  ) {}

  async keep(record: AutosaveRecord): Promise<void> {
    const { savedAtMs, unsaved, before } = record;
    const stored: z.infer<typeof storedAutosave> = {
      version: 1,
      ...this.stored(record),
      savedAtMs,
      unsaved,
      before: before && this.stored(before),
    };
    await writeAtomically(this.storeFile, JSON.stringify(stored));
  }

  /** Null where nothing was kept, or where what was kept cannot be read. */
  async read(): Promise<AutosaveRecord | null> {
    try {
      const stored = storedAutosave.parse(JSON.parse(await readFile(this.storeFile, 'utf8')));
      const { savedAtMs, unsaved, before } = stored;
      return { ...this.kept(stored), savedAtMs, unsaved, before: before && this.kept(before) };
    } catch {
      return null;
    }
  }

  private stored({ text, name, token }: KeptRoom): StoredRoom {
    return { text, name, path: token === null ? null : this.tokens.pathOf(token) };
  }

  private kept({ text, name, path }: StoredRoom): KeptRoom {
    return { text, name, token: path === null ? null : this.tokens.tokenFor(path) };
  }
}
