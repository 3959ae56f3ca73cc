import { constants, open, stat, type FileHandle } from 'node:fs/promises';
import type { FileStamp } from '../../renderer/host/host';
import { errorCode } from './error-code';

export type LimitedRead =
  | { readonly kind: 'read'; readonly bytes: Uint8Array; readonly stamp: FileStamp }
  | { readonly kind: 'too-large'; readonly sizeBytes: number }
  | { readonly kind: 'not-a-file' };

/** Without waiting: some files of the system look plain and never end. Unknown on Windows. */
const READ_NOW = constants.O_RDONLY | (constants.O_NONBLOCK ?? 0);
const CHUNK_BYTES = 65_536;

/**
 * Read a whole file. Its kind is asked for before it is opened, so that neither a device nor a pipe
 * is waited for. What a file says of its size is no promise: at most one byte over `limitBytes` is
 * read, from the file that was opened. Throws the system's error where the file cannot be reached.
 */
export async function readLimited(file: string, limitBytes: number): Promise<LimitedRead> {
  const found = await stat(file);
  if (!found.isFile()) return { kind: 'not-a-file' };
  if (found.size > limitBytes) return { kind: 'too-large', sizeBytes: found.size };
  const handle = await open(file, READ_NOW);
  try {
    const opened = await handle.stat();
    if (!opened.isFile()) return { kind: 'not-a-file' };
    const bytes = await readAtMost(handle, limitBytes + 1);
    if (bytes.length > limitBytes) {
      return { kind: 'too-large', sizeBytes: Math.max(opened.size, bytes.length) };
    }
    return { kind: 'read', bytes, stamp: stampOf(opened) };
  } catch (error) {
    // It has nothing now and might have later: a device that only looks like a file.
    if (errorCode(error) === 'EAGAIN') return { kind: 'not-a-file' };
    throw error;
  } finally {
    await handle.close();
  }
}

async function readAtMost(handle: FileHandle, mostBytes: number): Promise<Uint8Array> {
  const parts: Buffer[] = [];
  let length = 0;
  while (length < mostBytes) {
    const room = Buffer.allocUnsafe(Math.min(CHUNK_BYTES, mostBytes - length));
    const { bytesRead } = await handle.read(room, 0, room.length, null);
    if (bytesRead === 0) break;
    parts.push(room.subarray(0, bytesRead));
    length += bytesRead;
  }
  return Buffer.concat(parts);
}

export async function readStamp(file: string): Promise<FileStamp> {
  return stampOf(await stat(file));
}

function stampOf(found: { readonly mtimeMs: number; readonly size: number }): FileStamp {
  return { modifiedMs: found.mtimeMs, sizeBytes: found.size };
}
