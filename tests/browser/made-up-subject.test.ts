import * as fs from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import type { Browser } from 'playwright-core';
import { build } from 'vite';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { LoopbackServer } from '../../electron/loopback/loopback-server';
import { browserOrSkip, launchBrowser } from './support/browser';
import { serveProgram } from './support/served-program';
import { openProgram } from './support/window';

const ENTRY = path.resolve(import.meta.dirname, 'support/made-up-subject.tsx');

/** The page of a window whose list of subjects ends with a made-up one. */
async function buildPage(folder: string): Promise<string> {
  await fs.writeFile(path.join(folder, 'page.ts'), `import ${JSON.stringify(ENTRY)};`);
  await fs.writeFile(
    path.join(folder, 'index.html'),
    '<!doctype html><html lang="en"><body><div id="root"></div><script type="module" src="./page.ts"></script></body></html>',
  );
  await build({
    root: folder,
    configFile: false,
    logLevel: 'error',
    worker: { format: 'es' },
    build: { outDir: 'built', chunkSizeWarningLimit: 5000 },
  });
  return path.join(folder, 'built');
}

describe.runIf(browserOrSkip())('a subject that nobody but the registry knows', () => {
  let folder: string;
  let server: LoopbackServer;
  let browser: Browser;

  beforeAll(async () => {
    folder = await fs.mkdtemp(path.join(tmpdir(), 'roomwright-subject-'));
    server = await serveProgram(await buildPage(folder));
    browser = await launchBrowser();
  }, 180_000);
  afterAll(async () => {
    await browser.close();
    await server.close();
    await fs.rm(folder, { recursive: true, force: true });
  });

  it('is in the index, opens with its inputs and evidence, and adds its layer to the drawing', async () => {
    const context = await browser.newContext({ viewport: { width: 1440, height: 900 } });
    const page = await openProgram(context, server.runAddress);
    const label = page.locator('.drawing .label-anchor', { hasText: 'made-up label' });
    const plate = page.locator('.drawing .name-plate', { hasText: 'sub-1' });
    expect(await label.count()).toBe(0);
    expect(await plate.count()).toBe(1);

    await page.getByRole('button', { name: /^6 *Made up *invented/ }).click();
    await page.getByRole('heading', { name: 'Made up', level: 2 }).waitFor();
    await page.getByText('Inputs of the made-up subject').waitFor();
    await page.getByRole('region', { name: 'Evidence: Made up' }).waitFor();
    await page.getByText('Evidence of the made-up subject').waitFor();
    await label.waitFor({ state: 'visible' });
    // What the layer has handles for needs no name plate of the room's.
    expect(await plate.count()).toBe(0);

    await page.getByRole('button', { name: /^1 *Shell/ }).click();
    await label.waitFor({ state: 'detached' });
    await context.close();
  });
});
