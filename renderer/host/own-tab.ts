/**
 * A name for this tab that survives a reload and that no other open tab has. Each open tab holds a lock
 * of its name; a duplicated tab, which inherits the name, finds it taken and gets another.
 */

const KEY = 'roomwright-tab';
const LOCK = 'roomwright-tab:';

export async function ownTab(): Promise<string> {
  const kept = sessionStorage.getItem(KEY);
  if (kept !== null && (await hold(kept))) return kept;
  const fresh = crypto.randomUUID();
  sessionStorage.setItem(KEY, fresh);
  await hold(fresh);
  return fresh;
}

/** Names of the tabs that are open now; empty where the browser has no locks. */
export async function tabsInUse(): Promise<readonly string[]> {
  if (!('locks' in navigator)) return [];
  const { held = [] } = await navigator.locks.query();
  return held.flatMap(({ name }) => (name?.startsWith(LOCK) ? [name.slice(LOCK.length)] : []));
}

/** Hold the lock of `tab` until the page goes away; false where another tab has it. */
function hold(tab: string): Promise<boolean> {
  if (!('locks' in navigator)) return Promise.resolve(true);
  return new Promise((resolve) => {
    void navigator.locks.request(LOCK + tab, { ifAvailable: true }, (lock) => {
      resolve(lock !== null);
      return lock === null ? undefined : new Promise(() => undefined);
    });
  });
}
