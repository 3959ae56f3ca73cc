/** What the store of the window asks of a page when it is loaded, for tests without one. */

import { vi } from 'vitest';

/** A store of text by key, as a page has; `refuse` makes every writing fail as a full one does. */
export class PageStore {
  private readonly kept = new Map<string, string>();
  refuse = false;

  get length(): number {
    return this.kept.size;
  }
  key(n: number): string | null {
    return [...this.kept.keys()][n] ?? null;
  }
  getItem(key: string): string | null {
    return this.kept.get(key) ?? null;
  }
  setItem(key: string, value: string): void {
    if (this.refuse) throw new DOMException('full', 'QuotaExceededError');
    this.kept.set(key, value);
  }
  removeItem(key: string): void {
    this.kept.delete(key);
  }
  clear(): void {
    this.kept.clear();
  }
}

export interface StubbedPage {
  readonly store: PageStore;
  /** Listeners of window and document by the name of their event. */
  readonly listeners: Map<string, (event: unknown) => unknown>;
}

/** Put a page's globals in place; `vi.unstubAllGlobals` takes them away again. */
export function stubPage(): StubbedPage {
  const listeners = new Map<string, (event: unknown) => unknown>();
  const listen = {
    addEventListener: (name: string, listener: (event: unknown) => unknown) =>
      listeners.set(name, listener),
    removeEventListener: (name: string) => listeners.delete(name),
  };
  const store = new PageStore();
  vi.stubGlobal('localStorage', store);
  vi.stubGlobal('matchMedia', () => ({ matches: false, addEventListener: () => undefined }));
  vi.stubGlobal('document', {
    ...listen,
    visibilityState: 'visible',
    documentElement: { dataset: {} },
  });
  vi.stubGlobal('navigator', { language: 'en-GB' });
  vi.stubGlobal('window', listen);
  return { store, listeners };
}
