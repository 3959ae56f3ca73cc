import { describe, expect, it } from 'vitest';
import { browserOrSkip } from './support/browser';
import { programWindows } from './support/window';

describe.runIf(browserOrSkip())('proportions, in the window', () => {
  const { open } = programWindows();

  it('makes the map in the worker and shows every criterion with its verdict', async () => {
    const { page } = await open();
    await page.getByRole('tab', { name: 'Proportions' }).click();
    await page.getByText(/here \d+ Hz uneven/).waitFor();
    const criteria = page.getByRole('figure', { name: 'Criteria on size and proportions' });
    expect(await criteria.getByRole('listitem').count()).toBe(11);
    expect(await criteria.getByText(/Proportion inequality: met/).count()).toBe(1);
    expect(await criteria.getByText(/Widest axial gap: not met/).count()).toBe(1);
  });

  it('drags the room on the map, and the room follows in the same step', async () => {
    const { page } = await open();
    await page.getByRole('tab', { name: 'Proportions' }).click();
    await page.getByText(/here \d+ Hz uneven/).waitFor();
    const ring = await page.locator('.map-ring').boundingBox();
    if (!ring) throw new Error('no ring');
    const [x, y] = [ring.x + ring.width / 2, ring.y + ring.height / 2];
    await page.mouse.move(x, y);
    await page.mouse.down();
    await page.mouse.move(x - 12, y + 8, { steps: 5 });
    await page.mouse.up();
    const width = parseFloat(await page.getByLabel('Width', { exact: true }).inputValue());
    const length = parseFloat(await page.getByLabel('Length', { exact: true }).inputValue());
    expect(width).toBeLessThan(4.2);
    expect(length).toBeLessThan(6.4);
    await page.getByRole('button', { name: /Undo/ }).click();
    expect(await page.getByLabel('Width', { exact: true }).inputValue()).toBe('4.20 m');
    expect(await page.getByRole('button', { name: /Undo/ }).isDisabled()).toBe(true);
  });

  it('never leaves the bay, however far the ring is dragged', async () => {
    const { page } = await open();
    await page.getByRole('tab', { name: 'Proportions' }).click();
    const ring = await page.locator('.map-ring').boundingBox();
    if (!ring) throw new Error('no ring');
    await page.mouse.move(ring.x + 7, ring.y + 7);
    await page.mouse.down();
    await page.mouse.move(ring.x - 400, ring.y + 400, { steps: 5 });
    await page.mouse.up();
    expect(await page.getByLabel('Width', { exact: true }).inputValue()).toBe('3.70 m');
    expect(await page.getByLabel('Length', { exact: true }).inputValue()).toBe('5.60 m');
  });

  it('finds the evenest rooms of the bay and takes one', async () => {
    const { page } = await open();
    await page.getByText('The bay: what can be built').click();
    await page.getByLabel('height stays as it is').check();
    await page.getByLabel('Least width', { exact: true }).fill('4.0');
    await page.keyboard.press('Enter');
    await page.getByRole('button', { name: 'Find the evenest rooms' }).first().click();
    const found = page.getByRole('figure', { name: 'Evenest rooms in the bay' });
    await found.getByText(/tried in/).waitFor();
    const first = found.getByRole('row').nth(1);
    const before = await page.getByLabel('Width', { exact: true }).inputValue();
    await first.locator('.show-room').click();
    expect(await first.locator('.show-room').getAttribute('aria-pressed')).toBe('true');
    expect(await page.getByLabel('Width', { exact: true }).inputValue()).toBe(before);
    await page.keyboard.press('Escape');
    expect(await first.locator('.show-room').getAttribute('aria-pressed')).toBe('false');
    await first.locator('.take-room').click();
    expect(await page.getByLabel('Height', { exact: true }).inputValue()).toBe('2.40 m');
    expect(
      parseFloat(await page.getByLabel('Width', { exact: true }).inputValue()),
    ).toBeGreaterThan(3.99);
    expect(await found.getByRole('row').nth(1).getAttribute('class')).toBe('chosen');
  });

  it('says what to do where no room of the bay has the floor that is asked for', async () => {
    const { page } = await open();
    await page.getByText('The bay: what can be built').click();
    await page.getByLabel(/Least floor/).fill('400');
    await page.keyboard.press('Enter');
    await page.getByRole('button', { name: 'Find the evenest rooms' }).first().click();
    await page.getByText(/No room in the bay has that much floor/).waitFor();
  });

  it('keeps what it has found where the search is stopped, and says how far it came', async () => {
    const { page } = await open();
    await page.getByText('The bay: what can be built').click();
    await page.getByLabel("Carpenter's step").fill('0.002 m');
    await page.keyboard.press('Enter');
    await page.getByRole('button', { name: 'Find the evenest rooms' }).first().click();
    const found = page.getByRole('figure', { name: 'Evenest rooms in the bay' });
    await found.getByText(/[1-9]\d* %/).waitFor();
    // At once: a button under a moving progress may never rest long enough for a pointer.
    await found.getByRole('button', { name: 'Stop' }).dispatchEvent('click');
    await found.getByText(/stopped at \d+ %/).waitFor();
    expect(await found.getByRole('row').count()).toBeGreaterThan(1);
  });
});
