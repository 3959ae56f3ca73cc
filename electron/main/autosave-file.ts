import { readFile } from 'node:fs/promises';
import { z } from 'zod';
import type { AutosaveRecord } from '../../renderer/host/host';
import { writeAtomically } from '../files/atomic-write';
import type { PathTokens } from './path-tokens';

const storedAutosave = z.object({
  version: z.literal(1),
  text: z.string(),
  name: z.string(),
  path: z.string().nullable(),
  savedAtMs: z.number(),
  unsaved: z.boolean(),
});

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
    const { token, ...rest } = record;
    const path = token === null ? null : this.tokens.pathOf(token);
    const stored: z.infer<typeof storedAutosave> = { version: 1, ...rest, path };
    await writeAtomically(this.storeFile, JSON.stringify(stored));
  }

  /** Null where nothing was kept, or where what was kept cannot be read. */
  async read(): Promise<AutosaveRecord | null> {
    try {
      const stored = storedAutosave.parse(JSON.parse(await readFile(this.storeFile, 'utf8')));
      const { text, name, path, savedAtMs, unsaved } = stored;
      const token = path === null ? null : this.tokens.tokenFor(path);
      return { text, name, token, savedAtMs, unsaved };
    } catch {
      return null;
    }
  }
}
