import type { Host, HostOutcome } from './host';

/** What the preload exposes: the host's functions without its label. */
export type HostBridge = Omit<Host, 'edition'>;

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
    save: (text, name, token) => outcome('save the room', bridge.save(text, name, token)),
    recent: () => bridge.recent().catch(() => []),
    print: () => outcome('print', bridge.print()),
    keepAutosave: (record) => bridge.keepAutosave(record).catch(() => undefined),
    readAutosave: () => bridge.readAutosave().catch(() => null),
    onMenuCommand: (listener) => bridge.onMenuCommand(listener),
  };
}

async function outcome<T>(what: string, answer: Promise<HostOutcome<T>>): Promise<HostOutcome<T>> {
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
