import { readFile } from 'node:fs/promises';
import { BASE_HEADERS, fileHeaders } from '../policy/response-headers';
import { findServedFile } from '../serving/served-file';
import { OWN_NAME, OWN_SCHEME } from './page-address';

/** Must be declared before the program is ready: the page gets a secure origin of its own. */
export const OWN_SCHEME_PRIVILEGES = {
  scheme: OWN_SCHEME,
  privileges: { standard: true, secure: true, supportFetchAPI: true, codeCache: true },
};

export interface SchemeRequest {
  readonly url: string;
  readonly method: string;
}

/**
 * Answer a request under the own scheme from the folder of the built page, and from nowhere else.
 * Room files never travel this way.
 */
export async function serveOwnScheme(root: string, request: SchemeRequest): Promise<Response> {
  if (request.method !== 'GET' && request.method !== 'HEAD') return refusal(405);
  const requestPath = ownPath(request.url);
  if (requestPath === null) return refusal(400);
  const file = await findServedFile(root, requestPath);
  if (file === null) return refusal(404);
  const body = request.method === 'HEAD' ? null : new Uint8Array(await readFile(file.path));
  return new Response(body, { status: 200, headers: fileHeaders(file.contentType) });
}

function ownPath(address: string): string | null {
  try {
    const url = new URL(address);
    return url.protocol === `${OWN_SCHEME}:` && url.host === OWN_NAME ? url.pathname : null;
  } catch {
    return null;
  }
}

function refusal(status: number): Response {
  return new Response(null, { status, headers: { ...BASE_HEADERS } });
}
