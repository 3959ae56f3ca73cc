/** Opening the program's window in a test, and waiting for its drawing. */

import type { BrowserContext, Page } from 'playwright-core';

/** A page with the program on it, its first frame drawn. Errors on the page fail the caller. */
export async function openProgram(context: BrowserContext, address: string): Promise<Page> {
  const page = await context.newPage();
  page.on('pageerror', (error) => {
    throw error;
  });
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
