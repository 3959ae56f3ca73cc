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
    // Paper cannot be pressed: every finding is printed with what it says.
    expect(await page.locator('.finding-more').first().isVisible()).toBe(true);
    expect(await page.locator('.finding-more').last().isVisible()).toBe(true);
    const board = await page.evaluate<{ width: number; height: number }>(BOX('.board'));
    expect(board.width).toBeLessThanOrEqual(1046);
    expect(board.height).toBeLessThanOrEqual(716);
    const figure = await page.evaluate<{ width: number }>(BOX('.evidence [data-part=chart] svg'));
    const box = await page.evaluate<{ width: number }>(BOX('.evidence [data-part=chart]'));
    expect(figure.width).toBeLessThanOrEqual(box.width + 2);
  });

  it('prints the plan as lines, whole, with its figures', async () => {
    const { page } = await open();
    await page.getByRole('radio', { name: 'Plan', exact: true }).check({ force: true });
    await page.waitForSelector('.drawing svg.flat path');
    await page.evaluate(`window.dispatchEvent(new Event('beforeprint'))`);
    await page.emulateMedia({ media: 'print' });
    expect(await page.locator('.drawing canvas').count()).toBe(0);
    expect(await page.locator('.dimension-figure').allInnerTexts()).toEqual(['6.40 m', '4.20 m']);
    expect(await page.locator('.grip').first().isVisible()).toBe(false);
    const inside = await page.evaluate<boolean>(`(() => {
      const board = document.querySelector('.board').getBoundingClientRect();
      const lines = document.querySelector('.drawing svg.flat > g').getBoundingClientRect();
      return lines.width > board.width / 3 && lines.left >= board.left && lines.right <= board.right
        && lines.top >= board.top && lines.bottom <= board.bottom;
    })()`);
    expect(inside).toBe(true);
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

  it('prints painted pressure in the colours of the paper, with its key', async () => {
    const { page } = await open({ colorScheme: 'dark' });
    const box = await page.getByRole('img', { name: /axial, .* tangential/ }).boundingBox();
    if (!box) throw new Error('no chart');
    await page.mouse.click(box.x + 104 + ((box.width - 120) * 26.8) / 200, box.y + 60);
    await page.getByLabel('Key of the painted pressure').waitFor();
    await page.evaluate(`window.print = () => {
      const canvas = document.querySelector('.drawing canvas');
      const copy = document.createElement('canvas');
      copy.width = canvas.width;
      copy.height = canvas.height;
      const context = copy.getContext('2d');
      context.drawImage(canvas, 0, 0);
      const { data } = context.getImageData(0, 0, copy.width, copy.height);
      let sum = 0;
      let count = 0;
      for (let i = 0; i < data.length; i += 4) {
        if (data[i + 3] < 200) continue;
        sum += data[i] + data[i + 1] + data[i + 2];
        count += 3;
      }
      window.brightness = sum / count;
    }`);
    await page.keyboard.press('Control+p');
    await expect.poll(() => page.evaluate('window.brightness')).toBeGreaterThan(140);
  });
});
