import * as fs from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { build } from 'vite';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import type { LoopbackServer } from '../../electron/loopback/loopback-server';
import { MAX_FILE_BYTES, type Host } from '../../renderer/host/host';
import { browserOrSkip, launchBrowser } from '../browser/support/browser';
import { serveProgram } from '../browser/support/served-program';

/** The page under test has the host and nothing else; its policy is that of the real page. */
declare global {
  interface Window {
    hostUnderTest: Host;
  }
}

const hostFolder = path.resolve(import.meta.dirname, '../../renderer/host');

async function buildHostPage(folder: string): Promise<void> {
  await fs.writeFile(
    path.join(folder, 'page.ts'),
    `import { chooseHost } from ${JSON.stringify(path.join(hostFolder, 'choose-host'))};
     window.hostUnderTest = chooseHost();`,
  );
  await fs.writeFile(
    path.join(folder, 'index.html'),
    '<!doctype html><html><body><script type="module" src="./page.ts"></script></body></html>',
  );
  await build({ root: folder, configFile: false, logLevel: 'error', build: { outDir: 'built' } });
}

describe.runIf(browserOrSkip())('the host in a browser', () => {
  let folder: string;
  let server: LoopbackServer;
  let browser: Browser;
  let context: BrowserContext;
  let page: Page;
  const refusedByPolicy: string[] = [];

  beforeAll(async () => {
    folder = await fs.mkdtemp(path.join(tmpdir(), 'roomwright-host-'));
    await buildHostPage(folder);
    server = await serveProgram(path.join(folder, 'built'));
    browser = await launchBrowser();
  }, 60_000);

  afterAll(async () => {
    await browser.close();
    await server.close();
    await fs.rm(folder, { recursive: true, force: true });
  });

  beforeEach(async () => {
    context = await browser.newContext();
    page = await context.newPage();
    page.on('console', (message) => {
      if (message.text().includes('Content Security Policy')) refusedByPolicy.push(message.text());
    });
    await page.goto(server.runAddress);
    await page.waitForFunction(() => 'hostUnderTest' in window);
  });

  afterEach(async () => {
    await context.close();
    expect(refusedByPolicy).toEqual([]);
  });

  /** Pickers that give files of the page's own private folder, where no person can be asked. */
  const fakePickers = (): Promise<void> =>
    page.evaluate(() => {
      const file = async (create: boolean, name: string) =>
        (await navigator.storage.getDirectory()).getFileHandle(name, { create });
      Object.assign(window, {
        showSaveFilePicker: ({ suggestedName }: { suggestedName: string }) =>
          suggestedName === 'called-off'
            ? Promise.reject(new DOMException('called off', 'AbortError'))
            : file(true, suggestedName),
        showOpenFilePicker: async () => [await file(false, 'den.room.json')],
      });
    });

  it('is the browser edition, let in by the token, whose address shows no token', async () => {
    expect(await page.evaluate(() => window.hostUnderTest.edition)).toBe('browser');
    expect(page.url()).toBe(`${server.origin}/`);
    expect(await page.evaluate(() => document.cookie)).toBe('');
  });

  it('keeps the work at hand over a reload', async () => {
    const record = {
      text: '{"a":1}',
      name: 'den',
      token: null,
      savedAtMs: 5,
      unsaved: true,
      before: null,
    };
    expect(await page.evaluate(() => window.hostUnderTest.readAutosave())).toBeNull();
    await page.evaluate((kept) => window.hostUnderTest.keepAutosave(kept), record);
    await page.reload();
    expect(await page.evaluate(() => window.hostUnderTest.readAutosave())).toEqual(record);
  });

  it('saves, saves again in place, opens, and finds the file again after a reload', async () => {
    await fakePickers();
    const first = await page.evaluate(() =>
      window.hostUnderTest.save('one', 'den.room.json', null),
    );
    if (first.kind !== 'done' || first.value.token === null) throw new Error(JSON.stringify(first));
    const { token } = first.value;
    const again = await page.evaluate(
      (known) => window.hostUnderTest.save('zwei, größer', 'ignored', known),
      token,
    );
    expect(again).toEqual({ kind: 'done', value: { name: 'den.room.json', token } });
    const opened = { kind: 'done', value: { name: 'den.room.json', text: 'zwei, größer', token } };
    expect(await page.evaluate(() => window.hostUnderTest.open())).toEqual(opened);

    await page.reload();
    expect(await page.evaluate(() => window.hostUnderTest.recent())).toEqual([
      { name: 'den.room.json', token },
    ]);
    const reopened = await page.evaluate((known) => window.hostUnderTest.reopen(known), token);
    expect(reopened).toEqual(opened);
  });

  it('is cancelled where the picker is called off, and refuses what is too large or no text', async () => {
    await fakePickers();
    const save = (text: string, name: string) =>
      page.evaluate(([t, n]) => window.hostUnderTest.save(t, n, null), [text, name] as const);
    expect(await save('one', 'called-off')).toEqual({ kind: 'cancelled' });
    expect(await save('x'.repeat(MAX_FILE_BYTES + 1), 'den.room.json')).toMatchObject({
      kind: 'failed',
    });
    const putAndOpen = (bytes: number, fill: number) =>
      page.evaluate(
        async ([size, byte]) => {
          const home = await navigator.storage.getDirectory();
          const handle = await home.getFileHandle('den.room.json', { create: true });
          const writable = await handle.createWritable();
          await writable.write(new Uint8Array(size).fill(byte));
          await writable.close();
          return window.hostUnderTest.open();
        },
        [bytes, fill] as const,
      );
    expect(await putAndOpen(MAX_FILE_BYTES + 1, 32)).toMatchObject({
      sentence: expect.stringContaining('5 MB at most') as string,
    });
    expect(await putAndOpen(4, 255)).toMatchObject({
      sentence: expect.stringContaining('not UTF-8') as string,
    });
  });

  it('uploads and downloads where the browser has no pickers', async () => {
    await context.addInitScript(() => {
      for (const picker of ['showOpenFilePicker', 'showSaveFilePicker']) {
        Reflect.deleteProperty(window, picker);
      }
    });
    await page.reload();
    await page.waitForFunction(() => 'hostUnderTest' in window);

    const [download, saved] = await Promise.all([
      page.waitForEvent('download'),
      page.evaluate(() => window.hostUnderTest.save('one', 'den.room.json', null)),
    ]);
    expect(saved).toEqual({ kind: 'done', value: { name: 'den.room.json', token: null } });
    expect(download.suggestedFilename()).toBe('den.room.json');
    expect(await fs.readFile(await download.path(), 'utf8')).toBe('one');

    const upload = { name: 'den.room.json', mimeType: 'application/json' };
    const [chooser, opening] = await Promise.all([
      page.waitForEvent('filechooser'),
      page.evaluateHandle(() => ({ outcome: window.hostUnderTest.open() })),
    ]);
    await chooser.setFiles({ ...upload, buffer: Buffer.from('{"größe":1}') });
    expect(await opening.evaluate((held) => held.outcome)).toEqual({
      kind: 'done',
      value: { name: 'den.room.json', text: '{"größe":1}', token: null },
    });
    expect(await page.evaluate(() => window.hostUnderTest.recent())).toEqual([]);
  });
});
