import { mkdir, readFile, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { z } from 'zod';

/**
 * What one start leaves for the next: when fetching the desktop runtime failed, and the port of the
 * browser edition. It lies with the installed packages, so that a new installation forgets it.
 */
const memorySchema = z.object({
  fetchFailedAtMs: z.number().optional(),
  port: z.number().int().min(1024).max(65_535).optional(),
});
export type StartMemory = z.infer<typeof memorySchema>;

const DAY_MS = 24 * 60 * 60 * 1000;

export async function recall(root: string): Promise<StartMemory> {
  try {
    return memorySchema.parse(JSON.parse(await readFile(memoryFile(root), 'utf8')));
  } catch {
    return {};
  }
}

/** A memory that cannot be written only makes the next start slower. */
export async function remember(root: string, news: StartMemory): Promise<void> {
  try {
    const memory = { ...(await recall(root)), ...news };
    await mkdir(path.dirname(memoryFile(root)), { recursive: true });
    await writeFile(memoryFile(root), JSON.stringify(memory));
  } catch {
    // Nothing depends on it.
  }
}

/** True where fetching the runtime failed within the last day. */
export function failedToday(memory: StartMemory, nowMs: number): boolean {
  const { fetchFailedAtMs } = memory;
  return fetchFailedAtMs !== undefined && Math.abs(nowMs - fetchFailedAtMs) < DAY_MS;
}

function memoryFile(root: string): string {
  return path.join(root, 'node_modules/.cache/roomwright/start.json');
}
