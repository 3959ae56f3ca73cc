import { describe, expect, it } from 'vitest';
import { browserOrSkip } from './support/browser';
import { programWindows } from './support/window';

/** Where an element lies on the printed page; text, so that no build step adds helpers. */
const BOX = (selector: string): string =>
  `(() => { const b = document.querySelector('${selector}').getBoundingClientRect();
    return { width: Math.round(b.width), height: Math.round(b.height) }; })()`;

describe.runIf(browserOrSkip())('the sheet on paper', () => {
  const { open } = programWindows();

  it('keeps drawing and charts whole, and leaves out what is only there to be pressed', async () => {
    const { page } = await open();
    await page.evaluate(`window.dispatchEvent(new Event('beforeprint'))`);
    await page.emulateMedia({ media: 'print' });
    for (const hidden of ['.head', '.subjects', '.inputs', '.view-choice', '.apply', '.grip']) {
      expect(await page.locator(hidden).first().isVisible()).toBe(false);
    }
    expect(await page.locator('.drawing canvas').isVisible()).toBe(true);
    expect(await page.locator('.finding').first().isVisible()).toBe(true);
    const board = await page.evaluate<{ width: number; height: number }>(BOX('.board'));
    expect(board.width).toBeLessThanOrEqual(1046);
    expect(board.height).toBeLessThanOrEqual(716);
    const figure = await page.evaluate<{ width: number }>(BOX('.evidence .chart svg'));
    const box = await page.evaluate<{ width: number }>(BOX('.evidence .chart-box'));
    expect(figure.width).toBeLessThanOrEqual(box.width + 2);
  });

  it('prints light from a dark window by key, and is dark again afterwards', async () => {
    const { page } = await open({ colorScheme: 'dark' });
    await page.evaluate(
      `window.print = () => { window.printedIn = document.documentElement.dataset.appearance; }`,
    );
    await page.keyboard.press('Control+p');
    await expect.poll(() => page.evaluate('window.printedIn')).toBe('light');
    await expect
      .poll(() => page.evaluate('document.documentElement.dataset.appearance'))
      .toBe('dark');
  });
});
