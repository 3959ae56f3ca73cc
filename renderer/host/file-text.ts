import { decodeUtf8, MAX_ROOM_BYTES, WHY_NOT_TEXT, whyTooLarge } from '../../core/room/read-json';
import type { HostOutcome } from './host';

const MEGABYTE = 1_000_000;

/** The text of a chosen file: refused unread where it is too large, and where it is not UTF-8. */
export async function fileText(file: File): Promise<HostOutcome<string>> {
  const refuse = (why: string): HostOutcome<string> =>
    failed(`Could not open "${file.name}": ${why}`);
  if (file.size > MAX_ROOM_BYTES) return refuse(whyTooLarge(file.size));
  const text = decodeUtf8(new Uint8Array(await file.arrayBuffer()));
  return text.ok ? { kind: 'done', value: text.value } : refuse(WHY_NOT_TEXT);
}

/** Null where the text may be saved: what is over the limit could not be opened again. */
export function refusalToSave(text: string): HostOutcome<never> | null {
  if (new Blob([text]).size <= MAX_ROOM_BYTES) return null;
  return failed(
    `Could not save: the room has grown over ${MAX_ROOM_BYTES / MEGABYTE} MB, which is more than ` +
      'a room file may have. Remove what was added last with Undo and save again.',
  );
}

export function openFailure(name: string, error: unknown): HostOutcome<never> {
  return failed(`Could not open "${name}": ${cause(error, 'read')} Look for it with Open.`);
}

export function saveFailure(name: string, error: unknown): HostOutcome<never> {
  return failed(
    `Could not save "${name}": ${cause(error, 'write')} Choose another place with Save as.`,
  );
}

export function failed(sentence: string): HostOutcome<never> {
  return { kind: 'failed', sentence };
}

function cause(error: unknown, doing: 'read' | 'write'): string {
  const name = error instanceof Error || error instanceof DOMException ? error.name : '';
  switch (name) {
    case 'NotFoundError':
      return 'it is no longer there; it may have been moved or renamed.';
    case 'NotAllowedError':
    case 'SecurityError':
      return `the browser may not ${doing} it.`;
    case 'NoModificationAllowedError':
      return 'another page or program is using it, or it is read-only.';
    case 'QuotaExceededError':
      return 'the disk is full.';
    case 'NotReadableError':
      return 'it changed while it was read, or may not be read.';
    default:
      return `the browser reported "${error instanceof Error ? error.message : String(error)}".`;
  }
}
