import { describe, expect, it } from 'vitest';
import { browserOrSkip } from './support/browser';
import { drawn, programWindows } from './support/window';

describe.runIf(browserOrSkip())('loudspeakers on surfaces, in the window', () => {
  const { open } = programWindows();

  const openSpeakers = async () => {
    const { page } = await open();
    await page.getByRole('button', { name: /^\d?\s*Speakers/ }).click();
    return page;
  };

  it('are placed by angle for a layout with height, in one step that undo takes back', async () => {
    const page = await openSpeakers();
    await page.getByRole('radio', { name: '5.1.4' }).check({ force: true });
    await page.getByLabel('the picture lets sound through').check();
    await page.getByRole('button', { name: 'Place the loudspeakers' }).click();
    const outcome = page.getByText('9 placed');
    await outcome.waitFor();
    expect(await page.getByText(/Centre plays through the picture/).count()).toBe(1);
    expect(await page.getByText(/What else it traded/).count()).toBe(1);
    const table = page.getByRole('figure', { name: 'Loudspeaker figures' });
    expect(await table.locator('tbody tr').count()).toBe(9);
    expect(await table.innerText()).not.toContain('△');
    await page.getByRole('button', { name: /Undo loudspeaker places/ }).click();
    expect(await table.innerText()).toContain('△');
  });

  it('are named in the drawing where they come later', async () => {
    const page = await openSpeakers();
    await page.getByRole('button', { name: 'Place the loudspeakers' }).click();
    await page.getByText('5 placed').waitFor();
    await page.getByLabel('wire for later').selectOption({ label: '7.1' });
    await page.getByRole('radio', { name: 'Room', exact: true }).check({ force: true });
    await drawn(page);
    expect(await page.getByText('Lrs later', { exact: true }).isVisible()).toBe(true);
    expect(await page.getByText('Rrs later', { exact: true }).isVisible()).toBe(true);
  });

  it('stay where they are pinned', async () => {
    const page = await openSpeakers();
    await page
      .getByRole('group', { name: 'Loudspeaker' })
      .getByRole('button', { name: /Ls/ })
      .click();
    const place = await page.getByRole('textbox', { name: 'Ls from the screen wall' }).inputValue();
    await page.getByLabel(/pinned/).check();
    await page.getByRole('button', { name: 'Place the loudspeakers' }).click();
    await page.getByText('4 placed').waitFor();
    expect(await page.getByText(/Centre goes below the picture/).count()).toBe(1);
    expect(await page.getByRole('textbox', { name: 'Ls from the screen wall' }).inputValue()).toBe(
      place,
    );
  });

  it('can be turned by arrow key past straight back, and the room still opens', async () => {
    const page = await openSpeakers();
    await page.getByRole('radio', { name: 'Plan', exact: true }).check({ force: true });
    await page
      .getByRole('group', { name: 'Loudspeaker' })
      .getByRole('button', { name: /C$/ })
      .click();
    await page.getByRole('button', { name: /^Aim of M\+000/ }).focus();
    await page.keyboard.press('ArrowLeft');
    await page.getByText('Box and aim').click();
    // From 180 a step further is -179.
    expect(Math.abs(Number(await page.getByLabel(/^Turned/).inputValue()))).toBe(179);
  });

  it('are judged at every seat, and by the recommendation that is chosen', async () => {
    const page = await openSpeakers();
    await page.getByRole('radio', { name: '7.1', exact: true }).check({ force: true });
    await page.getByRole('radio', { name: /BS\.775/ }).check({ force: true });
    expect(await page.getByRole('figure', { name: 'Loudspeaker figures' }).innerText()).toMatch(
      /60 to 150°/,
    );
    await page.getByRole('tab', { name: 'Seats', exact: true }).click();
    const seats = page.getByRole('figure', { name: 'All channels at all seats' });
    expect(await seats.locator('thead th').allInnerTexts()).toContain('R2 S3');
    expect(await seats.locator('tbody tr').count()).toBe(8);
  });

  it('are turned by hand in the plan, and aimed at a seat by name', async () => {
    const page = await openSpeakers();
    await page.getByRole('radio', { name: 'Plan', exact: true }).check({ force: true });
    await page
      .getByRole('group', { name: 'Loudspeaker' })
      .getByRole('button', { name: /^(△ )?L$/ })
      .click();
    await drawn(page);
    const grip = await page.locator('.aim-grip').boundingBox();
    if (!grip) throw new Error('no grip');
    await page.mouse.move(grip.x + 13, grip.y + 13);
    await page.mouse.down();
    await page.mouse.move(grip.x + 40, grip.y - 30, { steps: 4 });
    await page.mouse.up();
    await page.getByRole('button', { name: /Undo mounting of M\+030/ }).waitFor();
    await page.getByText('Box and aim').click();
    expect(await page.getByLabel('aimed at').inputValue()).toBe('angle');
    await page.getByLabel('aimed at').selectOption('row-1|1');
    expect(await page.getByLabel(/^Turned/).count()).toBe(0);
    await page.getByLabel('held').selectOption('stand');
    await page.getByLabel('box depth').fill('0.3');
    await page.keyboard.press('Enter');
    expect(await page.getByLabel('box depth').inputValue()).toBe('0.30 m');
  });
});
