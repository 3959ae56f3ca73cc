import { openDropped } from './carried-files';
import type { Host, HostOutcome } from './host';

/** What the preload exposes: the host's functions without its label and without what the page does itself. */
export type HostBridge = Omit<Host, 'edition' | 'openDropped'>;

declare global {
  interface Window {
    readonly roomwrightBridge?: HostBridge;
  }
}

/**
 * The host of the desktop program. The bridge refuses a question that it does not accept by an
 * error; here that becomes an outcome, so that nothing throws.
 */
export function createDesktopHost(bridge: HostBridge): Host {
  return {
    edition: 'desktop',
    open: () => outcome('open the file', bridge.open()),
    reopen: (token) => outcome('open the file', bridge.reopen(token)),
    openDropped,
    save: (text, name, token, options) =>
      outcome('save the room', bridge.save(text, name, token, options)),
    exportBytes: (name, type, bytes) =>
      outcome('save the file', bridge.exportBytes(name, type, bytes)),
    openData: (kind) => outcome('open the file', bridge.openData(kind)),
    recent: () => bridge.recent().catch(() => []),
    print: () => outcome('print', bridge.print()),
    keepAutosave: (record) => outcome('keep the work', bridge.keepAutosave(record)),
    readAutosave: () => bridge.readAutosave().catch(() => ({ record: null, unreadable: [] })),
    forgetUnreadable: (id) => bridge.forgetUnreadable(id).catch(() => undefined),
    onMenuCommand: (listener) => bridge.onMenuCommand(listener),
  };
}

async function outcome<T extends { readonly kind: string }>(
  what: string,
  answer: Promise<T>,
): Promise<T | HostOutcome<never>> {
  try {
    return await answer;
  } catch (error) {
    const reason = error instanceof Error ? error.message : String(error);
    return {
      kind: 'failed',
      sentence: `Could not ${what}: the program refused (${reason}). Try again; if it stays, start the program again.`,
    };
  }
}
