import * as fs from 'node:fs/promises';
import { request, type IncomingHttpHeaders } from 'node:http';
import { connect } from 'node:net';
import { networkInterfaces } from 'node:os';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { startLoopback, type LoopbackServer } from '../../electron/loopback/loopback-server';
import { CONTENT_SECURITY_POLICY } from '../../electron/policy/content-security-policy';
import { freshFolder } from './support/temp-folder';

const temp = freshFolder();
let server: LoopbackServer;

beforeEach(async () => {
  await fs.mkdir(temp.at('page', 'assets'), { recursive: true });
  await fs.writeFile(temp.at('page', 'index.html'), '<!doctype html>');
  await fs.writeFile(temp.at('page', 'assets', 'index-1.js'), 'export {};');
  await fs.writeFile(temp.at('secret.txt'), 'secret');
  server = await startLoopback({ root: temp.at('page') });
});

afterEach(() => server.close());

interface Answer {
  readonly status: number;
  readonly headers: IncomingHttpHeaders;
  readonly body: string;
}

/** A request whose path is sent as it is written, without any normalising. */
function ask(
  path: string,
  options: { readonly method?: string; readonly headers?: Record<string, string> } = {},
): Promise<Answer> {
  return new Promise((resolve, reject) => {
    const sent = request(
      { host: '127.0.0.1', port: server.port, path, agent: false, ...options },
      (answer) => {
        let body = '';
        answer.setEncoding('utf8').on('data', (part: string) => (body += part));
        answer.on('end', () =>
          resolve({ status: answer.statusCode ?? 0, headers: answer.headers, body }),
        );
      },
    );
    sent.on('error', reject).end();
  });
}

const pathOf = (address: string): string => address.slice(server.origin.length);

async function cookieFor(address: string): Promise<string> {
  const answer = await ask(pathOf(address));
  return (answer.headers['set-cookie']?.[0] ?? '').split(';')[0] ?? '';
}

describe('who is let in', () => {
  it('nobody without a cookie or a token; the answer says how to get in', async () => {
    for (const path of ['/', '/assets/index-1.js', '/missing', '/?token=', '/?token=wrong']) {
      const answer = await ask(path);
      expect(answer.status).toBe(403);
      expect(answer.body).toContain('?token=');
      expect(answer.headers['set-cookie']).toBeUndefined();
    }
  });

  it('who shows the token gets a strict cookie and an address without the token', async () => {
    const answer = await ask(pathOf(server.runAddress));
    expect(answer.status).toBe(303);
    expect(answer.headers.location).toBe('/');
    expect(answer.headers['set-cookie']?.[0]).toMatch(
      /^roomwright-\d+=[A-Za-z0-9_-]{32}; HttpOnly; SameSite=Strict; Path=\/$/,
    );
    const cookie = await cookieFor(server.runAddress);
    const page = await ask('/', { headers: { Cookie: `other=1; ${cookie}` } });
    expect(page).toMatchObject({ status: 200, body: '<!doctype html>' });
    const script = await ask('/assets/index-1.js', { headers: { Cookie: cookie } });
    expect(script.headers['content-type']).toContain('javascript');
  });

  it('by the printed token as often as wanted, by a launch token once', async () => {
    expect((await ask(pathOf(server.runAddress))).status).toBe(303);
    expect((await ask(pathOf(server.runAddress))).status).toBe(303);
    const launch = server.newLaunchAddress();
    expect(launch).not.toBe(server.newLaunchAddress());
    expect((await ask(pathOf(launch))).status).toBe(303);
    expect((await ask(pathOf(launch))).status).toBe(403);
  });

  it('who looks ahead with HEAD, or is in already, uses no launch token up', async () => {
    const launch = pathOf(server.newLaunchAddress());
    expect((await ask(launch, { method: 'HEAD' })).status).toBe(403);
    const cookie = await cookieFor(server.runAddress);
    expect((await ask(launch, { headers: { Cookie: cookie } })).status).toBe(303);
    expect((await ask(launch)).status).toBe(303);
  });

  it('not with a cookie of another value, run, or name', async () => {
    const cookie = await cookieFor(server.runAddress);
    const [name = '', value = ''] = cookie.split('=');
    for (const wrong of [`${name}=`, `${name}=x`, `${cookie}x`, `x${name}=${value}`, value]) {
      expect((await ask('/', { headers: { Cookie: wrong } })).status).toBe(403);
    }
  });

  it('not with a token at another path', async () => {
    const token = server.runAddress.split('?')[1] ?? '';
    expect((await ask(`/assets/index-1.js?${token}`)).status).toBe(403);
  });
});

