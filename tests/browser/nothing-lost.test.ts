import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { browserOrSkip } from './support/browser';
import { drawn, openProgram, programWindows } from './support/window';

const side = (page: Page, name: string) => page.getByLabel(name, { exact: true });
const type = async (page: Page, name: string, figure: string): Promise<void> => {
  await side(page, name).fill(figure);
  await page.keyboard.press('Enter');
};

/** Save pickers that give files of the page's own storage, by the name in `window.nextFile`. */
const OWN_FILES = `
  window.showSaveFilePicker = async () =>
    (await navigator.storage.getDirectory()).getFileHandle(window.nextFile, { create: true });
  window.showOpenFilePicker = async () => { throw new DOMException('', 'AbortError'); };
`;
/** A 30 m wide room with a subwoofer near its left wall. */
const WIDE = JSON.stringify({
  format: 'roomwright-room',
  version: 1,
  room: { size: { width: 30, length: 8, height: 3 } },
  speakers: { subwoofers: [{ id: 's', position: [1, 1, 0.2] }] },
});
const dropFile = (page: Page, name: string, text: string): Promise<void> =>
  page.evaluate(`(() => {
    const dataTransfer = new DataTransfer();
    dataTransfer.items.add(new File([${JSON.stringify(text)}], '${name}'));
    const target = document.querySelector('.drawing');
    for (const kind of ['dragover', 'drop'])
      target.dispatchEvent(new DragEvent(kind, { dataTransfer, bubbles: true, cancelable: true }));
  })()`);
const widthIn = (page: Page, name: string): Promise<number> =>
  page.evaluate<number>(`(async () => {
    const folder = await navigator.storage.getDirectory();
    const file = await (await folder.getFileHandle('${name}')).getFile();
    return JSON.parse(await file.text()).room.size.width;
  })()`);

