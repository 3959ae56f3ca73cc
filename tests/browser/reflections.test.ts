import type { Locator, Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { browserOrSkip } from './support/browser';
import { programWindows } from './support/window';

describe.runIf(browserOrSkip())('reflections of the loudspeakers, in the window', () => {
  const { open } = programWindows();

  /** A window with this evidence of the speakers open. */
  async function evidence(tab: string): Promise<Page> {
    const { page } = await open();
    await page.getByRole('button', { name: /Speakers/ }).click();
    await page.getByRole('button', { name: tab, exact: true }).click();
    return page;
  }

  const choose = (page: Page, channel: string): Promise<void> =>
    page
      .getByRole('group', { name: 'Loudspeaker' })
      .getByRole('button', { name: channel, exact: true })
      .click();

  const told = async (figure: Locator): Promise<string> =>
    (await figure.getByRole('img').getAttribute('aria-label')) ?? '';

  describe('near walls', () => {
    it('draws the sum, names the first notches and tells how to move one', async () => {
      const page = await evidence('Walls');
      const chart = page.getByRole('figure', { name: 'Near walls', exact: true });
      expect(await told(chart)).toMatch(
        /^Left at row 1, seat 2.*left wall 346 Hz, floor 261 Hz, ceiling 193 Hz, screen wall 136 Hz/,
      );
      const table = page.getByRole('figure', { name: 'Notches of the near walls' });
      expect(await table.getByRole('row', { name: /screen wall/ }).innerText()).toMatch(
        /0\.70 m\s+1\.266 m\s+136 Hz\s+−8\.4 dB/,
      );
      // The deepest of those that are minded is chosen from the start.
      const advice = table.locator('.more');
      expect(await advice.innerText()).toMatch(
        /Closer than 0\.474 m .* above 200 Hz. Farther than .* order of a quarter wave thick/,
      );
      await table.getByRole('button', { name: 'left wall' }).click();
      expect(await advice.innerText()).toMatch(/above 200 Hz, where a notch is minded less/);
    });

    it('chooses the notch that is pressed in the chart', async () => {
      const page = await evidence('Walls');
      const chart = page.getByRole('figure', { name: 'Near walls', exact: true });
      const mark = await chart.locator('.notch-mark', { hasText: 'right wall' }).boundingBox();
      const box = await chart.getByRole('img').boundingBox();
      if (!mark || !box) throw new Error('no mark');
      await page.mouse.click(mark.x + mark.width / 2 - 3, box.y + box.height - 40);
      const chosen = page.getByRole('figure', { name: 'Notches' }).locator('tr.chosen').first();
      expect(await chosen.innerText()).toMatch(/right wall\s+3\.775 m/);
    });

    it('follows loudspeaker, seat and room', async () => {
      const page = await evidence('Walls');
      const chart = page.getByRole('figure', { name: 'Near walls', exact: true });
      const first = await told(chart);
      await choose(page, 'Rs');
      expect(await told(chart)).toMatch(/^Right surround at row 1, seat 2.*back wall 54 Hz/);
      await choose(page, 'L');
      expect(await told(chart)).toBe(first);
      await page.getByLabel('at', { exact: true }).selectOption('row 2, seat 1 from the left');
      expect(await told(chart)).toMatch(/^Left at row 2, seat 1/);
      await page.getByLabel('L from the left wall').fill('1.0');
      await page.keyboard.press('Enter');
      expect(await told(chart)).not.toMatch(/left wall 346 Hz/);
      // The bass is looked at from the same seat.
      await page.getByRole('button', { name: /Bass/ }).click();
      expect(await page.getByLabel('Seat looked at').locator('option:checked').innerText()).toMatch(
        /row 2, seat 1/,
      );
    });
  });
});
