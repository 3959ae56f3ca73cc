import { freshTab, ownTab, tabsInUse } from './own-tab';
import { failed } from './file-text';
import { asRecord, loneRecord, sortedRecord } from './autosave-record';
import type { AutosaveRecord, HostOutcome, KeptWork, UnreadableWork } from './host';

/**
 * The work at hand, kept by the browser between visits, one record a tab: two windows on two rooms do
 * not overwrite each other. Written at once, so that it is there when the page goes away the next
 * moment. A new tab takes up the newest record that opens and that no open tab works on. What cannot be
 * read stays under its key, hides no other record, and is shown at every start until it is forgotten.
 */

const PREFIX = 'roomwright-autosave:';
/** Records of saved work of tabs that are gone; older ones go. Unsaved work never does. */
const MOST_RECORDS = 12;
const NOT_KEPT =
  'Its storage for this page is switched off or full, so what you do here is gone when the page is closed. Save the room to a file.';

let tab: string | null = null;

async function thisTab(): Promise<string> {
  tab ??= await ownTab();
  return tab;
}

/** Keep `record` for this tab. From the second call on it is written before the function returns. */
export async function keepWork(record: AutosaveRecord): Promise<HostOutcome<null>> {
  const key = PREFIX + (tab ?? (await thisTab()));
  try {
    localStorage.setItem(key, JSON.stringify(record));
    return { kind: 'done', value: null };
  } catch {
    return failed(NOT_KEPT);
  }
}

interface Entry {
  readonly key: string;
  readonly text: string;
  /** Null where it is no record, or holds a room that does not open. */
  readonly record: AutosaveRecord | null;
}

export async function keptWork(): Promise<KeptWork> {
  try {
    return await found();
  } catch {
    return { record: null, unreadable: [] };
  }
}

async function found(): Promise<KeptWork> {
  const own = PREFIX + (await thisTab());
  const inUse = new Set((await tabsInUse()).map((id) => PREFIX + id));
  const entries = keys()
    .filter((key) => key === own || !inUse.has(key))
    .flatMap(entriesAt);
  const unreadable = entries.flatMap((entry) => unreadableOf(entry));
  // What cannot be read keeps its key: this tab's next record must not be written over it.
  if (entries.some(({ key, record }) => key === own && record === null)) tab = await freshTab();
  const readable = entries.flatMap(({ key, record }) => (record ? [{ key, record }] : []));
  const mine = readable.find(({ key }) => key === own);
  if (mine) return { record: mine.record, unreadable };
  const [newest, ...others] = readable.sort((a, b) => b.record.savedAtMs - a.record.savedAtMs);
  const saved = others.filter(({ record }) => !record.unsaved && record.before === null);
  for (const { key } of saved.slice(MOST_RECORDS)) localStorage.removeItem(key);
  if (!newest) return { record: null, unreadable };
  const kept = await keepWork(newest.record);
  if (kept.kind === 'done') localStorage.removeItem(newest.key);
  return { record: newest.record, unreadable };
}

export function forgetUnreadable(id: string): Promise<void> {
  if (id.startsWith(PREFIX)) localStorage.removeItem(id);
  return Promise.resolve();
}

function keys(): readonly string[] {
  return Array.from({ length: localStorage.length }, (_, i) => localStorage.key(i) ?? '').filter(
    (key) => key.startsWith(PREFIX),
  );
}

/** What is under a key, each room that does not open in an entry of its own. */
function entriesAt(key: string): readonly Entry[] {
  const text = localStorage.getItem(key) ?? '';
  const kept = asRecord(text);
  if (kept === null) return [{ key, text, record: null }];
  const { record, unreadable } = sortedRecord(kept);
  if (unreadable.length === 0) return [{ key, text, record }];
  if (record === null && kept.before === null) return [{ key, text, record: null }];
  const aside = unreadable.map((room) => ({
    key: `${PREFIX}aside-${crypto.randomUUID()}`,
    text: JSON.stringify(loneRecord(room, kept.savedAtMs)),
    record: null,
  }));
  try {
    for (const entry of aside) localStorage.setItem(entry.key, entry.text);
    if (record === null) localStorage.removeItem(key);
    else localStorage.setItem(key, JSON.stringify(record));
  } catch {
    // No place for a second copy: all of it stays under its key.
    return [{ key, text, record: null }];
  }
  return [...aside, ...(record === null ? [] : [{ key, text, record }])];
}

/** The room's own text where the record around it can be read, else the whole of what is there. */
function unreadableOf({ key, text, record }: Entry): readonly UnreadableWork[] {
  if (record !== null || text === '') return [];
  const read = asRecord(text);
  return [{ id: key, name: read?.name ?? 'kept-work.room.json', text: read?.text ?? text }];
}