describe.runIf(browserOrSkip())('nothing is lost', () => {
  const { open, address } = programWindows();

  it('in one drag in and back: rows and loudspeakers end where they began', async () => {
    const { page } = await open();
    await page.getByRole('radio', { name: 'Plan', exact: true }).check({ force: true });
    await drawn(page);
    const before = await page.locator('.labels').innerText();
    const grip = await page.locator('.grip-length').boundingBox();
    if (!grip) throw new Error('no grip');
    const [x, y] = [grip.x + 13, grip.y + 13];
    await page.mouse.move(x, y);
    await page.mouse.down();
    await page.mouse.move(x - 300, y, { steps: 12 });
    await page.mouse.move(x, y, { steps: 12 });
    await page.mouse.up();
    expect(await side(page, 'Length').inputValue()).toBe('6.40 m');
    expect(await page.locator('.labels').innerText()).toBe(before);
    expect(await page.getByRole('button', { name: /Undo/ }).isDisabled()).toBe(true);
  });

  it('when a room was saved under a second name: undo and save leave the first file alone', async () => {
    const { page, context } = await open();
    await page.close();
    await context.addInitScript(OWN_FILES);
    const own = await openProgram(context, address());
    const saveAs = async (name: string): Promise<void> => {
      await own.evaluate(`window.nextFile = '${name}'`);
      await own.getByRole('button', { name: 'Save as' }).click();
      await own.getByText(`Saved as ${name}`).waitFor();
    };
    await type(own, 'Width', '4.1');
    await saveAs('a.room.json');
    await type(own, 'Width', '3.9');
    await saveAs('b.room.json');
    await own.getByRole('button', { name: /Undo/ }).click();
    await type(own, 'Width', '3.7');
    await own.getByRole('button', { name: 'Save', exact: true }).click();
    await own.locator('.title-block', { hasText: 'not saved' }).waitFor({ state: 'detached' });
    expect(await widthIn(own, 'a.room.json')).toBe(4.1);
    expect(await widthIn(own, 'b.room.json')).toBe(3.7);
  });

  it('in two windows: each finds its own work again', async () => {
    const { page, context } = await open();
    await type(page, 'Width', '3.5');
    const other = await openProgram(context, address());
    expect(await side(other, 'Width').inputValue()).toBe('4.20 m');
    await type(other, 'Width', '5.5');
    await page.waitForTimeout(700);
    await page.reload();
    await page.waitForSelector('.drawing[data-frames]');
    await page.getByText(/unsaved work/).waitFor();
    expect(await side(page, 'Width').inputValue()).toBe('3.50 m');
  });

  it('when a new room replaced unsaved work and the window was lost: undo brings it back', async () => {
    const { page } = await open();
    await type(page, 'Width', '3.33');
    await page.getByRole('button', { name: 'New', exact: true }).click();
    await page.reload();
    await page.waitForSelector('.drawing[data-frames]');
    await page.getByRole('button', { name: /Undo/ }).click();
    expect(await side(page, 'Width').inputValue()).toBe('3.33 m');
  });

  it('when the window is lost right after an edit', async () => {
    const { page } = await open();
    await type(page, 'Width', '3.44');
    await page.reload();
    await page.waitForSelector('.drawing[data-frames]');
    await page.getByText(/unsaved work/).waitFor();
    expect(await side(page, 'Width').inputValue()).toBe('3.44 m');
  });

  it('when a figure was typed, not entered, and the room is saved by key', async () => {
    const { page } = await open();
    await side(page, 'Width').fill('3.66');
    const download = page.waitForEvent('download');
    await page.keyboard.press('Control+s');
    await download;
    expect(await page.locator('.title-block').innerText()).toContain('3.66 m');
    expect(await page.locator('.title-block').innerText()).not.toContain('not saved');
  });

  it('when two windows save one file: the second is asked, and its file stays as it was', async () => {
    const { page, context } = await open();
    await page.close();
    await context.addInitScript(OWN_FILES);
    const first = await openProgram(context, address());
    await first.evaluate(`window.nextFile = 'a.room.json'`);
    await type(first, 'Width', '4.11');
    await first.getByRole('button', { name: 'Save as' }).click();
    await first.getByText('Saved as a.room.json').waitFor();
    await first.evaluate(`(async () => {
      const folder = await navigator.storage.getDirectory();
      const writable = await (await folder.getFileHandle('a.room.json')).createWritable();
      await writable.write('{"room":{"size":{"width":5.55}}}');
      await writable.close();
    })()`);
    await type(first, 'Width', '4.44');
    await first.getByRole('button', { name: 'Save', exact: true }).click();
    await first.getByText(/changed elsewhere/).waitFor();
    expect(await widthIn(first, 'a.room.json')).toBe(5.55);
    await first.getByRole('button', { name: 'Replace it' }).click();
    await first.getByText('Saved as a.room.json').waitFor();
    expect(await widthIn(first, 'a.room.json')).toBe(4.44);
  });

  it('when kept work cannot be read: it is offered as it is, and stays until it is saved', async () => {
    const { page, context } = await open();
    await page.close();
    const record = { text: '{"half":', name: 'loft.room.json', token: null, savedAtMs: 9 };
    await context.addInitScript(`if (location.protocol === 'http:' && !localStorage.getItem('once')) {
      localStorage.setItem('once', '1');
      localStorage.setItem('roomwright-autosave:gone', ${JSON.stringify(
        JSON.stringify({ ...record, unsaved: true, before: null }),
      )});
    }`);
    const own = await openProgram(context, address());
    await own.getByText(/Kept work could not be read: loft/).waitFor();
    expect(await own.getByRole('alert').innerText()).toMatch(/breaks off before its end/);
    await type(own, 'Width', '3.21');
    await own.reload();
    await own.getByText(/Kept work could not be read: loft/).waitFor();
    expect(await side(own, 'Width').inputValue()).toBe('3.21 m');
    const download = own.waitForEvent('download');
    await own.getByRole('button', { name: 'Save it as it is' }).click();
    expect(readFileSync(await (await download).path(), 'utf8')).toBe('{"half":');
    await own.getByText(/Saved as it is/).waitFor();
    await own.reload();
    await own.getByText(/unsaved work/).waitFor();
    expect(await own.getByText(/could not be read/).count()).toBe(0);
  });

  it('when the browser keeps nothing: that is said once, and closing the page asks', async () => {
    const { page, context } = await open();
    await page.close();
    await context.addInitScript(`Storage.prototype.setItem = () => {
      throw new DOMException('full', 'QuotaExceededError');
    };`);
    const own = await openProgram(context, address());
    await type(own, 'Width', '3.5');
    await own.getByText('Your work is not kept').waitFor();
    await own.getByRole('alert').getByRole('button', { name: 'Close' }).click();
    await type(own, 'Width', '3.6');
    await own.waitForTimeout(700);
    expect(await own.getByText('Your work is not kept').count()).toBe(0);
    const asked = own.waitForEvent('dialog');
    await own.close({ runBeforeUnload: true });
    const dialog = await asked;
    expect(dialog.type()).toBe('beforeunload');
    await dialog.accept();
  });

  it('when a room is made narrow by far: what stood in it is there after a reload', async () => {
    const { page } = await open();
    await dropFile(page, 'wide.room.json', WIDE);
    await page.locator('.title-block', { hasText: 'wide.room.json' }).waitFor();
    await type(page, 'Width', '4');
    await page.reload();
    await page.getByText(/unsaved work on wide/).waitFor();
    expect(await side(page, 'Width').inputValue()).toBe('4.00 m');
  });

  it('when a file is dropped on the window: it opens over undo, and a broken one is told', async () => {
    const { page } = await open();
    await type(page, 'Width', '3.33');
    await dropFile(page, 'wide.room.json', WIDE);
    await page.locator('.title-block', { hasText: 'wide.room.json' }).waitFor();
    await dropFile(page, 'broken.room.json', WIDE.slice(0, 60));
    expect(await page.getByRole('alert').innerText()).toMatch(/breaks off before its end/);
    expect(await side(page, 'Width').inputValue()).toBe('30.00 m');
    await page.getByRole('button', { name: /Undo/ }).click();
    expect(await side(page, 'Width').inputValue()).toBe('3.33 m');
  });
});
