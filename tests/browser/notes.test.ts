import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { browserOrSkip } from './support/browser';
import { programWindows } from './support/window';

const SUBJECTS = ['Shell', 'Fittings', 'Speakers', 'Bass', 'Decay'] as const;

/** Every word on the page that opens a note. */
const words = (page: Page) => page.locator('button[aria-haspopup=dialog][aria-expanded]:visible');

describe.runIf(browserOrSkip())('notes and sources', () => {
  const { open } = programWindows();

  it.each([
    [1440, 900],
    [1024, 700],
    [720, 450],
  ] as const)('open beside their word and within a window of %d by %d', async (width, height) => {
    const { page } = await open({ viewport: { width, height } });
    const outside: string[] = [];
    let opened = 0;
    for (const subject of SUBJECTS) {
      await page.getByRole('button', { name: new RegExp(`^\\d\\s*${subject}`) }).click();
      for (const word of await words(page).all()) {
        await word.scrollIntoViewIfNeeded();
        await word.focus();
        await page.keyboard.press('Enter');
        const note = page.locator('[popover]:popover-open');
        const [box, at] = [await note.boundingBox(), await word.boundingBox()];
        if (!box || !at) throw new Error('no note');
        opened += 1;
        const within =
          box.x >= 0 && box.y >= 0 && box.x + box.width <= width && box.y + box.height <= height;
        const apart = Math.max(at.y - (box.y + box.height), box.y - (at.y + at.height));
        // A window of 450 px may be lower than note and word together.
        if (!within || (apart > 12 && height > 450))
          outside.push(`${subject}: ${await word.innerText()}`);
        await page.keyboard.press('Escape');
        expect(await note.count()).toBe(0);
      }
    }
    expect(outside).toEqual([]);
    expect(opened).toBeGreaterThan(15);
  });

  it('tell the source of a figure by touch, and go away by a touch elsewhere', async () => {
    const { page } = await open({ hasTouch: true });
    await page.getByRole('button', { name: 'Speed of sound' }).tap();
    const note = page.getByRole('dialog', { name: 'Speed of sound' });
    expect(await note.innerText()).toBe('ISO 9613-1:1993');
    await page.getByRole('heading', { name: 'Findings' }).tap();
    expect(await note.count()).toBe(0);
  });

  it('leave the row that they stand in as it is', async () => {
    const { page } = await open();
    await page.getByRole('button', { name: /^\d\s*Speakers/ }).click();
    await page.getByRole('tab', { name: 'Early' }).click();
    const table = page.getByRole('figure', { name: 'First reflections by face' });
    await table.getByRole('button', { name: 'delay' }).click();
    expect(await page.getByRole('dialog', { name: 'delay' }).innerText()).toMatch(/^Later than/);
  });
});
