import { readFile, stat } from 'node:fs/promises';
import type { FileStamp } from '../../renderer/host/host';

export type LimitedRead =
  | { readonly kind: 'read'; readonly bytes: Uint8Array; readonly stamp: FileStamp }
  | { readonly kind: 'too-large'; readonly sizeBytes: number }
  | { readonly kind: 'not-a-file' };

/**
 * Read a whole file. Its kind and size are asked for before it is opened, so that neither a device
 * nor a pipe is waited for and nothing over `limitBytes` is read. Throws the system's error where
 * the file cannot be reached.
 */
export async function readLimited(file: string, limitBytes: number): Promise<LimitedRead> {
  const found = await stat(file);
  if (!found.isFile()) return { kind: 'not-a-file' };
  if (found.size > limitBytes) return { kind: 'too-large', sizeBytes: found.size };
  const bytes = await readFile(file);
  return { kind: 'read', bytes, stamp: stampOf(found) };
}

export async function readStamp(file: string): Promise<FileStamp> {
  return stampOf(await stat(file));
}

function stampOf(found: { readonly mtimeMs: number; readonly size: number }): FileStamp {
  return { modifiedMs: found.mtimeMs, sizeBytes: found.size };
}
