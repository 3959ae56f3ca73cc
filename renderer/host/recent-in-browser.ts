import { get, update } from 'idb-keyval';
import type { FileToken } from './host';

/**
 * The files used last, kept by the browser between visits (their handles, where it gives any). Where storage is off, as in some private windows, nothing is kept
 * and nothing fails.
 */

export interface KeptFile {
  readonly token: FileToken;
  readonly name: string;
  readonly handle: FileSystemFileHandle;
}

const FILES_KEY = 'roomwright-files';
const MAX_FILES = 10;

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
