/**
 * `npm run pictures -- [FOLDER]`: pictures of the running program in both sizes and both appearances,
 * every subject and view. Without a folder it renews the ones in resources/pictures that the README shows.
 */

import { mkdir } from 'node:fs/promises';
import path from 'node:path';
import type { Page } from 'playwright-core';
import { launchBrowser } from './browser';
import { serveProgram } from './served-program';
import { drawn, openProgram } from './window';

const README_FOLDER = path.resolve(import.meta.dirname, '../../../resources/pictures');
const SIZES = [
  { width: 1440, height: 900 },
  { width: 1024, height: 700 },
] as const;

async function shoot(page: Page, folder: string, name: string): Promise<void> {
  await drawn(page);
  await page.screenshot({ path: path.join(folder, `${name}.png`) });
}

async function tour(page: Page, folder: string, label: string): Promise<void> {
  await shoot(page, folder, `${label}-shell`);
  await page.getByRole('radio', { name: 'Plan', exact: true }).check({ force: true });
  await page.getByRole('button', { name: /^\d?\s*Speakers/ }).click();
  await shoot(page, folder, `${label}-speakers-plan`);
  await page.getByRole('radio', { name: 'Room', exact: true }).check({ force: true });
  await shoot(page, folder, `${label}-speakers-room`);
  await page.getByRole('radio', { name: 'Long section', exact: true }).check({ force: true });
  await page.getByRole('button', { name: /^\d?\s*Decay/ }).click();
  await shoot(page, folder, `${label}-decay-section`);
  await page.getByRole('radio', { name: 'Cross section', exact: true }).check({ force: true });
  await page.getByLabel('Open an example room').selectOption('under-the-ducts');
  await shoot(page, folder, `${label}-ducts-front`);
  await page.getByRole('radio', { name: 'Room', exact: true }).check({ force: true });
  await page.getByRole('button', { name: /^\d?\s*Shell/ }).click();
  await page.getByRole('radio', { name: 'ft in', exact: true }).check({ force: true });
  await shoot(page, folder, `${label}-ducts-room`);
}

const folder = process.argv[2] ? path.resolve(process.argv[2]) : README_FOLDER;
await mkdir(folder, { recursive: true });
const served = await serveProgram();
const browser = await launchBrowser();
try {
  for (const colorScheme of ['light', 'dark'] as const) {
    for (const viewport of process.argv[2] ? SIZES : [SIZES[0]]) {
      const context = await browser.newContext({ viewport, colorScheme, locale: 'en-GB' });
      const page = await openProgram(context, served.runAddress);
      if (process.argv[2]) await tour(page, folder, `${viewport.width}-${colorScheme}`);
      else await shoot(page, folder, `window-${colorScheme}`);
      await context.close();
    }
  }
} finally {
  await browser.close();
  await served.close();
}
