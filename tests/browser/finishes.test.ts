import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { browserOrSkip } from './support/browser';
import { programWindows } from './support/window';

describe.runIf(browserOrSkip())('the chooser of finishes, in the window', () => {
  const { open } = programWindows();

  async function decay(options: Parameters<typeof open>[0] = {}): Promise<Page> {
    const { page } = await open(options);
    await page.getByRole('button', { name: /Decay/ }).click();
    return page;
  }

  const field = (page: Page) => page.getByRole('button', { name: /^Ceiling/ });
  const find = (page: Page) => page.getByRole('combobox', { name: 'Find' });
  const options = (page: Page) => page.getByRole('dialog').getByRole('option');
  const chosen = (page: Page) => page.getByRole('dialog').getByRole('option', { selected: true });

  it('finds one finish by the words of either country, and takes it from the keyboard', async () => {
    const page = await decay();
    await field(page).focus();
    await page.keyboard.press('Enter');
    expect(await page.locator(':focus').getAttribute('role')).toBe('combobox');
    await page.keyboard.type('drywall');
    const first = await options(page).count();
    expect(first).toBeGreaterThan(5);
    await find(page).fill('plasterboard');
    expect(await options(page).count()).toBe(first);

    const before = await chosen(page).innerText();
    await page.keyboard.press('ArrowDown');
    const active = await chosen(page).getAttribute('id');
    expect(await chosen(page).innerText()).not.toBe(before);
    expect(await find(page).getAttribute('aria-activedescendant')).toBe(active);

    await find(page).fill('panel 4" mineral');
    await page.keyboard.press('Enter');
    expect(await page.getByRole('dialog').count()).toBe(0);
    expect(await field(page).innerText()).toMatch(/^Rock-wool panel 100 mm/);
    expect(await page.locator(':focus').innerText()).toMatch(/^Rock-wool panel/);
    await page.getByRole('button', { name: /Undo/ }).click();
    expect(await field(page).innerText()).toMatch(/^Plasterboard ceiling/);
  });

  it('says how a finish is built, what it takes of the room, and what it does to the target', async () => {
    const page = await decay({ locale: 'en-US' });
    await field(page).click();
    await find(page).fill('glass-cloth face 1" tile');
    const option = options(page).first();
    expect(await option.innerText()).toContain('hung with 14 3/4" of air above');
    expect(await option.innerText()).toContain('takes 15 3/4" of height');
    expect(await option.innerText()).toMatch(/\d\.\d\d s nearer/);
    expect(await option.getByText(/absorbs 125 Hz 0\.77, 500 Hz 0\.75/).count()).toBe(1);
    expect(await page.locator('.finish-details').innerText()).toContain('Long');
    await find(page).fill('zinc');
    expect(await page.getByText('No finish has all these words').isVisible()).toBe(true);
    await page.keyboard.press('Enter');
    await page.keyboard.press('Escape');
    expect(await page.getByRole('dialog').count()).toBe(0);
  });

  it('begins with what helps most, and lists by name when asked', async () => {
    const page = await decay();
    await field(page).click();
    const names = () => page.locator('[role=group] .finish-name').allInnerTexts();
    const nearer = async () =>
      (await options(page).first().locator('.finish-effect').innerText()) ?? '';
    expect(await nearer()).toMatch(/nearer|within/);
    const byHelp = await names();
    await page.getByRole('radio', { name: 'By name' }).check({ force: true });
    expect(await names()).not.toEqual(byHelp);
  });

  it.each([
    [1440, 900],
    [1024, 700],
  ])('fits a window of %i x %i, with targets of 24 px and nothing cut', async (width, height) => {
    const page = await decay({ viewport: { width, height } });
    await field(page).click();
    const box = await page.getByRole('dialog').boundingBox();
    expect(box && box.x >= 0 && box.x + box.width <= width && box.y + box.height <= height).toBe(
      true,
    );
    const small = await page.evaluate(
      `[...document.querySelectorAll('.finish-dialog button, .finish-dialog [role=option], .finish-dialog input[type=text]')]
        .filter((element) => element.offsetHeight < 24).length`,
    );
    expect(small).toBe(0);
    const wide = await page.evaluate(
      `[...document.querySelectorAll('.finish-page, .finish-head, .finish-list, .finish-option, .finish-details')]
        .filter((element) => element.scrollWidth > element.clientWidth + 1).map((element) => element.className)`,
    );
    expect(wide).toEqual([]);
  });
});

describe.runIf(browserOrSkip())('words of the trade, in the window', () => {
  const { open } = programWindows();

  it('explain themselves on a press of a key, and lead to the glossary', async () => {
    const { page } = await open();
    const word = page.getByRole('button', { name: /^Single resonances end at/ });
    await word.focus();
    await page.keyboard.press('Enter');
    const note = page.getByRole('dialog', { name: /Schroeder frequency/ });
    expect(await note.innerText()).toMatch(/What is good: .*\nSource: Schroeder/s);
    await page.keyboard.press('Escape');
    expect(await note.count()).toBe(0);
    expect(await page.locator(':focus').innerText()).toBe('Single resonances end at');

    await word.click();
    await page.getByRole('button', { name: 'All words' }).click();
    const glossary = page.getByRole('dialog', { name: 'Glossary' });
    expect(await glossary.getByText('Where single resonances end').isVisible()).toBe(true);
    await glossary.getByRole('searchbox').fill('rt60');
    expect(await glossary.locator('dt').allInnerTexts()).toEqual([
      'How long sound lingers (reverberation time, decay time)',
    ]);
    await page.keyboard.press('Escape');
    await page.getByRole('button', { name: 'Words', exact: true }).click();
    expect(await glossary.isVisible()).toBe(true);
  });
});
