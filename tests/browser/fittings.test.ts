import { describe, expect, it } from 'vitest';
import { browserOrSkip } from './support/browser';
import { drawn, programWindows } from './support/window';

describe.runIf(browserOrSkip())('fittings, in the window', () => {
  const { open } = programWindows();

  it('adds a soffit, stretches it in the cross section, and volume and areas follow', async () => {
    const { page } = await open();
    await page.getByRole('button', { name: /Fittings/ }).click();
    await page.getByRole('button', { name: 'Soffit left', exact: true }).click();
    await page.getByRole('tab', { name: 'Areas', exact: true }).click();
    const areas = page.getByRole('figure', { name: 'Exposed areas' });
    // 4.2 x 6.4 x 2.4 m less 0.6 x 6.4 x 0.3 m is 63.36 m3.
    expect(await areas.innerText()).toContain('around 63.4 m³');
    await page.getByRole('radio', { name: 'Cross section', exact: true }).check({ force: true });
    await drawn(page);
    const grip = await page.locator('.fitting-grip-right').boundingBox();
    if (!grip) throw new Error('no grip');
    await page.mouse.move(grip.x + 13, grip.y + 13);
    await page.mouse.down();
    await page.mouse.move(grip.x + 60, grip.y + 13, { steps: 6 });
    await page.mouse.up();
    const wide = parseFloat(await page.getByLabel('soffit-1 out from the left wall').inputValue());
    expect(wide).toBeGreaterThan(0.7);
    expect(await areas.innerText()).not.toContain('around 63.4 m³');
    await page.getByRole('button', { name: /Undo size of soffit-1/ }).click();
    expect(await page.getByLabel('soffit-1 out from the left wall').inputValue()).toBe('0.60 m');
  });

  it('refuses a fitting that cuts the room in two, with the reason, and keeps the room', async () => {
    const { page } = await open();
    await page.getByRole('button', { name: /Fittings/ }).click();
    await page.getByRole('button', { name: 'Beam', exact: true }).click();
    await page.getByLabel('beam-1 down from the ceiling').fill('2.4');
    await page.keyboard.press('Enter');
    expect(await page.getByRole('alert').innerText()).toMatch(/cut the room in two/);
    expect(await page.getByLabel('beam-1 down from the ceiling').inputValue()).toBe('0.26 m');
  });

  it('moves a fitting by the arrow keys and removes it, and undo brings it back', async () => {
    const { page } = await open();
    await page.getByRole('button', { name: /Fittings/ }).click();
    await page.getByRole('button', { name: 'Column', exact: true }).click();
    await page.getByRole('radio', { name: 'Plan', exact: true }).check({ force: true });
    await page.getByRole('button', { name: /column-1: drag to move/ }).focus();
    await page.keyboard.press('ArrowRight');
    expect(
      await page.getByRole('textbox', { name: 'column-1 from the screen wall' }).inputValue(),
    ).toBe('3.085 m');
    await page.getByRole('button', { name: 'Remove column-1' }).click();
    expect(await page.getByLabel('column-1 wide').count()).toBe(0);
    await page.getByRole('button', { name: /Undo remove column-1/ }).click();
    await page.getByRole('button', { name: 'column-1', exact: true }).click();
    expect(await page.getByLabel('column-1 wide').inputValue()).toBe('0.24 m');
  });
});
