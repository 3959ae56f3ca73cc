import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { browserOrSkip } from './support/browser';
import { drawn, programWindows } from './support/window';

/** Modes are solved in the worker; a busy machine takes its time. */
const SOLVED = { timeout: 20_000 };

describe.runIf(browserOrSkip())('modes as built, in the window', () => {
  const { open } = programWindows();

  const openFittings = async (): Promise<Page> => {
    const { page } = await open();
    await page.getByLabel('Open an example room').selectOption('under-the-ducts');
    await page.getByRole('button', { name: /Fittings/ }).click();
    await expect
      .poll(() => page.getByRole('figure', { name: 'Modes as built' }).innerText(), SOLVED)
      .toMatch(/to 200 Hz, each within 0\.\d\d %/);
    return page;
  };

  it('come by themselves with name, shift and error, and follow the room', async () => {
    const page = await openFittings();
    const table = page.getByRole('figure', { name: 'Shift of each mode' });
    // The lowest mode runs along the room; the shell's is at 25.6 Hz.
    expect(await table.locator('tbody tr').first().innerText()).toMatch(/27\.0\s+L1\s+\+1\.4/);
    await page.getByRole('button', { name: 'riser-back', exact: true }).click();
    await page.getByRole('button', { name: 'Remove riser-back' }).click();
    await expect
      .poll(() => table.locator('tbody tr').first().innerText(), SOLVED)
      .not.toMatch(/27\.0\s+L1\s+\+1\.4/);
    await page.getByRole('button', { name: /Undo remove riser-back/ }).click();
    await expect
      .poll(() => table.locator('tbody tr').first().innerText(), SOLVED)
      .toMatch(/27\.0\s+L1\s+\+1\.4/);
  });

  it('of higher limit can be asked for, and stopped, and asked for again', async () => {
    const page = await openFittings();
    const figure = page.getByRole('figure', { name: 'Modes as built' });
    await page.getByRole('radio', { name: '300 Hz' }).check({ force: true });
    await figure.getByRole('button', { name: 'Stop' }).click();
    expect(await figure.innerText()).toContain('Stopped.');
    await figure.getByRole('button', { name: 'Solve them' }).click();
    await expect.poll(() => figure.innerText(), SOLVED).toMatch(/to 300 Hz, each within/);
  });

  it('are painted when chosen, with a key, in every view, until taken off', async () => {
    const page = await openFittings();
    const before = await page.locator('.drawing canvas').screenshot();
    await page.getByRole('button', { name: '27.0', exact: true }).click();
    const key = page.getByLabel('Key of the painted pressure');
    expect(await key.innerText()).toMatch(/27\.0 Hz\s*L1, as built[\s\S]*on the faces/);
    await drawn(page);
    expect((await page.locator('.drawing canvas').screenshot()).equals(before)).toBe(false);
    await page.getByRole('radio', { name: 'Plan', exact: true }).check({ force: true });
    expect(await key.innerText()).toContain('at ear height');
    await page.getByRole('button', { name: 'Take the pressure off the drawing' }).click();
    expect(await key.count()).toBe(0);
  });

  it('are the shell’s own where nothing fills it, and one of them can be painted too', async () => {
    const { page } = await open();
    const box = await page.getByRole('img', { name: /axial, .* tangential/ }).boundingBox();
    if (!box) throw new Error('no chart');
    // 26.8 of 200 Hz along the length: left margin 104, right margin 16.
    const x = box.x + 104 + ((box.width - 120) * 26.8) / 200;
    await page.mouse.click(x, box.y + 60);
    expect(await page.getByLabel('Key of the painted pressure').innerText()).toMatch(
      /26\.8 Hz\s*L1, plain shell/,
    );
  });
});
