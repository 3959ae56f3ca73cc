import { get, set, update } from 'idb-keyval';
import type { AutosaveRecord, FileToken } from './host';

/**
 * What the browser keeps between visits: the work at hand, and the files used last (their handles,
 * where the browser gives any). Where storage is off, as in some private windows, nothing is kept
 * and nothing fails.
 */

export interface KeptFile {
  readonly token: FileToken;
  readonly name: string;
  readonly handle: FileSystemFileHandle;
}

const AUTOSAVE_KEY = 'roomwright-autosave';
const FILES_KEY = 'roomwright-files';
const MAX_FILES = 10;

export async function keepWork(record: AutosaveRecord): Promise<void> {
  await set(AUTOSAVE_KEY, record).catch(() => undefined);
}

export async function keptWork(): Promise<AutosaveRecord | null> {
  try {
    const kept = await get<unknown>(AUTOSAVE_KEY);
    return isRecord(kept) ? kept : null;
  } catch {
    return null;
  }
}

export async function keptFiles(): Promise<readonly KeptFile[]> {
  return (await get<readonly KeptFile[]>(FILES_KEY).catch(() => undefined)) ?? [];
}

/** Put a file first in the list. The same file, opened anew, takes its older place's stead. */
export async function keepFile(file: KeptFile): Promise<void> {
  const others: KeptFile[] = [];
  for (const other of await keptFiles()) {
    const same =
      other.token === file.token ||
      (await file.handle.isSameEntry(other.handle).catch(() => false));
    if (!same) others.push(other);
  }
  await update<readonly KeptFile[]>(FILES_KEY, () => [file, ...others].slice(0, MAX_FILES)).catch(
    () => undefined,
  );
}

function isRecord(value: unknown): value is AutosaveRecord {
  if (typeof value !== 'object' || value === null) return false;
  const record = value as Partial<Record<keyof AutosaveRecord, unknown>>;
  return (
    typeof record.text === 'string' &&
    typeof record.name === 'string' &&
    (record.token === null || typeof record.token === 'string') &&
    typeof record.savedAtMs === 'number' &&
    typeof record.unsaved === 'boolean'
  );
}
