import * as fs from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { build } from 'vite';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import type { LoopbackServer } from '../../electron/loopback/loopback-server';
import { MAX_ROOM_BYTES } from '../../core/room/read-json';
import type { Host } from '../../renderer/host/host';
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
     window.hostUnderTest = chooseHost();
     window.anotherHost = () => (window.hostUnderTest = chooseHost());`,
  );
  await fs.writeFile(
    path.join(folder, 'index.html'),
    '<!doctype html><html><body><script type="module" src="./page.ts"></script></body></html>',
  );
  await build({ root: folder, configFile: false, logLevel: 'error', build: { outDir: 'built' } });
}

/** What the browser can do is found out when a host is made. */
const NEW_HOST = 'void window.anotherHost()';

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

  const ROOM =
    '{"format":"roomwright-room","version":1,"room":{"size":{"width":4,"length":5,"height":3}}}';
  const recordOf = (text: string, savedAtMs = 5) => ({
    text,
    name: 'den',
    token: null,
    stamp: null,
    savedAtMs,
    unsaved: true,
    before: null,
  });
  const readKept = () => page.evaluate(() => window.hostUnderTest.readAutosave());
  const reload = async (): Promise<void> => {
    await page.reload();
    await page.waitForFunction(() => 'hostUnderTest' in window);
  };
  const keep = (record: ReturnType<typeof recordOf>) =>
    page.evaluate((kept) => window.hostUnderTest.keepAutosave(kept), record);

  it('keeps the work at hand over a reload', async () => {
    const record = recordOf(ROOM);
    expect(await readKept()).toEqual({ record: null, unreadable: [] });
    expect(await keep(record)).toEqual({ kind: 'done', value: null });
    await reload();
    expect(await readKept()).toEqual({ record, unreadable: [] });
  });

  it('keeps what cannot be read, beside newer work, until it is forgotten', async () => {
    await keep(recordOf('{"half":'));
    await reload();
    const first = await readKept();
    expect(first.record).toBeNull();
    expect(first.unreadable).toMatchObject([{ name: 'den', text: '{"half":' }]);
    await keep(recordOf(ROOM, 9));
    await reload();
    const second = await readKept();
    expect(second.record).toEqual(recordOf(ROOM, 9));
    expect(second.unreadable).toEqual(first.unreadable);
    await page.evaluate(
      (id) => window.hostUnderTest.forgetUnreadable(id),
      first.unreadable[0]?.id ?? '',
    );
    await reload();
    expect(await readKept()).toEqual({ record: recordOf(ROOM, 9), unreadable: [] });
  });

  it('an unreadable record hides no other, and older rooms in a record come apart from it', async () => {
    await page.evaluate(
      ([good, both]) => {
        localStorage.setItem('roomwright-autosave:gone-1', good);
        localStorage.setItem('roomwright-autosave:gone-2', both);
        localStorage.setItem('roomwright-autosave:gone-3', 'no JSON at all');
      },
      [
        JSON.stringify(recordOf(ROOM, 3)),
        JSON.stringify({ ...recordOf('broken', 8), before: { ...recordOf(ROOM), name: 'loft' } }),
      ] as const,
    );
    const found = await readKept();
    expect(found.record).toMatchObject({ name: 'loft', text: ROOM, savedAtMs: 8 });
    expect(found.unreadable.map(({ text }) => text).sort()).toEqual(['broken', 'no JSON at all']);
  });

  it('never drops unsaved work of tabs that are gone', async () => {
    await page.evaluate(
      ([record]) => {
        for (let i = 0; i < 20; i++) localStorage.setItem(`roomwright-autosave:gone-${i}`, record);
      },
      [JSON.stringify(recordOf(ROOM))] as const,
    );
    await readKept();
    expect(await page.evaluate(() => localStorage.length)).toBe(20);
  });

  it('says so where the storage is full or off, and goes on', async () => {
    await context.addInitScript(() => {
      Storage.prototype.setItem = () => {
        throw new DOMException('full', 'QuotaExceededError');
      };
      Storage.prototype.getItem = () => {
        throw new DOMException('off', 'SecurityError');
      };
    });
    await reload();
    expect(await readKept()).toEqual({ record: null, unreadable: [] });
    expect(await keep(recordOf(ROOM))).toMatchObject({
      kind: 'failed',
      sentence: expect.stringContaining('Save the room to a file') as string,
    });
  });

  it('asks before it writes over a file that was changed elsewhere, after a reload too', async () => {
    await fakePickers();
    const saved = await page.evaluate(() =>
      window.hostUnderTest.save('one', 'den.room.json', null),
    );
    if (saved.kind !== 'done') throw new Error(JSON.stringify(saved));
    const { token, stamp } = saved.value;
    const elsewhere = (text: string): Promise<void> =>
      page.evaluate(async (content) => {
        const home = await navigator.storage.getDirectory();
        const writable = await (await home.getFileHandle('den.room.json')).createWritable();
        await writable.write(content);
        await writable.close();
      }, text);
    const save = (replace: boolean) =>
      page.evaluate(([t, o]) => window.hostUnderTest.save('two', 'den', t, o), [
        token,
        { stamp, replace },
      ] as const);
    const content = (): Promise<string> =>
      page.evaluate(async () => {
        const home = await navigator.storage.getDirectory();
        return (await (await home.getFileHandle('den.room.json')).getFile()).text();
      });
    await elsewhere('from elsewhere');
    expect(await save(false)).toEqual({ kind: 'changed' });
    await reload();
    expect(await save(false)).toEqual({ kind: 'changed' });
    expect(await content()).toBe('from elsewhere');
    expect((await save(true)).kind).toBe('done');
    expect((await save(false)).kind).toBe('done');
    expect(await content()).toBe('two');
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
    expect(again).toMatchObject({ kind: 'done', value: { name: 'den.room.json', token } });
    const opened = { kind: 'done', value: { name: 'den.room.json', text: 'zwei, größer', token } };
    expect(await page.evaluate(() => window.hostUnderTest.open())).toMatchObject(opened);

    await page.reload();
    expect(await page.evaluate(() => window.hostUnderTest.recent())).toEqual([
      { name: 'den.room.json', token },
    ]);
    const reopened = await page.evaluate((known) => window.hostUnderTest.reopen(known), token);
    expect(reopened).toMatchObject(opened);
  });

  it('exports bytes and opens data by the pickers, byte for byte', async () => {
    await fakePickers();
    const exported = await page.evaluate(() =>
      window.hostUnderTest.exportBytes('den.room', 'text/csv', Uint8Array.of(0, 255, 10)),
    );
    expect(exported).toEqual({ kind: 'done', value: 'den.room.csv' });
    const content = await page.evaluate(async () => {
      const home = await navigator.storage.getDirectory();
      const file = await (await home.getFileHandle('den.room.csv')).getFile();
      return [...new Uint8Array(await file.arrayBuffer())];
    });
    expect(content).toEqual([0, 255, 10]);
    const opened = await page.evaluate(async () => {
      const home = await navigator.storage.getDirectory();
      const writable = await (
        await home.getFileHandle('den.room.json', { create: true })
      ).createWritable();
      await writable.write(Uint8Array.of(7, 0, 200));
      await writable.close();
      const outcome = await window.hostUnderTest.openData('recording');
      return outcome.kind === 'done' ? [outcome.value.name, ...outcome.value.bytes] : outcome;
    });
    expect(opened).toEqual(['den.room.json', 7, 0, 200]);
  });

  it('exports by a download and opens an upload where there are no pickers', async () => {
    await page.evaluate('delete window.showOpenFilePicker; delete window.showSaveFilePicker;');
    await page.evaluate(NEW_HOST);
    const download = page.waitForEvent('download');
    const exported = await page.evaluate(() =>
      window.hostUnderTest.exportBytes('plan', 'image/svg+xml', Uint8Array.of(60, 200)),
    );
    expect(exported).toEqual({ kind: 'done', value: 'plan.svg' });
    expect((await download).suggestedFilename()).toBe('plan.svg');
    expect([...(await fs.readFile(await (await download).path()))]).toEqual([60, 200]);
    const chooser = page.waitForEvent('filechooser');
    const opened = page.evaluate(async () => {
      const outcome = await window.hostUnderTest.openData('measured-decay');
      return outcome.kind === 'done' ? [outcome.value.name, ...outcome.value.bytes] : outcome;
    });
    await (
      await chooser
    ).setFiles({ name: 'decay.csv', mimeType: 'text/csv', buffer: Buffer.from([1, 2]) });
    expect(await opened).toEqual(['decay.csv', 1, 2]);
    const another = page.waitForEvent('filechooser');
    const tooLong = page.evaluate(() => window.hostUnderTest.openData('measured-decay'));
    await (
      await another
    ).setFiles({ name: 'long.csv', mimeType: 'text/csv', buffer: Buffer.alloc(5_000_001) });
    expect(await tooLong).toMatchObject({
      sentence: expect.stringContaining('measured decay) has 5 MB at most') as string,
    });
  });

  it('is cancelled where the picker is called off, and refuses what is too large or no text', async () => {
    await fakePickers();
    const save = (text: string, name: string) =>
      page.evaluate(([t, n]) => window.hostUnderTest.save(t, n, null), [text, name] as const);
    expect(await save('one', 'called-off')).toEqual({ kind: 'cancelled' });
    expect(await save('x'.repeat(MAX_ROOM_BYTES + 1), 'den.room.json')).toMatchObject({
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
    expect(await putAndOpen(MAX_ROOM_BYTES + 1, 32)).toMatchObject({
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
    expect(saved).toEqual({
      kind: 'done',
      value: { name: 'den.room.json', token: null, stamp: null },
    });
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
      value: { name: 'den.room.json', text: '{"größe":1}', token: null, stamp: null },
    });
    expect(await page.evaluate(() => window.hostUnderTest.recent())).toEqual([]);
  });
});