describe('what is answered', () => {
  it.each(['localhost', 'example.org', '127.0.0.1', '127.0.0.1:1', '[::1]'])(
    'not the host %j, not even with the token',
    async (host) => {
      const cookie = await cookieFor(server.runAddress);
      const headers = { Host: host, Cookie: cookie };
      expect(await ask('/', { headers })).toMatchObject({ status: 421, body: '' });
      const token = await ask(pathOf(server.runAddress), { headers: { Host: host } });
      expect(token.headers['set-cookie']).toBeUndefined();
    },
  );

  it.each(['POST', 'PUT', 'DELETE', 'OPTIONS', 'PATCH'])('not %s', async (method) => {
    const cookie = await cookieFor(server.runAddress);
    const answer = await ask('/', { method, headers: { Cookie: cookie } });
    expect(answer.status).toBe(405);
    expect(answer.headers.allow).toBe('GET, HEAD');
  });

  it.each([
    '/../secret.txt',
    '/..%2fsecret.txt',
    '/%2e%2e/secret.txt',
    '/assets/..%5c..%5csecret.txt',
    '//secret.txt',
    '/%00',
    '/%',
    'http://127.0.0.1/secret.txt',
  ])('nothing outside the folder by %s', async (path) => {
    const cookie = await cookieFor(server.runAddress);
    const answer = await ask(path, { headers: { Cookie: cookie } });
    expect(answer.status).toBe(404);
    expect(answer.body).not.toBe('secret');
  });

  it('every answer carries the policy and the other headers', async () => {
    const cookie = await cookieFor(server.runAddress);
    const answers = [
      await ask('/'),
      await ask('/', { headers: { Cookie: cookie } }),
      await ask('/missing', { headers: { Cookie: cookie } }),
      await ask('/', { method: 'POST' }),
      await ask(pathOf(server.runAddress)),
    ];
    for (const { headers } of answers) {
      expect(headers['content-security-policy']).toBe(CONTENT_SECURITY_POLICY);
      expect(headers['x-content-type-options']).toBe('nosniff');
      expect(headers['referrer-policy']).toBe('no-referrer');
      expect(headers['cross-origin-opener-policy']).toBe('same-origin');
      expect(headers['cross-origin-resource-policy']).toBe('same-origin');
      expect(headers['cache-control']).toBe('no-store');
    }
  });

  it('HEAD has the headers and no body', async () => {
    const cookie = await cookieFor(server.runAddress);
    const answer = await ask('/', { method: 'HEAD', headers: { Cookie: cookie } });
    expect(answer).toMatchObject({ status: 200, body: '' });
    expect(answer.headers['content-length']).toBe('15');
  });
});

describe('where it listens', () => {
  it('on this computer alone', async () => {
    const outside = Object.values(networkInterfaces())
      .flatMap((addresses) => addresses ?? [])
      .find((address) => address.family === 'IPv4' && !address.internal);
    if (outside === undefined) return;
    const reached = await new Promise<boolean>((resolve) => {
      const socket = connect({ host: outside.address, port: server.port, timeout: 1000 });
      socket.once('connect', () => resolve(true)).once('error', () => resolve(false));
      socket.once('timeout', () => resolve(false));
    });
    expect(reached).toBe(false);
  });

  it('at the preferred port, or at a free one where that is taken', async () => {
    const second = await startLoopback({ root: temp.at('page'), preferredPort: server.port });
    expect(second.port).not.toBe(server.port);
    const freed = second.port;
    await second.close();
    const third = await startLoopback({ root: temp.at('page'), preferredPort: freed });
    expect(third.port).toBe(freed);
    await third.close();
  });
});
