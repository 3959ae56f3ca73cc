import { mkdir, stat } from 'node:fs/promises';
import path from 'node:path';
import { errorCode } from './error-code';

/**
 * Make `folder` (an absolute path) and those above it that are missing, one by one from the top. Ends in
 * at most as many steps as the path has parts, whatever the file system answers: one that refuses a new
 * folder as if the one above were missing is not asked again.
 */
export async function makeFolder(folder: string): Promise<void> {
  const missing: string[] = [];
  for (let at = folder; !(await isFolder(at)); at = path.dirname(at)) {
    missing.push(at);
    if (path.dirname(at) === at) break;
  }
  for (const next of missing.reverse()) {
    try {
      await mkdir(next);
    } catch (error) {
      // Somebody else may have made it in the meantime.
      if (errorCode(error) !== 'EEXIST' || !(await isFolder(next))) throw error;
    }
  }
}

/** False where nothing is there; what is there and no folder is in the way. */
async function isFolder(place: string): Promise<boolean> {
  try {
    if ((await stat(place)).isDirectory()) return true;
  } catch (error) {
    if (errorCode(error) === 'ENOENT') return false;
    throw error;
  }
  throw Object.assign(new Error(`${path.basename(place)} is no folder`), { code: 'EEXIST' });
}
