import { readFile } from 'node:fs/promises';
import { z } from 'zod';
import { writeAtomically } from '../files/atomic-write';

const MAX_RECENT = 10;

const storedRecents = z.object({ version: z.literal(1), paths: z.array(z.string().min(1)) });

/** Paths of the room files used last, newest first, kept between runs. */
export class RecentFiles {
  private paths: Promise<readonly string[]> | null = null;

  constructor(private readonly storeFile: string) {}

  list(): Promise<readonly string[]> {
    this.paths ??= this.load();
    return this.paths;
  }

  async add(path: string): Promise<void> {
    const others = (await this.list()).filter((other) => other !== path);
    await this.store([path, ...others].slice(0, MAX_RECENT));
  }

  async remove(path: string): Promise<void> {
    const paths = await this.list();
    if (paths.includes(path)) await this.store(paths.filter((other) => other !== path));
  }

  private async store(paths: readonly string[]): Promise<void> {
    this.paths = Promise.resolve(paths);
    try {
      await writeAtomically(this.storeFile, JSON.stringify({ version: 1, paths }, null, 2));
    } catch {
      // The list is a convenience: it holds for this run even where it cannot be kept.
    }
  }

  private async load(): Promise<readonly string[]> {
    try {
      const stored: unknown = JSON.parse(await readFile(this.storeFile, 'utf8'));
      return storedRecents.parse(stored).paths.slice(0, MAX_RECENT);
    } catch {
      return [];
    }
  }
}
