import * as fs from 'node:fs/promises';
import path from 'node:path';
import { beforeEach, describe, expect, it } from 'vitest';
import { serveOwnScheme } from '../../electron/main/protocol';
import {
  CONTENT_SECURITY_POLICY,
  developmentPolicy,
} from '../../electron/policy/content-security-policy';
import { findServedFile, plainSegments } from '../../electron/serving/served-file';
import { freshFolder } from './support/temp-folder';

const temp = freshFolder();
const root = (): string => temp.at('page');

beforeEach(async () => {
  await fs.mkdir(temp.at('page', 'assets'), { recursive: true });
  await fs.mkdir(temp.at('page-secret'));
  await fs.writeFile(temp.at('page', 'index.html'), '<!doctype html>');
  await fs.writeFile(temp.at('page', 'assets', 'index-1.js'), 'export {};');
  await fs.writeFile(temp.at('page', 'assets', 'a b.txt'), 'spaced');
  await fs.writeFile(temp.at('page', '.hidden'), 'hidden');
  await fs.writeFile(temp.at('secret.txt'), 'secret');
  await fs.writeFile(temp.at('page-secret', 'x.txt'), 'secret');
});

/** Ways to write a path that would lead out of the folder, or to what is not for sending. */
const ODD_PATHS = [
  '/../secret.txt',
  '/..%2fsecret.txt',
  '/%2e%2e/secret.txt',
  '/%2e%2e%2fsecret.txt',
  '/assets/../../secret.txt',
  '/assets/%2e%2e/%2e%2e/secret.txt',
  '/..%5csecret.txt',
  '/..\\secret.txt',
  '/../page-secret/x.txt',
  '/..%2fpage-secret%2fx.txt',
  '/.hidden',
  '/%2ehidden',
  '//secret.txt',
  '/assets//index-1.js',
  '/assets/./index-1.js',
  '/assets/',
  '/index.html%00.js',
  '/index.html%',
  '/%ff',
  '/c:/secret.txt',
  '/index.html::$DATA',
  'index.html',
  '*',
  '',
];

describe('the files that are sent', () => {
  it('are those of the folder, by their plain names', async () => {
    expect(await findServedFile(root(), '/')).toEqual({
      path: await fs.realpath(path.join(root(), 'index.html')),
      contentType: 'text/html; charset=utf-8',
    });
    const script = await findServedFile(root(), '/assets/index-1.js');
    expect(script?.contentType).toBe('text/javascript; charset=utf-8');
    expect(await findServedFile(root(), '/assets/a%20b.txt')).not.toBeNull();
    expect(plainSegments('/assets/index-1.js')).toEqual(['assets', 'index-1.js']);
  });

  it.each(ODD_PATHS)('do not include what %j would name', async (requestPath) => {
    expect(await findServedFile(root(), requestPath)).toBeNull();
  });

  it('are not decoded twice', async () => {
    expect(await findServedFile(root(), '/%252e%252e/secret.txt')).toBeNull();
    expect(plainSegments('/a%2520b')).toEqual(['a%20b']);
  });

  it('do not lie behind a link that leads out', async () => {
    await fs.symlink(temp.at('secret.txt'), temp.at('page', 'link.txt'));
    expect(await findServedFile(root(), '/link.txt')).toBeNull();
  });

  it('are no folders and no missing files', async () => {
    expect(await findServedFile(root(), '/assets')).toBeNull();
    expect(await findServedFile(root(), '/missing.js')).toBeNull();
    expect(await findServedFile(temp.at('no-folder'), '/')).toBeNull();
  });
});

describe('the own scheme', () => {
  const get = (url: string, method = 'GET'): Promise<Response> =>
    serveOwnScheme(root(), { url, method });

  it('serves the page with its policy', async () => {
    const answer = await get('app://roomwright/');
    expect(answer.status).toBe(200);
    expect(await answer.text()).toBe('<!doctype html>');
    expect(answer.headers.get('content-security-policy')).toBe(CONTENT_SECURITY_POLICY);
    expect(answer.headers.get('x-content-type-options')).toBe('nosniff');
    expect(answer.headers.get('cache-control')).toBe('no-store');
    const script = await get('app://roomwright/assets/index-1.js?v=1');
    expect(script.headers.get('content-type')).toContain('javascript');
  });

  it.each([
    ['app://other/', 400],
    ['file:///etc/passwd', 400],
    ['app://roomwright/../secret.txt', 404],
    ['app://roomwright/%2e%2e/secret.txt', 404],
    ['app://roomwright/..%2fsecret.txt', 404],
    ['app://roomwright/missing', 404],
    ['nonsense', 400],
  ])('answers %s with %i and nothing else', async (url, status) => {
    const answer = await get(url);
    expect(answer.status).toBe(status);
    expect(await answer.text()).toBe('');
  });

  it('only reads', async () => {
    expect((await get('app://roomwright/', 'POST')).status).toBe(405);
    expect(await (await get('app://roomwright/', 'HEAD')).text()).toBe('');
  });
});

describe('the policy of the page', () => {
  it('allows nothing inline, no evaluation, and nothing from elsewhere', () => {
    expect(CONTENT_SECURITY_POLICY).not.toMatch(/unsafe|https?:|\*/);
    for (const part of [
      "default-src 'self'",
      "object-src 'none'",
      "base-uri 'none'",
      "frame-ancestors 'none'",
      "form-action 'none'",
      "img-src 'self' data: blob:",
    ]) {
      expect(CONTENT_SECURITY_POLICY.split('; ')).toContain(part);
    }
    expect(developmentPolicy('http://localhost:5173')).toContain('ws://localhost:5173');
  });
});
