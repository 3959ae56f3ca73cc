import { closeSync, existsSync, openSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { chromium, type Browser } from 'playwright-core';

/**
 * The Chromium that browser tests run in. It is the computer's own: none is fetched.
 *
 *     describe.runIf(browserOrSkip())('the window', () => { ... await launchBrowser() ... });
 */

const USUAL_PLACES = [
  '/usr/bin/chromium',
  '/usr/bin/chromium-browser',
  '/usr/bin/google-chrome-stable',
  '/usr/bin/google-chrome',
  '/snap/bin/chromium',
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
  'C:\\Program Files\\Google\\Chrome\\Application\\chrome.exe',
  'C:\\Program Files (x86)\\Google\\Chrome\\Application\\chrome.exe',
];

const QUIET_FLAGS = [
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
  '--disable-quic',
];

/** Program file of Chromium: what ROOMWRIGHT_CHROMIUM names, else the first of the usual places. */
export function findChromium(env: NodeJS.ProcessEnv = process.env): string | null {
  const named = env['ROOMWRIGHT_CHROMIUM'];
  if (named) return existsSync(named) ? named : null;
  return USUAL_PLACES.find((file) => existsSync(file)) ?? null;
}

/**
 * True where browser tests can run. Where they cannot, one loud line says how to get there, and an
 * error is thrown instead if ROOMWRIGHT_BROWSER_TESTS is "required".
 */
export function browserOrSkip(env: NodeJS.ProcessEnv = process.env): boolean {
  if (findChromium(env) !== null) return true;
  const named = env['ROOMWRIGHT_CHROMIUM'];
  const why = named ? `ROOMWRIGHT_CHROMIUM names "${named}", which is not there` : 'none was found';
  const line =
    `BROWSER TESTS DID NOT RUN: they need Chromium, and ${why}. Install Chromium from your ` +
    'distribution, or set ROOMWRIGHT_CHROMIUM to its program file.';
  if (env['ROOMWRIGHT_BROWSER_TESTS'] === 'required') throw new Error(line);
  if (firstToSay()) process.stderr.write(`\n${line}\n\n`);
  return false;
}

/** `flags` are added to Chromium's own, such as `--disable-3d-apis`. */
export async function launchBrowser(flags: readonly string[] = []): Promise<Browser> {
  const executablePath = findChromium();
  if (executablePath === null) throw new Error('Chromium was not found; ask browserOrSkip() first');
  return chromium.launch({
    executablePath,
    // Chromium refuses to start its sandbox as root, as in a container.
    chromiumSandbox: process.getuid?.() !== 0,
    args: [...QUIET_FLAGS, ...flags],
  });
}

/** Test files run in processes of their own; a file named after the common parent lets one of them speak. */
function firstToSay(): boolean {
  const mark = path.join(tmpdir(), `roomwright-no-browser-${process.ppid}`);
  const fresh = 10 * 60 * 1000;
  try {
    if (Date.now() - statSync(mark).mtimeMs > fresh) rmSync(mark, { force: true });
  } catch {
    // Nobody has spoken yet.
  }
  try {
    closeSync(openSync(mark, 'wx'));
    return true;
  } catch {
    return false;
  }
}
