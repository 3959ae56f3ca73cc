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
    await page.getByRole('tab', { name: tab, exact: true }).click();
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
        /0\.70 m\s+1\.27 m\s+136 Hz\s+−8\.4 dB/,
      );
      // The deepest of those that are minded is chosen from the start.
      const advice = table.locator('.more');
      expect(await advice.innerText()).toMatch(
        /Closer than 47 cm .* above 200 Hz. Farther than .* order of a quarter wave thick/,
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
      expect(await chosen.innerText()).toMatch(/right wall\s+3\.78 m/);
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
      await page.getByRole('textbox', { name: 'L from the left wall' }).fill('1.0');
      await page.keyboard.press('Enter');
      expect(await told(chart)).not.toMatch(/left wall 346 Hz/);
      // The bass is looked at from the same seat.
      await page.getByRole('button', { name: /Bass/ }).click();
      expect(await page.getByLabel('Seat looked at').locator('option:checked').innerText()).toMatch(
        /row 2, seat 1/,
      );
    });
  });

  describe('first reflections', () => {
    it('draws them under the limit and tells delay, level and excess', async () => {
      const page = await evidence('Early');
      const chart = page.getByRole('figure', { name: 'First reflections', exact: true });
      expect(await told(chart)).toMatch(
        /^Left at row 1, seat 2.*left wall 1\.4 ms −1\.4 dB over by 8\.6 dB, floor .*back wall 15\.5 ms −8\.4 dB\. /,
      );
      expect(await chart.locator('.stem.over path').count()).toBe(4);
      expect(await chart.locator('.stem circle').count()).toBe(1);
      const table = page.getByRole('figure', { name: 'First reflections by face' });
      expect(await table.getByRole('row', { name: /right wall/ }).innerText()).toMatch(
        /9\.3 ms\s+−6\.0 dB\s+1 kHz\s+4\.0 dB/,
      );
      expect(await table.getByRole('row', { name: /back wall/ }).innerText()).toMatch(/later/);
      expect(await table.locator('.left-out').innerText()).toMatch(/^1 more is not judged/);
      const first = await told(chart);
      await choose(page, 'R');
      expect(await told(chart)).not.toBe(first);
      expect(await told(chart)).toMatch(/^Right at row 1, seat 2.*right wall 1\.4 ms/);
    });

    it('names in the drawing the reflection that is pressed in the chart', async () => {
      const page = await evidence('Early');
      const plate = page.locator('.reflection-plate');
      expect(await plate.textContent()).toBe('left wall −1.4 dB');
      const chart = page.getByRole('figure', { name: 'First reflections', exact: true });
      const stem = await chart.locator('.stem', { hasText: 'right wall' }).boundingBox();
      if (!stem) throw new Error('no stem');
      await page.mouse.click(stem.x + stem.width / 2, stem.y + stem.height - 6);
      await page.mouse.move(4, 400);
      expect(await plate.textContent()).toBe('right wall −6.0 dB');
      await expect.poll(() => plate.isVisible()).toBe(true);
      const table = page.getByRole('figure', { name: 'First reflections by face' });
      expect(await table.locator('tr.chosen').first().innerText()).toMatch(/right wall/);
      // What is pointed at in the table is shown for the moment.
      await table.getByRole('row', { name: /ceiling/ }).hover();
      await expect.poll(() => plate.textContent()).toBe('ceiling −2.1 dB');
      await page.mouse.move(4, 400);
      await expect.poll(() => plate.textContent()).toBe('right wall −6.0 dB');
      await page.getByRole('tab', { name: 'Angles', exact: true }).click();
      expect(await plate.count()).toBe(0);
    });

    it('puts a panel where the sound meets the wall, and undo takes it back', async () => {
      const page = await evidence('Early');
      const table = page.getByRole('figure', { name: 'First reflections by face' });
      const chosen = table.locator('tr.chosen');
      const before = await chosen.first().innerText();
      expect(before).toMatch(/left wall\s+1\.4 ms\s+−1\.4 dB\s+1 kHz\s+8\.6 dB/);
      await table.getByRole('button', { name: 'Put a panel here' }).click();
      expect(await chosen.first().innerText()).toMatch(
        /left wall\s+1\.4 ms\s+−11\.7 dB\s+\d kHz\s+within/,
      );
      expect(await chosen.nth(1).innerText()).toMatch(/It meets the patch "panel-1"/);
      await page.getByRole('button', { name: /Undo panel on the left wall/ }).click();
      expect(await chosen.first().innerText()).toBe(before);
    });

    it('opens for a finding on early reflections, with its loudspeaker and face', async () => {
      const { page } = await open();
      const finding = page.locator('.finding', {
        hasText: 'reaches the reference place by way of',
      });
      const where = await finding.first().locator('.finding-where').innerText();
      await finding.first().locator('.finding-head').click();
      const table = page.getByRole('figure', { name: 'First reflections by face' });
      expect(await table.locator('tr.chosen').first().innerText()).toContain(where);
      const chart = page.getByRole('figure', { name: 'First reflections', exact: true });
      const [channel = ''] = (await told(chart)).split(' at ');
      expect(await finding.first().locator('.finding-more').innerText()).toContain(channel);
    });
  });
});
