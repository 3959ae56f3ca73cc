import { existsSync } from 'node:fs';
import path from 'node:path';
import { startLoopback, type LoopbackServer } from '../../../electron/loopback/loopback-server';

const BUILT_PAGE = path.resolve(import.meta.dirname, '../../../out/renderer');

/**
 * The browser edition on the built page, served in this process. Open `runAddress` in each fresh
 * browser context; `close()` when done.
 */
export async function serveProgram(root = BUILT_PAGE): Promise<LoopbackServer> {
  if (!existsSync(path.join(root, 'index.html'))) {
    throw new Error(`There is no built page in "${root}": run "npm run build" first.`);
  }
  return startLoopback({ root });
}
