import path from 'node:path';
import { startLoopback } from '../loopback/loopback-server';
import { openBrowser } from './open-browser';
import { recall, remember } from './start-memory';

export interface BrowserEditionParts {
  readonly root: string;
  readonly open: boolean;
  /** A line for the person on stderr. */
  readonly say: (line: string) => void;
  /** The one line on stdout, which ends with the address. */
  readonly tell: (line: string) => void;
  /** Resolves when the person stops the program. */
  readonly stopped: Promise<void>;
}

/** Serve the browser edition until it is stopped. */
export async function runBrowserEdition(parts: BrowserEditionParts): Promise<void> {
  const { port } = await recall(parts.root);
  const server = await startLoopback({
    root: path.join(parts.root, 'out/renderer'),
    ...(port === undefined ? {} : { preferredPort: port }),
  });
  if (port === undefined) await remember(parts.root, { port: server.port });
  parts.tell(`Roomwright, browser edition, served until Ctrl+C at ${server.runAddress}`);
  if (parts.open) {
    void openBrowser(server.newLaunchAddress(), process.platform).then((opened) => {
      if (!opened) parts.say('No browser could be opened: open the address above in one.');
    });
  }
  await parts.stopped;
  await server.close();
}
