/** Opening the program's window in a test, and waiting for its drawing. */

import type { Browser, BrowserContext, BrowserContextOptions, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, expect } from 'vitest';
import type { LoopbackServer } from '../../../electron/loopback/loopback-server';
import { launchBrowser } from './browser';
import { serveProgram } from './served-program';

/** A page with the program on it, its first frames drawn. */
export async function openProgram(context: BrowserContext, address: string): Promise<Page> {
  const page = await context.newPage();
  await page.goto(address);
  await page.waitForSelector('.drawing[data-frames]');
  await drawn(page);
  return page;
}

/** Runs in the page; text, so that no build step adds helpers that the page does not have. */
const REST = `new Promise((resolve) => {
  const frames = () => document.querySelector('.drawing')?.dataset.frames;
  let last = frames();
  let stillSince = performance.now();
  const look = () => {
    if (frames() !== last) {
      last = frames();
      stillSince = performance.now();
    }
    if (performance.now() - stillSince > 250) resolve(null);
    else setTimeout(look, 40);
  };
  look();
})`;

/** Wait until the drawing rests: no new frame for a quarter of a second. */
export async function drawn(page: Page): Promise<void> {
  await page.evaluate(REST);
}

/** Without the browser's own file pickers, files are uploaded and downloaded: what a test can drive. */
export const NO_PICKERS = `
  delete window.showOpenFilePicker;
  delete window.showSaveFilePicker;
`;

/** Save by the button, and the text of the file that comes of it. */
export async function savedText(page: Page): Promise<string> {
  const download = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Save', exact: true }).click();
  const stream = await (await download).createReadStream();
  const parts: Buffer[] = [];
  for await (const part of stream) parts.push(part as Buffer);
  return Buffer.concat(parts).toString('utf8');
}

/** Take the first finish that the chooser of the field `name` finds by `query`. */
export async function chooseFinish(page: Page, name: RegExp, query: string): Promise<void> {
  await page.getByRole('button', { name }).click();
  await page.getByRole('combobox', { name: 'Find' }).fill(query);
  await page.keyboard.press('Enter');
}

export interface OpenedWindow {
  readonly page: Page;
  readonly context: BrowserContext;
}

/**
 * The served program for the tests of one file. `open` gives a fresh window in metres; whatever the
 * page complains of (an error, a refused policy) fails the test it happened in.
 */
export function programWindows(): {
  readonly open: (options?: BrowserContextOptions) => Promise<OpenedWindow>;
  readonly address: () => string;
} {
  let browser: Browser;
  let served: LoopbackServer;
  let contexts: BrowserContext[] = [];
  let complaints: string[] = [];

  beforeAll(async () => {
    served = await serveProgram();
    browser = await launchBrowser();
  });
  afterEach(async () => {
    await Promise.all(contexts.map((context) => context.close()));
    contexts = [];
    const said = complaints;
    complaints = [];
    expect(said).toEqual([]);
  });
  afterAll(async () => {
    await browser.close();
    await served.close();
  });

  return {
    address: () => served.runAddress,
    open: async (options = {}) => {
      const context = await browser.newContext({
        viewport: { width: 1440, height: 900 },
        locale: 'en-GB',
        ...options,
      });
      contexts.push(context);
      await context.addInitScript(NO_PICKERS);
      context.on('weberror', (error) => complaints.push(String(error.error())));
      context.on('console', (message) => {
        if (message.type() === 'error') complaints.push(message.text());
      });
      return { context, page: await openProgram(context, served.runAddress) };
    },
  };
}
