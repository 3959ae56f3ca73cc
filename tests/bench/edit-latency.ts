/**
 * One edit in the running window, from the pointer event to the frame that shows it: drawing, charts and
 * findings together. Chromium here draws in software, so the picture itself is counted too.
 */

import { browserOrSkip, launchBrowser } from '../browser/support/browser';
import { serveProgram } from '../browser/support/served-program';
import { drawn, openProgram } from '../browser/support/window';

export interface EditLatency {
  readonly edits: number;
  /** From the pointer event to the end of the page's own work for the frame, ms. */
  readonly scriptMs: readonly number[];
  /** From the pointer event to the next frame after it, when the picture is on its way, ms. */
  readonly frameMs: readonly number[];
}

/** Runs in the page; text, so that no build step adds helpers that the page does not have. */
const WATCH = `(() => {
  const log = { script: [], frame: [] };
  window.editLog = log;
  const drawing = document.querySelector('.drawing');
  let startMs = null;
  window.addEventListener('pointermove', () => {
    startMs ??= performance.now();
  }, true);
  new MutationObserver(() => {
    if (startMs === null) return;
    const began = startMs;
    startMs = null;
    log.script.push(performance.now() - began);
    requestAnimationFrame(() => log.frame.push(performance.now() - began));
  }).observe(drawing, { attributes: true, attributeFilter: ['data-frames'] });
})()`;

const EDITS = 120;
const WARM_UP = 20;

/** Drag the right wall to and fro in the room view, one pointer event a frame; null without Chromium. */
export async function measureEditLatency(): Promise<EditLatency | null> {
  if (!browserOrSkip()) return null;
  const served = await serveProgram();
  const browser = await launchBrowser();
  try {
    const context = await browser.newContext({ viewport: { width: 1440, height: 900 } });
    const page = await openProgram(context, served.runAddress);
    const box = await page.locator('.grip-width').boundingBox();
    if (!box) throw new Error('the width grip is not on the page');
    const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
    await page.mouse.move(x, y);
    await page.mouse.down();
    await page.mouse.move(x + 8, y);
    await drawn(page);
    await page.evaluate(WATCH);
    for (let i = 0; i < EDITS + WARM_UP; i++) {
      await page.mouse.move(x + 8 + 60 * Math.sin(i / 6), y);
      await page.evaluate('new Promise((done) => requestAnimationFrame(() => done(null)))');
    }
    await page.mouse.up();
    const log = await page.evaluate<{ script: number[]; frame: number[] }>('window.editLog');
    return {
      edits: log.script.length - WARM_UP,
      scriptMs: log.script.slice(WARM_UP),
      frameMs: log.frame.slice(WARM_UP),
    };
  } finally {
    await browser.close();
    await served.close();
  }
}
