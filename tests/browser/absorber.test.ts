import { describe, expect, it } from 'vitest';
import { browserOrSkip } from './support/browser';
import { programWindows, savedText } from './support/window';
import { analyze } from '../../core/analysis/analyze';
import type { Project } from '../../core/room/project';
import { example, opened } from '../unit/support/rooms';

describe.runIf(browserOrSkip())('an absorber, designed in the window', () => {
  const { open } = programWindows();

  it('shows its absorption, is put on a face, and undo takes it off again', async () => {
    const { page } = await open();
    await page.getByRole('button', { name: /Decay/ }).click();
    const decay = page.getByRole('figure', { name: /Reverberation time/ });
    await page.getByText('Own finishes').click();
    await page.getByRole('button', { name: 'Design an absorber' }).click();
    await page
      .getByLabel(/[Tt]hickness/)
      .first()
      .fill('0.2');
    await page.keyboard.press('Enter');
    expect(await page.getByText('30 cm').first().isVisible()).toBe(true);
    const before = await decay.getByRole('img').first().getAttribute('aria-label');
    await page.getByLabel('Face', { exact: true }).selectOption({ label: 'Ceiling' });
    await page.getByRole('button', { name: 'Add and put on' }).click();
    const after = await decay.getByRole('img').first().getAttribute('aria-label');
    expect(after).not.toBe(before);
    const room = opened(await savedText(page));
    const put = room.finishesCustom.find((finish) => finish.id === room.room.finishes.ceiling);
    expect(Object.keys(put?.absorption ?? {})).toHaveLength(8);
    const known = (project: Project): readonly number[] =>
      analyze(project).decay.bands.flatMap(({ hz, eyringS }) => (eyringS === null ? [] : [hz]));
    expect(known(room)).toEqual(known(example('basement-bay')));
    expect(known(room).length).toBeGreaterThan(5);
    await page.getByRole('button', { name: /Undo/ }).click();
    expect(await decay.getByRole('img').first().getAttribute('aria-label')).toBe(before);
    expect(await page.getByRole('button', { name: /Undo/ }).isDisabled()).toBe(true);
  });

  it('answers a flow resistivity out of range with a sentence, and no figure is NaN', async () => {
    const { page } = await open();
    await page.getByRole('button', { name: /Decay/ }).click();
    await page.getByText('Own finishes').click();
    await page.getByRole('button', { name: 'Design an absorber' }).click();
    await page.getByLabel(/Flow resistivity/).fill('1');
    await page.keyboard.press('Enter');
    expect(await page.locator('.complaint').first().innerText()).toMatch(/nearest|from/i);
    expect(await page.locator('body').innerText()).not.toContain('NaN');
  });

  it('is left by Escape and kept, but a typed figure is taken back first', async () => {
    const { page } = await open();
    await page.getByRole('button', { name: /Decay/ }).click();
    await page.getByText('Own finishes').click();
    await page.getByRole('button', { name: 'Design an absorber' }).click();
    const bench = page.getByRole('group', { name: 'Absorber design' });
    const thickness = bench.getByLabel(/[Tt]hickness/).first();
    await thickness.fill('0.2');
    await page.keyboard.press('Enter');
    const kept = await thickness.inputValue();
    await thickness.fill('0.4');
    await page.keyboard.press('Escape');
    expect(await thickness.inputValue()).toBe(kept);
    await page.keyboard.press('Escape');
    expect(await bench.count()).toBe(0);
    await page.getByText('Own finishes').click();
    await page.getByRole('button', { name: 'Design an absorber' }).click();
    expect(await thickness.inputValue()).toBe(kept);
  });
});
