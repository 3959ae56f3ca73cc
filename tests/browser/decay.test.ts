import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { browserOrSkip } from './support/browser';
import { chooseFinish, programWindows } from './support/window';

describe.runIf(browserOrSkip())('decay, in the window', () => {
  const { open } = programWindows();

  const group = (page: Page, title: string) =>
    page.locator('summary', { has: page.getByText(title, { exact: true }) });

  async function decay(size = { width: 1440, height: 900 }): Promise<Page> {
    const { page } = await open({ viewport: size });
    await page.getByRole('button', { name: /Decay/ }).click();
    return page;
  }

  const told = async (page: Page): Promise<string> =>
    (await page.getByRole('img', { name: /63 Hz: no figure/ }).getAttribute('aria-label')) ?? '';

  it('says which method to read, how far the methods part, and how long single modes ring', async () => {
    const page = await decay();
    const advice = page.locator('.decay-advice');
    expect(await advice.innerText()).toMatch(
      /^Read Arau-Puchades ◆ \(0\.92 s at 1 kHz\): floor and ceiling absorb 6\.2 × as much as side walls/,
    );
    const chart = await told(page);
    expect(chart).toMatch(/1000 Hz: 0\.67 s, by all methods 0\.61 to 1\.31 s/);
    expect(chart).toMatch(/\d+ single modes 0\.\d\d to \d\.\d\d s/);
    await group(page, 'Methods').click();
    expect(await page.getByText('Fitzroy', { exact: true }).isVisible()).toBe(true);
  });

  it('changes the chart by a patch that is set by figures, and mends one that sticks out', async () => {
    const page = await decay();
    const before = await told(page);
    await group(page, 'Doors, windows, panels').click();
    await page.getByRole('button', { name: 'Add panel' }).click();
    const after = await told(page);
    expect(after).not.toBe(before);
    await page.getByLabel('panel-1 width').fill('3 m');
    await page.keyboard.press('Enter');
    expect(await told(page)).not.toBe(after);

    await page.getByLabel('panel-1 above the floor').fill('2');
    await page.keyboard.press('Enter');
    const finding = page.locator('.finding', { hasText: 'The panel sticks' });
    expect(await finding.count()).toBe(1);
    await finding.locator('.finding-head').click();
    await finding.getByRole('button', { name: 'Apply' }).click();
    expect(await finding.count()).toBe(0);
    expect(await page.getByLabel('panel-1 above the floor').inputValue()).toBe('1.20 m');

    await page.getByRole('button', { name: 'Remove panel-1' }).click();
    expect(await told(page)).toBe(before);
  });

  it('takes an own finish with a sentence for what cannot be, and keeps what is in use', async () => {
    const page = await decay();
    await group(page, 'Own finishes').click();
    await page.getByRole('button', { name: 'New finish' }).click();
    await page.getByLabel('Name', { exact: true }).fill('Felt of the loft');
    await page.keyboard.press('Enter');
    const at500 = page.getByLabel('Coefficient at 500 Hz');
    await at500.fill('2');
    await page.keyboard.press('Enter');
    expect(await page.getByRole('alert').innerText()).toMatch(/0 to 1\.25.*nearest.*1\.25/);
    await at500.fill('0.8');
    await page.keyboard.press('Enter');
    expect(await page.getByRole('alert').count()).toBe(0);

    const before = await told(page);
    await chooseFinish(page, /^Ceiling/, 'felt of the loft');
    const after = await told(page);
    expect(after).not.toBe(before);
    // Only 500 Hz has a figure now.
    expect(after).toMatch(/250 Hz: no figure; 500 Hz: 0\.\d\d s.*; 1000 Hz: no figure/);
    expect(await page.getByRole('button', { name: 'In use, cannot be removed' }).isDisabled()).toBe(
      true,
    );
    await chooseFinish(page, /^Ceiling/, 'tile-ac-19');
    await page.getByRole('button', { name: 'Remove Felt of the loft' }).click();
    expect(await page.getByLabel('Coefficient at 500 Hz').count()).toBe(0);
  });

  it('fills the seats with people, who absorb', async () => {
    const page = await decay();
    const before = await told(page);
    await group(page, 'People and seats').click();
    await page.getByRole('button', { name: 'Fill the 6 seats' }).click();
    expect(await told(page)).not.toBe(before);
    expect(await page.locator('.shares li', { hasText: '6 ×' }).innerText()).toContain('2.64 m²');
    await page.getByLabel('Group 1, how many').fill('3');
    await page.keyboard.press('Enter');
    expect(await page.locator('.shares li', { hasText: '3 ×' }).innerText()).toContain('1.32 m²');
    await page.getByRole('button', { name: 'Remove group 1' }).click();
    expect(await told(page)).toBe(before);
  });

  it('judges by another target, and by an own one with its tolerance', async () => {
    const page = await decay();
    await page.getByLabel('Open an example room').selectOption('long-room');
    await page.getByRole('radio', { name: 'Home cinema' }).check({ force: true });
    expect(await page.getByText(/trade rule for home cinemas/).isVisible()).toBe(true);
    await page.getByRole('radio', { name: 'My own' }).check({ force: true });
    await page.getByLabel('500 s').fill('0.22');
    await page.keyboard.press('Enter');
    const finding = page.locator('.finding', { hasText: 'decays in' });
    expect(await finding.count()).toBe(0);
    await page.getByLabel('Within %').fill('5');
    await page.keyboard.press('Enter');
    expect(await finding.count()).toBe(1);
  });

  it('chooses the octave from the keyboard', async () => {
    const page = await decay();
    await page.getByLabel('What absorbs at').selectOption('125');
    expect(await page.getByRole('figure', { name: 'Absorption at 125 Hz' }).count()).toBe(1);
  });

  it('opens the absorber bench in place of the inputs, with its curve, and closes it again', async () => {
    const page = await decay();
    await group(page, 'Own finishes').click();
    await page.getByRole('button', { name: 'Design an absorber' }).click();
    expect(await page.getByRole('group', { name: 'Absorber design' }).isVisible()).toBe(true);
    expect(await page.getByRole('figure', { name: 'Absorption of the design' }).count()).toBe(1);
    await page.getByRole('button', { name: 'Close', exact: true }).click();
    expect(await page.getByRole('button', { name: /^Ceiling/ }).isVisible()).toBe(true);
  });

  it('fits a small window: nothing of the inputs or the charts is wider than its place', async () => {
    const page = await decay({ width: 1024, height: 700 });
    for (const title of ['Doors, windows, panels', 'People and seats', 'Own finishes', 'Methods']) {
      await group(page, title).click();
    }
    await page.getByRole('button', { name: 'Add panel' }).click();
    await page.getByRole('button', { name: 'New finish' }).click();
    await page.getByRole('button', { name: 'Fill the 6 seats' }).click();
    const wide = await page.evaluate(
      `[...document.querySelectorAll('.inputs, .decay-inputs, .decay-chart figcaption, .decay-advice')]
        .filter((element) => element.scrollWidth > element.clientWidth + 1)
        .map((element) => element.className)`,
    );
    expect(wide).toEqual([]);
  });
});
