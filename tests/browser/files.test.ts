import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { browserOrSkip } from './support/browser';
import { openProgram, programWindows, savedText } from './support/window';

const BAY = readFileSync(
  new URL('../../resources/examples/basement-bay.room.json', import.meta.url),
  'utf8',
);

async function chooseFile(page: Page, name: string, content: string | Buffer): Promise<void> {
  const chooser = page.waitForEvent('filechooser');
  await page.getByRole('button', { name: 'Open', exact: true }).click();
  await (
    await chooser
  ).setFiles({ name, mimeType: 'application/json', buffer: Buffer.from(content) });
}

describe.runIf(browserOrSkip())('room files, in the window', () => {
  const { open, address } = programWindows();

  it('saves what is on the sheet and opens it again unchanged', async () => {
    const { page } = await open();
    await page.getByLabel('Width', { exact: true }).fill('4.09');
    await page.keyboard.press('Enter');
    const text = await savedText(page);
    expect(JSON.parse(text)).toMatchObject({
      format: 'roomwright-room',
      version: 2,
      note: expect.stringContaining('Invented example') as string,
      room: { size: { width: 4.09, length: 6.4, height: 2.4 } },
    });
    await page.getByText('Saved as basement-bay.room.json').waitFor();
    await page.getByRole('button', { name: 'New', exact: true }).click();
    await chooseFile(page, 'again.room.json', text);
    await page.locator('.title-block', { hasText: 'again.room.json' }).waitFor();
    expect(await page.getByLabel('Width', { exact: true }).inputValue()).toBe('4.09 m');
    expect(await savedText(page)).toBe(text);
  });

  it.each<[string, string | Buffer, RegExp]>([
    ['a file that breaks off', BAY.slice(0, 700), /breaks off before its end/],
    ['a newer version', BAY.replace('"version": 2', '"version": 7'), /newer Roomwright/],
    ['bytes that are no text', Buffer.from([0xff, 0xfe, 0x00, 0xd8]), /not UTF-8 text/],
    ['a 50 MB file', Buffer.alloc(50_000_000, 32), /it has 50 MB and a room file has 5 MB at most/],
    [
      'an unknown finish',
      BAY.replace('gyp-ceiling-battens', 'gyp-ceiling-baton'),
      /nearest known one is "gyp-ceiling-battens"/,
    ],
    ['a prototype key', BAY.replace('"note"', '"__proto__"'), /may not use/],
    [
      'a text width',
      BAY.replace('"width": 4.2', '"width": "wide"'),
      /room\.size\.width: must be a length in metres from 1 to 30; the file says "wide"/,
    ],
  ])('refuses %s with a sentence and keeps the room', async (_what, content, sentence) => {
    const { page } = await open();
    await page.getByLabel('Width', { exact: true }).fill('4.5');
    await page.keyboard.press('Enter');
    await chooseFile(page, 'broken.room.json', content);
    expect(await page.getByRole('alert').innerText()).toMatch(sentence);
    expect(await page.getByLabel('Width', { exact: true }).inputValue()).toBe('4.50 m');
  });

  it('opens a room whose loudspeaker stands outside, and offers to bring it in', async () => {
    const { page } = await open();
    await chooseFile(page, 'out.room.json', BAY.replace('[4.08,', '[5.4,'));
    const finding = page.locator('.finding', { hasText: 'Right surround stands 1.20 m outside' });
    await finding.locator('.finding-head').click();
    await finding.getByRole('button', { name: 'Apply' }).first().click();
    expect(await finding.count()).toBe(0);
  });

  it('brings unsaved work back after the window was lost', async () => {
    const { page, context } = await open();
    await page.getByLabel('Length', { exact: true }).fill('5.55');
    await page.keyboard.press('Enter');
    await page.waitForTimeout(900);
    await page.close({ runBeforeUnload: false });
    const again = await openProgram(context, address());
    expect(await again.getByLabel('Length', { exact: true }).inputValue()).toBe('5.55 m');
    expect(
      await again.getByText('Your unsaved work on basement-bay.room.json is back').isVisible(),
    ).toBe(true);
  });

  it('takes opening a file back with undo: nothing is lost', async () => {
    const { page } = await open();
    await page.getByLabel('Width', { exact: true }).fill('4.5');
    await page.keyboard.press('Enter');
    await page.getByLabel('Open an example room').selectOption('long-room');
    expect(await page.getByLabel('Width', { exact: true }).inputValue()).toBe('3.60 m');
    await page.keyboard.press('Control+z');
    expect(await page.getByLabel('Width', { exact: true }).inputValue()).toBe('4.50 m');
    expect(await page.locator('.title-block').innerText()).toContain('basement-bay.room.json');
  });
});
