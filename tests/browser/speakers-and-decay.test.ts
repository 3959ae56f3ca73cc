import { describe, expect, it } from 'vitest';
import { browserOrSkip } from './support/browser';
import { chooseFinish, drawn, programWindows } from './support/window';

describe.runIf(browserOrSkip())('speakers and decay, in the window', () => {
  const { open } = programWindows();

  it('shows azimuth, window, distance, delay and level of each channel', async () => {
    const { page } = await open();
    await page.getByRole('button', { name: /Speakers/ }).click();
    const row = page.getByRole('row', { name: /Rs/ });
    expect(await row.innerText()).toMatch(
      /-109\.5°\s+-120 to -100°\s+6\.8°\s+2\.11 m\s+3\.90 ms\s+-4\.3 dB/,
    );
    expect(await page.getByRole('row', { name: /△ Ls/ }).count()).toBe(1);
  });

  it('goes to 7.1 with every new loudspeaker inside its window', async () => {
    const { page } = await open();
    await page.getByLabel('Open an example room').selectOption('long-room');
    await page.getByRole('button', { name: /Speakers/ }).click();
    expect(await page.getByRole('row').count()).toBe(8);
    expect(await page.getByRole('row', { name: /△/ }).count()).toBe(0);
  });

  it('drags a loudspeaker into its window, and the table follows', async () => {
    const { page } = await open();
    await page.getByRole('button', { name: /Speakers/ }).click();
    await page.getByRole('radio', { name: 'Plan', exact: true }).check({ force: true });
    await drawn(page);
    // A reflection of the loudspeaker at its new place is another matter.
    const ownFinding = page.locator('.finding-head', { hasText: 'Left surround' });
    expect(await ownFinding.count()).toBe(1);
    const chip = page.getByRole('button', { name: /Left surround, angle to the side/ });
    const box = await chip.boundingBox();
    if (!box) throw new Error('no chip');
    await page.mouse.move(box.x + 20, box.y + 8);
    await page.mouse.down();
    await page.mouse.move(box.x - 60, box.y + 8, { steps: 8 });
    await page.mouse.up();
    expect(await page.getByRole('row', { name: /● Ls/ }).count()).toBe(1);
    expect(await ownFinding.count()).toBe(0);
  });

  it('sets a loudspeaker by tape measure from the corner', async () => {
    const { page } = await open();
    await page.getByRole('button', { name: /Speakers/ }).click();
    await page.getByRole('button', { name: '○ C', exact: true }).first().click();
    await page.getByLabel('C above the floor').fill('1.1');
    await page.keyboard.press('Enter');
    expect(await page.getByRole('row', { name: /● C/ }).innerText()).toMatch(/0\.0°\s+0°\s+0\.0°/);
  });

  it('follows a finish at once and says where a figure is missing', async () => {
    const { page } = await open();
    await page.getByRole('button', { name: /Decay/ }).click();
    const chart = page.getByRole('img', { name: /63 Hz: no figure/ });
    const before = await chart.getAttribute('aria-label');
    await chooseFinish(page, /^Ceiling/, 'tile-ac-19');
    const after = await chart.getAttribute('aria-label');
    expect(after).not.toBe(before);
    expect(after).toMatch(/500 Hz: 0\.3\d s/);
    expect(await page.getByText(/Schroeder\): a guide only/).isVisible()).toBe(true);
  });

  it('takes an own target and judges by it', async () => {
    const { page } = await open();
    await page.getByLabel('Open an example room').selectOption('long-room');
    await page.getByRole('button', { name: /Decay/ }).click();
    await page.getByRole('radio', { name: 'My own' }).check({ force: true });
    await page.getByLabel('500 s').fill('0.6');
    await page.keyboard.press('Enter');
    expect(await page.locator('.finding', { hasText: '500 Hz decays in' }).count()).toBe(1);
  });
});
