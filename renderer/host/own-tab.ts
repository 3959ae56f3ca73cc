/**
 * A name for this tab that survives a reload and that no other open tab has. Each open tab holds a lock
 * of its name; a duplicated tab, which inherits the name, finds it taken and gets another.
 */

const KEY = 'roomwright-tab';
const LOCK = 'roomwright-tab:';

export async function ownTab(): Promise<string> {
  const kept = keptName();
  if (kept !== null && (await hold(kept))) return kept;
  return freshTab();
}

/** Another name for this tab: what was kept under the old one is left alone. */
export async function freshTab(): Promise<string> {
  const fresh = crypto.randomUUID();
  try {
    sessionStorage.setItem(KEY, fresh);
  } catch {
    // Without storage the name lasts until the page is loaded again, as everything does.
  }
  await hold(fresh);
  return fresh;
}

function keptName(): string | null {
  try {
    return sessionStorage.getItem(KEY);
  } catch {
    return null;
  }
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
    const asked = navigator.locks.request(LOCK + tab, { ifAvailable: true }, (lock) => {
      resolve(lock !== null);
      return lock === null ? undefined : new Promise(() => undefined);
    });
    // Where storage is switched off, locks are too: the name is then taken to be free.
    asked.catch(() => resolve(true));
  });
}
