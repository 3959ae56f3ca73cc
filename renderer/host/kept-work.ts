import { ownTab, tabsInUse } from './own-tab';
import type { AutosaveRecord, KeptRoom } from './host';

/**
 * The work at hand, kept by the browser between visits, one record a tab: two windows on two rooms do
 * not overwrite each other. Written at once, so that it is there when the page goes away the next
 * moment. A new tab takes up the newest record that no open tab works on. Where storage is off or full,
 * nothing is kept and nothing fails.
 */

const PREFIX = 'roomwright-autosave:';
/** Records of tabs that are gone; older ones go. */
const MOST_RECORDS = 12;

let tab: string | null = null;

async function thisTab(): Promise<string> {
  tab ??= await ownTab();
  return tab;
}

/** Keep `record` for this tab. From the second call on it is written before the function returns. */
export async function keepWork(record: AutosaveRecord): Promise<void> {
  write(PREFIX + (tab ?? (await thisTab())), record);
}

export async function keptWork(): Promise<AutosaveRecord | null> {
  try {
    const own = PREFIX + (await thisTab());
    const mine = read(own);
    if (mine) return mine;
    const inUse = new Set((await tabsInUse()).map((id) => PREFIX + id));
    const [newest, ...others] = keys()
      .filter((key) => key !== own && !inUse.has(key))
      .map((key) => ({ key, record: read(key) }))
      .sort((a, b) => (b.record?.savedAtMs ?? 0) - (a.record?.savedAtMs ?? 0));
    for (const { key } of others.slice(MOST_RECORDS)) localStorage.removeItem(key);
    if (!newest?.record) return null;
    write(own, newest.record);
    localStorage.removeItem(newest.key);
    return newest.record;
  } catch {
    return null;
  }
}

function keys(): readonly string[] {
  return Array.from({ length: localStorage.length }, (_, i) => localStorage.key(i) ?? '').filter(
    (key) => key.startsWith(PREFIX),
  );
}

function write(key: string, record: AutosaveRecord): void {
  try {
    localStorage.setItem(key, JSON.stringify(record));
  } catch {
    // Storage is off or full: the file itself is still the person's to save.
  }
}

function read(key: string): AutosaveRecord | null {
  try {
    const kept: unknown = JSON.parse(localStorage.getItem(key) ?? 'null');
    return isRecord(kept) ? kept : null;
  } catch {
    return null;
  }
}

function isRecord(value: unknown): value is AutosaveRecord {
  if (!isRoom(value)) return false;
  const record = value as Partial<Record<keyof AutosaveRecord, unknown>>;
  return (
    typeof record.savedAtMs === 'number' &&
    typeof record.unsaved === 'boolean' &&
    (record.before === null || isRoom(record.before))
  );
}

function isRoom(value: unknown): value is KeptRoom {
  if (typeof value !== 'object' || value === null) return false;
  const room = value as Partial<Record<keyof KeptRoom, unknown>>;
  return (
    typeof room.text === 'string' &&
    typeof room.name === 'string' &&
    (room.token === null || typeof room.token === 'string')
  );
}
