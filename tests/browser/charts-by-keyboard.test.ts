import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { browserOrSkip } from './support/browser';
import { programWindows } from './support/window';

const walker = (page: Page, label: RegExp) => page.getByRole('slider', { name: label });

describe.runIf(browserOrSkip())('charts by keyboard', () => {
  const { open } = programWindows();

  it('walk the modes, say each, and paint the chosen one', async () => {
    const { page } = await open();
    const modes = walker(page, /^Modes from the lowest/);
    await modes.focus();
    await page.keyboard.press('ArrowRight');
    // Lowest mode of a 6.40 m length: 343.2 / (2 x 6.40) = 26.8 Hz.
    expect(await modes.getAttribute('aria-valuetext')).toMatch(/^26\.8 Hz .*axial$/);
    await page.keyboard.press('End');
    expect(await modes.getAttribute('aria-valuenow')).toBe('83');
    await page.keyboard.press('ArrowLeft');
    expect(await modes.getAttribute('aria-valuenow')).toBe('82');
    await page.keyboard.press('Home');
    await page.keyboard.press('Enter');
    await page.waitForSelector('.paint-key');
    expect(await page.locator('.paint-key').innerText()).toContain('26.8');
  });

  it('walk the response at the seats and choose a frequency', async () => {
    const { page } = await open();
    await page.getByRole('button', { name: /^\d\s*Bass/ }).click();
    const response = walker(page, /^Frequencies from the lowest/);
    await response.waitFor();
    await response.focus();
    await page.keyboard.press('Home');
    expect(await response.getAttribute('aria-valuetext')).toMatch(/^20\.0 Hz\s+here/);
    await page.keyboard.press('Shift+ArrowRight');
    const text = await response.getAttribute('aria-valuetext');
    expect(Number.parseFloat(text ?? '')).toBeGreaterThan(21);
    await page.keyboard.press('Enter');
    await page.waitForSelector('.paint-key');
  });
});

describe.runIf(browserOrSkip())('tabs by keyboard', () => {
  const { open } = programWindows();

  it('are walked by arrow keys, and one of them is a stop of the Tab key', async () => {
    const { page } = await open();
    await page.getByRole('button', { name: /^\d\s*Speakers/ }).click();
    const tabs = page.getByRole('tablist', { name: 'Evidence for the speakers' });
    const shown = async (): Promise<string> =>
      page.getByRole('tabpanel').evaluate((panel) => {
        const tab = document.getElementById(panel.getAttribute('aria-labelledby') ?? '');
        return `${tab?.innerText}, ${tab === document.activeElement ? 'with' : 'without'} the focus`;
      });
    await tabs.getByRole('tab', { selected: true }).focus();
    await page.keyboard.press('ArrowDown');
    expect(await shown()).toBe('Seats, with the focus');
    await page.getByRole('figure', { name: 'All channels at all seats' }).waitFor();
    await page.keyboard.press('End');
    expect(await shown()).toBe('Early, with the focus');
    await page.keyboard.press('ArrowRight');
    expect(await shown()).toBe('Angles, with the focus');
    await page.keyboard.press('ArrowUp');
    expect(await shown()).toBe('Early, with the focus');
    await page.keyboard.press('Home');
    await page.keyboard.press('Tab');
    expect(await shown()).toBe('Angles, without the focus');
    expect(await tabs.locator(':focus').count()).toBe(0);
  });
});
