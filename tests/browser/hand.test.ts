import type { Locator, Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { browserOrSkip } from './support/browser';
import { drawn, programWindows } from './support/window';

/** What the hand does in the drawing and with keys. */
describe.runIf(browserOrSkip())('the hand, in the window', () => {
  const { open } = programWindows();

  const subject = (page: Page, name: string): Promise<void> =>
    page.getByRole('navigation', { name: 'Subjects' }).getByRole('button', { name }).click();
  const view = (page: Page, name: string): Promise<void> =>
    page.getByRole('radio', { name, exact: true }).check({ force: true });
  const undo = (page: Page): Locator => page.getByRole('button', { name: /Undo/ });
  const redo = (page: Page): Locator => page.getByRole('button', { name: /Redo/ });

  /** Take hold of the middle of a handle and move by `dx`, `dy` pixels; the button stays down. */
  async function pull(page: Page, handle: Locator, dx: number, dy: number): Promise<void> {
    const box = await handle.boundingBox();
    if (!box) throw new Error('nothing to take hold of');
    const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
    await page.mouse.move(x, y);
    await page.mouse.down();
    await page.mouse.move(x + dx, y + dy, { steps: 6 });
  }

  it('takes a drag back on Escape, with the history as it was', async () => {
    const { page } = await open();
    const width = page.getByRole('textbox', { name: 'Width' });
    const before = await width.inputValue();
    await width.fill('4.5');
    await width.press('Enter');
    await undo(page).click();
    expect(await redo(page).innerText()).toContain('room width');
    await view(page, 'Plan');
    await drawn(page);
    await pull(page, page.locator('.grip-width'), 0, -40);
    expect(await width.inputValue()).not.toBe(before);
    await page.keyboard.press('Escape');
    expect(await width.inputValue()).toBe(before);
    expect(await undo(page).isDisabled()).toBe(true);
    expect(await redo(page).innerText()).toContain('room width');
    // The hand that is still down moves nothing any more.
    await page.mouse.move(10, 10, { steps: 3 });
    await page.mouse.up();
    expect(await width.inputValue()).toBe(before);

    await subject(page, 'Speakers');
    const row = page.getByRole('button', { name: /^Row 1, ears .*: drag/ });
    const said = await row.getAttribute('aria-label');
    await drawn(page);
    await pull(page, row, 60, 0);
    expect(await row.getAttribute('aria-label')).not.toBe(said);
    await page.keyboard.press('Escape');
    expect(await row.getAttribute('aria-label')).toBe(said);
    await page.mouse.up();
  });

  it('removes what is chosen on Delete, by its name in undo, and not while typing', async () => {
    const { page } = await open();
    await subject(page, 'Fittings');
    await page.getByRole('button', { name: 'Column', exact: true }).click();
    const field = page.getByRole('textbox', { name: 'column-1 above the floor' });
    await field.focus();
    await page.keyboard.press('Delete');
    expect(await field.count()).toBe(1);
    await page.getByRole('heading', { name: 'Fittings', exact: true }).click();
    await page.keyboard.press('Delete');
    expect(await field.count()).toBe(0);
    expect(await undo(page).innerText()).toContain('remove column-1');

    await subject(page, 'Bass');
    const sub = page.getByRole('button', { name: /^Subwoofer sub-1/ });
    await sub.focus();
    await page.keyboard.press('Backspace');
    expect(await sub.count()).toBe(0);
    expect(await undo(page).innerText()).toContain('remove sub-1');
    await page.keyboard.press('Control+z');
    expect(await sub.count()).toBe(1);
    await page.keyboard.press('Control+y');
    expect(await sub.count()).toBe(0);
  });

  it('makes one undo step of a burst of arrow presses, and another after a pause', async () => {
    const { page } = await open();
    const grip = page.locator('.grip-width');
    const width = page.getByRole('textbox', { name: 'Width' });
    const before = await width.inputValue();
    await grip.focus();
    // Both in one breath, however busy the computer is.
    await grip.evaluate((element) => {
      for (let n = 0; n < 2; n++)
        element.dispatchEvent(new KeyboardEvent('keydown', { key: 'ArrowRight', bubbles: true }));
    });
    const between = await width.inputValue();
    await page.waitForTimeout(1200);
    await page.keyboard.press('ArrowRight');
    await undo(page).click();
    expect(await width.inputValue()).toBe(between);
    await undo(page).click();
    expect(await width.inputValue()).toBe(before);
  });

  it('takes the painted pressure off with the subject that it was asked for in', async () => {
    const { page } = await open();
    const paint = page.getByLabel('Key of the painted pressure');
    await page.locator('.evidence').getByRole('button').first().waitFor();
    await subject(page, 'Fittings');
    await page.getByRole('button', { name: 'Column', exact: true }).click();
    await page.locator('.evidence table button').first().click();
    await paint.waitFor();
    await subject(page, 'Speakers');
    expect(await paint.count()).toBe(0);
    await subject(page, 'Fittings');
    expect(await paint.count()).toBe(0);
  });

  it('brings the fields of what was added into view', async () => {
    const { page } = await open({ viewport: { width: 1024, height: 700 } });
    const seen = async (field: Locator): Promise<boolean> => {
      const [box, pane] = [await field.boundingBox(), await page.locator('.inputs').boundingBox()];
      if (!box || !pane) return false;
      return box.y >= pane.y && box.y + box.height <= pane.y + pane.height;
    };
    const first = page.locator('.inputs .place').first().getByRole('textbox').first();
    await subject(page, 'Fittings');
    for (const name of ['Soffit left', 'Soffit right', 'Riser', 'Stage', 'Closet', 'Column']) {
      await page.getByRole('button', { name, exact: true }).click();
      expect(await seen(first), name).toBe(true);
    }
    await subject(page, 'Bass');
    for (let n = 0; n < 6; n++) await page.getByRole('button', { name: '+ Add' }).click();
    expect(await seen(first)).toBe(true);
  });

  it('sets the drop of a soffit and leaves it at the ceiling', async () => {
    const { page } = await open({ locale: 'en-US' });
    await subject(page, 'Fittings');
    await page.getByRole('button', { name: 'Soffit right', exact: true }).click();
    const drop = page.getByRole('textbox', { name: 'soffit-1 down from the ceiling' });
    const under = page.getByRole('textbox', { name: 'soffit-1 above the floor' });
    // Deeper than it hangs above the floor by its old figure: no other field comes first.
    await drop.fill('14"');
    await drop.press('Enter');
    expect(await drop.inputValue()).toBe('14"');
    await under.fill(`6'`);
    await under.press('Enter');
    expect(await page.getByRole('alert').count()).toBe(0);
    // The example is 7' 10" high in feet.
    expect(await drop.inputValue()).toBe(`22"`);
  });

  it('takes a door by its tag, slides it along its wall, stretches it and turns its hinges', async () => {
    const { page } = await open();
    await subject(page, 'Fittings');
    await page.locator('summary', { hasText: 'Doors, windows, passages' }).click();
    const many = await page.getByRole('button', { name: /^door-\d+$/ }).count();
    await page.getByRole('button', { name: 'Add door' }).click();
    const id = `door-${many + 1}`;
    await view(page, 'Plan');
    await drawn(page);
    const tag = page.getByRole('button', { name: new RegExp(`^${id}, back wall: drag`) });
    const along = page.getByRole('textbox', { name: `${id} from the left wall` });
    const width = page.getByRole('textbox', { name: `${id} width` });
    const [before, wide] = [await along.inputValue(), await width.inputValue()];
    // Up the page is to the right in the room.
    await pull(page, tag, 0, -30);
    await page.mouse.up();
    expect(parseFloat(await along.inputValue())).toBeGreaterThan(parseFloat(before));
    expect(await undo(page).innerText()).toContain(`place of ${id}`);
    await pull(page, page.locator('.patch-grip-0'), 0, 20);
    await page.mouse.up();
    expect(parseFloat(await width.inputValue())).toBeGreaterThan(parseFloat(wide));
    await page.getByLabel('Hinges').selectOption('right');
    await page.getByLabel('Opens').selectOption('out');
    expect(await undo(page).innerText()).toContain(`swing of ${id}`);
    await tag.focus();
    await page.keyboard.press('Delete');
    expect(await tag.count()).toBe(0);
    expect(await undo(page).innerText()).toContain(`remove ${id}`);
  });

  it('drags a panel along its wall in space, and on to another wall', async () => {
    const { page } = await open();
    await subject(page, 'Decay');
    await page.locator('summary', { hasText: 'Doors, windows, panels' }).click();
    await page.getByRole('button', { name: 'Add panel' }).click();
    const tag = page.getByRole('button', { name: /^panel-1, left wall: drag/ });
    const face = page.getByLabel('Face', { exact: true });
    expect(await face.inputValue()).toBe('left');
    await drawn(page);
    const front = await page.locator('.name-plate', { hasText: 'Screen' }).boundingBox();
    const from = await tag.boundingBox();
    if (!front || !from) throw new Error('not drawn');
    await pull(page, tag, front.x - from.x, front.y - from.y);
    await page.mouse.up();
    expect(await face.inputValue()).toBe('front');
    await page.getByRole('button', { name: /^panel-1, screen wall: drag/ }).waitFor();
  });

  it('shows where the chosen thing is by tape measure, and takes another figure there', async () => {
    const { page } = await open({ locale: 'en-US' });
    await subject(page, 'Fittings');
    await page.getByRole('button', { name: 'Column', exact: true }).click();
    await view(page, 'Plan');
    await drawn(page);
    const type = async (name: RegExp, text: string): Promise<void> => {
      await page.locator('.labels').getByRole('button', { name }).click();
      await page.keyboard.type(text);
      await page.keyboard.press('Enter');
    };
    await type(/^column-1 from the left wall .*type another/, `5' 6"`);
    await type(/^column-1 from the screen wall .*type another/, `3' 2 1/2"`);
    const inputs = page.locator('.inputs');
    const field = (name: string): Promise<string> =>
      inputs.getByRole('textbox', { name }).inputValue();
    expect(await field('column-1 from the left wall')).toBe(`5' 6"`);
    expect(await field('column-1 from the screen wall')).toBe(`3' 2 1/2"`);
    await view(page, 'Cross section');
    await page
      .locator('.labels')
      .getByRole('button', { name: /^column-1 above the floor/ })
      .waitFor();

    await subject(page, 'Bass');
    await page.getByRole('button', { name: /^Subwoofer sub-1/ }).click();
    await drawn(page);
    await type(/^sub-1 from the left wall .*type another/, `3' 0"`);
    expect(await field('sub-1 from the left wall')).toBe(`3' 0"`);

    await view(page, 'Long section');
    await page.getByRole('button', { name: /^Row 1, ears .* from the screen wall: drag/ }).click();
    await drawn(page);
    await type(/^Row 1, ears from the screen wall .*type another/, `12'`);
    const row = page.getByRole('button', {
      name: /^Row 1, ears 12' 0" from the screen wall: drag/,
    });
    expect(await row.count()).toBe(1);
  });

  it('turns and zooms the drawing by keyboard, says so, and Home shows the whole room', async () => {
    const { page } = await open();
    const scene = page.getByRole('application', { name: /^Drawing of the room/ });
    expect(await scene.evaluate((element) => element.getAttribute('aria-describedby'))).not.toBe(
      null,
    );
    expect(await page.locator('.scene-keys').innerText()).toMatch(/Arrow keys turn.*zoom.*Home/);
    const grip = page.locator('.grip-length');
    await drawn(page);
    const start = await grip.boundingBox();
    await scene.focus();
    for (const key of ['ArrowLeft', 'ArrowLeft', '+']) await page.keyboard.press(key);
    await drawn(page);
    const moved = await grip.boundingBox();
    expect(
      Math.hypot((moved?.x ?? 0) - (start?.x ?? 0), (moved?.y ?? 0) - (start?.y ?? 0)),
    ).toBeGreaterThan(10);
    await page.keyboard.press('Home');
    await page.waitForTimeout(600);
    await drawn(page);
    const home = await grip.boundingBox();
    expect(home?.x).toBeCloseTo(start?.x ?? 0, 0);
    expect(home?.y).toBeCloseTo(start?.y ?? 0, 0);
  });

  it('marks a warning by an open triangle everywhere, as the list of findings does', async () => {
    const { page } = await open();
    const finding = page.locator('.finding-head', { hasText: 'M+110' }).first();
    expect(await finding.locator('.severity-warning').count()).toBe(1);
    await page.locator('.speaker-chip.outside', { hasText: '△ Ls' }).waitFor();
    await subject(page, 'Decay');
    const fills = await page
      .locator('.point.outside')
      .evaluateAll((points) =>
        points.map((point) => [getComputedStyle(point).fill, getComputedStyle(point).stroke]),
      );
    expect(fills.length).toBeGreaterThan(0);
    for (const [fill, stroke] of fills) expect(fill).not.toBe(stroke);
  });
});
