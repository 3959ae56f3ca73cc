import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { browserOrSkip } from './support/browser';
import { drawn, programWindows } from './support/window';

const modeLanes = (page: Page) => page.getByRole('img', { name: /axial, .* oblique modes/ });
const undoButton = (page: Page) => page.getByRole('button', { name: /Undo/ });

describe.runIf(browserOrSkip())('the shell, in the window', () => {
  const { open } = programWindows();

  it('opens on the example bay with its findings in sight, as the browser edition', async () => {
    const { page } = await open();
    expect(await page.getByLabel('Name of the room').inputValue()).toBe('Basement bay, north side');
    expect(await page.getByText('Browser edition').isVisible()).toBe(true);
    expect(await page.locator('.finding').count()).toBeGreaterThan(3);
    expect(await page.getByLabel('Width', { exact: true }).inputValue()).toBe('4.20 m');
    expect(await modeLanes(page).getAttribute('aria-label')).toContain(
      '13 axial, 40 tangential and 30 oblique modes; 2 gaps and 2 pile-ups',
    );
  });

  it('shows a typed width at once in drawing, charts, findings and title block', async () => {
    const { page } = await open();
    await page.getByLabel('Width', { exact: true }).fill('4.09');
    await page.keyboard.press('Enter');
    expect(await page.locator('.title-block').innerText()).toContain('4.09 m × 6.40 m × 2.40 m');
    expect(await page.locator('.dimension-figure').first().innerText()).toBe('4.09 m');
    expect(await modeLanes(page).getAttribute('aria-label')).toContain('2 gaps and 1 pile-ups');
    expect(await page.locator('.title-block').innerText()).toContain('not saved');
  });

  it('takes feet, inches and fractions', async () => {
    const { page } = await open();
    await page.getByRole('radio', { name: 'ft in' }).check({ force: true });
    const width = page.getByLabel('Width', { exact: true });
    expect(await width.inputValue()).toBe('13\' 9 3/8"');
    await width.fill('13\' 2 1/2"');
    await page.keyboard.press('Enter');
    expect(await width.inputValue()).toBe('13\' 2 1/2"');
    await page.getByRole('radio', { name: 'm', exact: true }).check({ force: true });
    expect(await width.inputValue()).toBe('4.026 m');
  });

  it.each([
    ['banana', /"banana" is not a length\. Type it like 4\.03 m/],
    ['0', /Width can be 1\.00 m to 30\.00 m; the nearest is 1\.00 m/],
    ['-3', /"-3" is not a length/],
    ['77', /the nearest is 30\.00 m/],
    ['NaN', /"NaN" is not a length/],
  ])('answers the width "%s" with a sentence and keeps the room', async (typed, sentence) => {
    const { page } = await open();
    const width = page.getByLabel('Width', { exact: true });
    await width.fill(typed);
    await page.keyboard.press('Enter');
    expect(await page.getByRole('alert').innerText()).toMatch(sentence);
    expect(await width.inputValue()).toBe(typed);
    expect(await page.locator('.title-block').innerText()).toContain('4.20 m × 6.40 m × 2.40 m');
    await width.press('Escape');
    expect(await width.inputValue()).toBe('4.20 m');
  });

  it('undoes and redoes by name, back to the start', async () => {
    const { page } = await open();
    expect(await undoButton(page).isDisabled()).toBe(true);
    await page.getByLabel('Width', { exact: true }).fill('4.5');
    await page.keyboard.press('Enter');
    await page.getByLabel('Height', { exact: true }).fill('2.3');
    await page.keyboard.press('Enter');
    expect(await undoButton(page).innerText()).toContain('room height');
    await undoButton(page).click();
    expect(await page.getByRole('button', { name: /Redo/ }).innerText()).toContain('room height');
    await undoButton(page).click();
    expect(await page.getByLabel('Width', { exact: true }).inputValue()).toBe('4.20 m');
    expect(await undoButton(page).isDisabled()).toBe(true);
    await page.getByRole('button', { name: /Redo/ }).click();
    expect(await page.getByLabel('Width', { exact: true }).inputValue()).toBe('4.50 m');
  });

  it('drags a wall in one step of the history, snapping to 5 mm', async () => {
    const { page } = await open();
    await page.getByRole('radio', { name: 'Plan', exact: true }).check({ force: true });
    await drawn(page);
    const grip = await page.locator('.grip-length').boundingBox();
    if (!grip) throw new Error('no grip');
    const [x, y] = [grip.x + grip.width / 2, grip.y + grip.height / 2];
    await page.mouse.move(x, y);
    await page.mouse.down();
    await page.mouse.move(x + 37, y, { steps: 9 });
    const during = await page.getByLabel('Length', { exact: true }).inputValue();
    expect(parseFloat(during)).toBeGreaterThan(6.5);
    await page.mouse.up();
    const length = parseFloat(await page.getByLabel('Length', { exact: true }).inputValue());
    expect(Math.abs(length / 0.005 - Math.round(length / 0.005))).toBeLessThan(1e-6);
    expect(await undoButton(page).innerText()).toContain('room length');
    await undoButton(page).click();
    expect(await page.getByLabel('Length', { exact: true }).inputValue()).toBe('6.40 m');
    expect(await undoButton(page).isDisabled()).toBe(true);
  });

  it('takes another figure on a dimension line', async () => {
    const { page } = await open();
    await page.getByRole('button', { name: /Length 6.40 m: type another/ }).click();
    await page.keyboard.type('5.9');
    await page.keyboard.press('Enter');
    expect(await page.getByRole('button', { name: /Length 5.90 m/ }).isVisible()).toBe(true);
  });

  it('moves a wall with the arrow keys of its handle', async () => {
    const { page } = await open();
    await page.locator('.grip-height').focus();
    await page.keyboard.press('ArrowUp');
    await page.keyboard.press('ArrowUp');
    expect(await page.getByLabel('Height', { exact: true }).inputValue()).toBe('2.41 m');
  });

  it('applies a remedy with one press, and undo takes it back', async () => {
    const { page } = await open();
    const finding = page.locator('.finding', { hasText: 'Left surround sounds from' });
    await finding.locator('.finding-head').click();
    await finding.getByRole('button', { name: 'Apply' }).click();
    expect(await finding.count()).toBe(0);
    expect(await undoButton(page).innerText()).toContain('Left surround');
    await undoButton(page).click();
    expect(await finding.count()).toBe(1);
  });

  it('says that its chart is of the plain shell where fittings shift the modes', async () => {
    const { page } = await open();
    await page.getByLabel('Open an example room').selectOption('under-the-ducts');
    expect(await page.getByText('89 modes of the plain shell').isVisible()).toBe(true);
  });

  it.each([
    { width: 1440, height: 900 },
    { width: 1024, height: 700 },
  ])('fits $width by $height without scrolling the page, findings in sight', async (viewport) => {
    const { page } = await open({ viewport });
    const [page_, client] = await page.evaluate<[number, number]>(
      '[document.documentElement.scrollHeight, document.documentElement.clientHeight]',
    );
    expect(page_).toBeLessThanOrEqual(client);
    const findings = await page.locator('.finding').first().boundingBox();
    expect((findings?.y ?? 1e9) + (findings?.height ?? 0)).toBeLessThan(viewport.height);
    const drawing = await page.locator('.drawing').boundingBox();
    expect(drawing?.width).toBeGreaterThan(viewport.width * 0.6);
  });
});
