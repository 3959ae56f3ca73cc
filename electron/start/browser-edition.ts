import path from 'node:path';
import { startLoopback } from '../loopback/loopback-server';
import type { EnterKey } from './enter-key';
import { openBrowser } from './open-browser';
import { recall, remember } from './start-memory';

export interface BrowserEditionParts {
  readonly root: string;
  readonly open: boolean;
  /** A line for the person on stderr. */
  readonly say: (line: string) => void;
  /** The one line on stdout, which ends with the address. */
  readonly tell: (line: string) => void;
  /** The Enter key of the person's terminal; null where there is none. */
  readonly enterKey: EnterKey | null;
  /** Resolves when the person stops the program. */
  readonly stopped: Promise<void>;
}

/**
 * Serve the browser edition until it is stopped. In a terminal the key in the address works once, and
 * Enter prints a fresh one: a browser keeps addresses in its history. Where nobody can press Enter,
 * the one key that is printed holds until the program stops.
 */
export async function runBrowserEdition(parts: BrowserEditionParts): Promise<void> {
  const { enterKey, say, tell } = parts;
  const { port } = await recall(parts.root);
  const server = await startLoopback({
    root: path.join(parts.root, 'out/renderer'),
    ...(port === undefined ? {} : { preferredPort: port }),
  });
  if (port === undefined) await remember(parts.root, { port: server.port });
  if (port !== undefined && port !== server.port) say(otherPort(port, server.port));

  const address = enterKey ? server.newLaunchAddress() : server.runAddress;
  tell(`Roomwright, browser edition, served until Ctrl+C at ${address}`);
  if (enterKey) say('The address works once, in one browser. Press Enter for a fresh one.');
  const leaveKey = enterKey?.(() => tell(`A fresh address: ${server.newLaunchAddress()}`));
  if (parts.open) {
    void openBrowser(server.newLaunchAddress(), process.platform).then((opened) => {
      if (!opened) say('No browser could be opened: open the address above in one.');
    });
  }
  await parts.stopped;
  leaveKey?.();
  await server.close();
}

function otherPort(usual: number, port: number): string {
  return (
    `Port ${usual}, which this program used before, is taken (perhaps by a second Roomwright), ` +
    `so this one is at port ${port}: rooms that the browser kept at port ${usual} do not show here. ` +
    `To find them, stop what is at port ${usual} and start again.`
  );
}
