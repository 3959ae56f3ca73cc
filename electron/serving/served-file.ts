import { realpath, stat } from 'node:fs/promises';
import path from 'node:path';
import { contentTypeOf } from './content-type';

/** A file of the built page that may be sent. */
export interface ServedFile {
  readonly path: string;
  readonly contentType: string;
}

/** Characters that no file of the page has and that some system reads as more than a name. */
const UNSAFE = /[\0\\:]/;

/**
 * The names along a request's path, decoded once, or null where the path is not plain: it does not
 * start at the root, is not valid percent-encoding, or has a part that could lead elsewhere
 * (`..`, `.`, hidden names, backslashes, drive letters, NUL).
 */
export function plainSegments(requestPath: string): readonly string[] | null {
  if (!requestPath.startsWith('/')) return null;
  let decoded: string;
  try {
    decoded = decodeURIComponent(requestPath);
  } catch {
    return null;
  }
  if (UNSAFE.test(decoded)) return null;
  const segments = decoded.slice(1).split('/');
  if (segments.length === 1 && segments[0] === '') return ['index.html'];
  return segments.every((part) => part !== '' && !part.startsWith('.')) ? segments : null;
}

/**
 * The file that a request's path names inside `root`, or null. Links are followed before the check
 * that the file lies inside, so that a link cannot lead out either.
 */
export async function findServedFile(
  root: string,
  requestPath: string,
): Promise<ServedFile | null> {
  const segments = plainSegments(requestPath);
  if (segments === null) return null;
  try {
    const realRoot = await realpath(root);
    const file = await realpath(path.join(realRoot, ...segments));
    if (!file.startsWith(realRoot + path.sep)) return null;
    if (!(await stat(file)).isFile()) return null;
    return { path: file, contentType: contentTypeOf(file) };
  } catch {
    return null;
  }
}
