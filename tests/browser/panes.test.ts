import type { Locator, Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { browserOrSkip } from './support/browser';
import { programWindows } from './support/window';

const subject = (page: Page, title: string): Locator =>
  page.getByRole('button', { name: new RegExp(`^\\d\\s*${title}`) });
const divider = (page: Page): Locator => page.getByRole('separator', { name: /Divider between/ });
const heightOf = async (box: Locator): Promise<number> => (await box.boundingBox())?.height ?? 0;

describe.runIf(browserOrSkip())('the panes beside the drawing', () => {
  const { open } = programWindows();

  it('fold findings to one line each; a press opens one, a second press folds it', async () => {
    const { page } = await open();
    const heads = page.locator('.finding-head');
    expect(await heads.count()).toBeGreaterThan(5);
    expect(await page.locator('.finding-more:visible').count()).toBe(0);
    for (const head of await heads.all()) expect(await heightOf(head)).toBeLessThan(36);
    await heads.first().click();
    expect(await page.locator('.finding-more:visible').count()).toBe(1);
    expect(await heads.first().getAttribute('aria-expanded')).toBe('true');
    await heads.first().click();
    expect(await page.locator('.finding-more:visible').count()).toBe(0);
  });

  it('list the findings of the open subject first, from the top of the list', async () => {
    const { page } = await open();
    const list = page.locator('.findings-list');
    await list.evaluate((box) => (box.scrollTop = 1000));
    await subject(page, 'Decay').click();
    expect(await list.evaluate((box) => box.scrollTop)).toBe(0);
    expect(await list.locator('h3').first().innerText()).toMatch(/^Decay \d+$/);
    const first = list.locator('.finding').first();
    expect(await first.innerText()).toContain('Hz');
    await first.locator('.finding-head').click();
    expect(await first.locator('.finding-more').innerText()).toContain('decays in');
  });

  it.each([
    { width: 1440, height: 900 },
    { width: 1024, height: 700 },
  ])('give the inputs the height that they need at $width by $height', async (viewport) => {
    const { page } = await open({ viewport });
    const inputs = page.locator('.inputs');
    const hidden = await inputs.evaluate((box) => box.scrollHeight - box.clientHeight);
    expect(hidden).toBeLessThanOrEqual(0);
    await subject(page, 'Speakers').click();
    // More fields than fit: the findings keep a heading and some lines.
    expect(await heightOf(page.locator('.findings-list'))).toBeGreaterThan(120);
    expect(await heightOf(inputs)).toBeGreaterThan(viewport.height * 0.5);
  });

  it('move by the divider, remember it, and fit again', async () => {
    const { page, context } = await open();
    const inputs = page.locator('.inputs');
    const fitted = await heightOf(inputs);
    const box = await divider(page).boundingBox();
    await page.mouse.move((box?.x ?? 0) + 60, (box?.y ?? 0) + 4);
    await page.mouse.down();
    await page.mouse.move((box?.x ?? 0) + 60, (box?.y ?? 0) + 124, { steps: 4 });
    await page.mouse.up();
    const dragged = await heightOf(inputs);
    expect(dragged).toBeGreaterThan(fitted + 100);
    await page.reload();
    await page.waitForSelector('.finding');
    expect(Math.abs((await heightOf(inputs)) - dragged)).toBeLessThan(2);
    await divider(page).focus();
    await page.keyboard.press('ArrowUp');
    expect(await heightOf(inputs)).toBeLessThan(dragged);
    await page.keyboard.press('Enter');
    expect(Math.abs((await heightOf(inputs)) - fitted)).toBeLessThan(2);
    await context.close();
  });

  it('show the marks and whether the work is saved at 1024 by 700 too', async () => {
    const { page } = await open({ viewport: { width: 1024, height: 700 } });
    expect(await page.getByLabel('Marks on the sheet').isVisible()).toBe(true);
    await page.getByLabel('Width', { exact: true }).fill('4.3');
    await page.keyboard.press('Enter');
    expect(await page.locator('.save-state').isVisible()).toBe(true);
    expect(await page.title()).toMatch(/^Not saved: Basement bay/);
    const nav = page.locator('.subjects');
    expect(await nav.evaluate((box) => box.scrollHeight - box.clientHeight)).toBe(0);
  });
});
