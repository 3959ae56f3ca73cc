import { readFile } from 'node:fs/promises';
import type { IncomingMessage, ServerResponse } from 'node:http';
import { BASE_HEADERS, fileHeaders } from '../policy/response-headers';
import { findServedFile } from '../serving/served-file';
import type { AccessKeys } from './access-keys';
import { notFoundPage, wayInPage } from './plain-pages';

export interface Door {
  readonly root: string;
  /** The one `Host` that is answered: `127.0.0.1:PORT`. */
  readonly host: string;
  readonly keys: AccessKeys;
}

/**
 * One request, through the same doors in the same order: the right host (a foreign name that
 * resolves to this computer is refused), reading only, a cookie or a token, and only then a file.
 */
export async function answerRequest(
  door: Door,
  request: IncomingMessage,
  response: ServerResponse,
): Promise<void> {
  const send = (
    status: number,
    headers: Record<string, string>,
    body: string | Buffer = '',
  ): void => {
    response.writeHead(status, {
      ...BASE_HEADERS,
      'Cache-Control': 'no-store',
      ...headers,
      'Content-Length': Buffer.byteLength(body),
    });
    response.end(request.method === 'HEAD' ? undefined : body);
  };
  const page = (status: number, html: string): void =>
    send(status, { 'Content-Type': 'text/html; charset=utf-8' }, html);

  if (request.headers.host !== door.host) return send(421, {});
  if (request.method !== 'GET' && request.method !== 'HEAD') {
    return send(405, { Allow: 'GET, HEAD' });
  }

  const { path, token } = splitTarget(request.url ?? '');
  const known = hasSession(door, request);
  if (token !== null && path === '/') {
    if (known) return send(303, { Location: '/' });
    // A look ahead with HEAD neither uses a token up nor opens the door.
    if (request.method === 'GET' && door.keys.admits(token)) {
      return send(303, { Location: '/', 'Set-Cookie': sessionCookie(door) });
    }
  }
  if (!known) return page(403, wayInPage());

  const file = await findServedFile(door.root, path);
  if (file === null) return page(404, notFoundPage());
  send(200, fileHeaders(file.contentType), await readFile(file.path));
}

/** The path as it was sent, not yet decoded, and the token of the query. */
function splitTarget(target: string): { path: string; token: string | null } {
  const mark = target.indexOf('?');
  if (mark < 0) return { path: target, token: null };
  return {
    path: target.slice(0, mark),
    token: new URLSearchParams(target.slice(mark + 1)).get('token'),
  };
}

/** Cookies do not tell ports apart; with the port in the name, two runs do not disturb each other. */
function cookieName(door: Door): string {
  return `roomwright-${door.host.split(':')[1] ?? ''}`;
}

function sessionCookie(door: Door): string {
  return `${cookieName(door)}=${door.keys.session}; HttpOnly; SameSite=Strict; Path=/`;
}

function hasSession(door: Door, request: IncomingMessage): boolean {
  const prefix = `${cookieName(door)}=`;
  return (request.headers.cookie ?? '')
    .split(';')
    .map((part) => part.trim())
    .some((part) => part.startsWith(prefix) && door.keys.isSession(part.slice(prefix.length)));
}
