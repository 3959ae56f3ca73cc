/** Reading a record of kept work, which may be of an older program or broken. */

import { openRoom } from '../../core/room/open-room';
import type { AutosaveRecord, FileStamp, KeptRoom } from './host';

/** The record in `text`; null where it is none. */
export function asRecord(text: string): AutosaveRecord | null {
  try {
    const kept: unknown = JSON.parse(text);
    const room = asRoom(kept);
    if (room === null) return null;
    const { savedAtMs, unsaved, before } = kept as Partial<Record<keyof AutosaveRecord, unknown>>;
    if (typeof savedAtMs !== 'number' || typeof unsaved !== 'boolean') return null;
    return { ...room, savedAtMs, unsaved, before: asRoom(before) };
  } catch {
    return null;
  }
}

/** A record by what of it opens and what does not. */
export interface SortedRecord {
  readonly record: AutosaveRecord | null;
  readonly unreadable: readonly KeptRoom[];
}

export function sortedRecord(record: AutosaveRecord): SortedRecord {
  const { before } = record;
  const opens = openRoom(record.text).ok;
  const beforeOpens = before !== null && openRoom(before.text).ok;
  const unreadable = [...(opens ? [] : [record]), ...(before && !beforeOpens ? [before] : [])];
  if (opens) return { record: beforeOpens ? record : { ...record, before: null }, unreadable };
  return { record: beforeOpens ? loneRecord(before, record.savedAtMs) : null, unreadable };
}

/** A room kept by itself, as unsaved work. */
export function loneRecord(
  { text, name, token, stamp }: KeptRoom,
  savedAtMs: number,
): AutosaveRecord {
  return { text, name, token, stamp, savedAtMs, unsaved: true, before: null };
}

function asRoom(value: unknown): KeptRoom | null {
  if (typeof value !== 'object' || value === null) return null;
  const { text, name, token, stamp } = value as Partial<Record<keyof KeptRoom, unknown>>;
  if (typeof text !== 'string' || typeof name !== 'string') return null;
  return { text, name, token: typeof token === 'string' ? token : null, stamp: asStamp(stamp) };
}

function asStamp(value: unknown): FileStamp | null {
  if (typeof value !== 'object' || value === null) return null;
  const { modifiedMs, sizeBytes } = value as Partial<Record<keyof FileStamp, unknown>>;
  return typeof modifiedMs === 'number' && typeof sizeBytes === 'number'
    ? { modifiedMs, sizeBytes }
    : null;
}
