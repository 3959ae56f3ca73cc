/**
 * The builder's whole job in one go: from New, in feet and inches, by mouse and keyboard, to a room that
 * is saved, that the batch command opens, and that is right.
 */

import * as fs from 'node:fs/promises';
import type { Locator, Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { runAnalysis } from '../../electron/batch/run-analysis';
import type { Project } from '../../core/room/project';
import { freshFolder } from '../electron/support/temp-folder';
import { browserOrSkip } from './support/browser';
import { programWindows, savedText } from './support/window';

const temp = freshFolder();
const INCH_M = 0.0254;

const subject = (page: Page, title: string): Promise<void> =>
  page.getByRole('button', { name: new RegExp(`^\\d\\s*${title}`) }).click();
const field = (page: Page, name: string): Locator =>
  page.getByRole('textbox', { name, exact: true });

async function type(page: Page, name: string, text: string): Promise<void> {
  await field(page, name).fill(text);
  await page.keyboard.press('Enter');
}

/** What the batch command says of a saved room. */
async function batch(text: string, ...options: string[]): Promise<string> {
  await fs.writeFile(temp.at('den.room.json'), text);
  let out = '';
  const complaints: string[] = [];
  const code = await runAnalysis(['den.room.json', ...options], {
    folder: temp.at(),
    out: (line) => (out += line),
    complain: (line) => complaints.push(line),
  });
  // A slow machine is told how far a long computation is; that is no complaint.
  const faults = complaints.filter((line) => !line.startsWith('Solving the room as built'));
  expect({ code, faults }).toEqual({ code: 0, faults: [] });
  return out;
}

interface Told {
  readonly geometry: { readonly volumeM3: number };
  readonly decay: {
    readonly bands: readonly { readonly hz: number; readonly eyringS: number | null }[];
  };
  readonly speakers: readonly { readonly channel: string; readonly inRange: boolean }[];
  readonly findings: readonly { readonly id: string; readonly severity: string }[];
}

describe.runIf(browserOrSkip())('the whole job', () => {
  const { open } = programWindows();

  it('goes from an empty room in feet and inches to one that is saved, opened and right', async () => {
    const { page } = await open({ locale: 'en-US' });
    // The example that it starts with is in whole inches.
    expect(await page.locator('.title-block').innerText()).toContain(`13' 9" × 21' 0" × 7' 10"`);

    // The shell, as a tape reads it.
    await page.getByRole('button', { name: 'New', exact: true }).click();
    expect(await page.locator('.title-block').innerText()).not.toMatch(/\d+\/\d+"/);
    await type(page, 'Name of the room', 'Cellar den (invented)');
    await type(page, 'Width', `13' 9"`);
    await type(page, 'Length', '21 ft 4 in');
    await type(page, 'Height', `7' 11"`);

    // Two boxed ducts, a column, a door; a bare number of a part is inches.
    await subject(page, 'Fittings');
    for (const side of ['left', 'right']) {
      await page.getByRole('button', { name: `Soffit ${side}`, exact: true }).click();
      const id = side === 'left' ? 'soffit-1' : 'soffit-2';
      await type(page, `${id} out from the ${side} wall`, '16');
      await type(page, `${id} down from the ceiling`, '10');
    }
    await page.getByText('Doors, windows, passages').click();
    await page.getByRole('button', { name: 'Add door' }).click();
    await page.getByLabel('Face', { exact: true }).selectOption('Back wall');
    await type(page, 'door-1 from the left wall', `8 1/2`);

    // Loudspeakers, now and later.
    await subject(page, 'Speakers');
    await page.getByLabel('the picture lets sound through').check();
    await page.getByRole('button', { name: 'Place the loudspeakers' }).click();
    await page.getByText(/^5 placed/).waitFor();

    // Subwoofers by search.
    await subject(page, 'Bass');
    await page.getByRole('button', { name: 'Find the best places' }).click();
    await page.getByText(/proved best/).waitFor({ timeout: 45_000 });
    await page
      .getByRole('group', { name: 'Places found' })
      .locator('tbody th button')
      .first()
      .click();
    // A row previews; its button puts them there.
    expect(await page.getByRole('button', { name: 'Remove sub-1' }).count()).toBe(0);
    await page.getByRole('button', { name: 'Put the subwoofers at place 1' }).click();

    // An absorber of their own on the back wall.
    await subject(page, 'Decay');
    await page.getByText('Own finishes').click();
    await page.getByRole('button', { name: 'Design an absorber' }).click();
    await page.getByLabel('Face', { exact: true }).last().selectOption('Back wall');
    await page.getByRole('button', { name: 'Add and put on' }).click();
    await page.keyboard.press('Escape');

    // What the window tells, and what is saved.
    await page.waitForTimeout(2500);
    const told = await page
      .locator('.finding')
      .evaluateAll((items) => items.map((item) => item.getAttribute('data-finding')));
    const text = await savedText(page);
    const saved = JSON.parse(text) as Project;
    expect(saved.name).toBe('Cellar den (invented)');
    expect(saved.room.size.width).toBeCloseTo(165 * INCH_M, 5);
    expect(saved.room.size.length).toBeCloseTo(256 * INCH_M, 5);
    expect(saved.room.size.height).toBeCloseTo(95 * INCH_M, 5);
    const [left, right] = saved.room.solids;
    expect(left?.min[0]).toBe(0);
    expect(left?.max[0]).toBeCloseTo(16 * INCH_M, 5);
    expect(left?.min[2]).toBeCloseTo(85 * INCH_M, 5);
    expect(left?.max[2]).toBeCloseTo(95 * INCH_M, 5);
    expect(right?.min[0]).toBeCloseTo(149 * INCH_M, 5);
    expect(right?.max[0]).toBeCloseTo(165 * INCH_M, 5);
    expect(saved.room.patches[0]?.rect[0]).toBeCloseTo(8.5 * INCH_M, 5);
    expect(saved.speakers.placed).toHaveLength(5);
    expect(saved.speakers.subwoofers).toHaveLength(2);
    expect(saved.room.finishes.back).toBe(saved.finishesCustom[0]?.id);

    // The batch command opens it, tells the same, and has a figure in every octave.
    const analysis = JSON.parse(await batch(text, '--json')) as Told;
    const ducts = 2 * 16 * 10 * 256 * INCH_M ** 3;
    expect(analysis.geometry.volumeM3).toBeCloseTo(165 * 256 * 95 * INCH_M ** 3 - ducts, 4);
    expect(analysis.speakers.map(({ inRange }) => inRange)).toEqual(Array(5).fill(true));
    for (const { hz, eyringS } of analysis.decay.bands) {
      if (hz >= 125 && hz <= 4000) expect(eyringS).toBeGreaterThan(0.1);
    }
    expect(analysis.findings.filter(({ severity }) => severity === 'fault')).toEqual([]);
    expect([...told].sort()).toEqual(analysis.findings.map(({ id }) => id).sort());
    const words = await batch(text, '--units', 'feet');
    expect(words).toContain(`13' 9"`);
    // A source may give a formula in the units that it stands in.
    const said = words.replace(/^\s*Source: .*$/gm, '');
    expect(said.match(/.{0,60}(\d m\b|m²|m³|°C).{0,20}/g)).toBeNull();

    // Undone to the start, and done again, it is the same room.
    const undo = page.getByRole('button', { name: /Undo/ });
    let steps = 0;
    while (await undo.isEnabled()) {
      await undo.click();
      steps += 1;
    }
    expect(steps).toBeGreaterThan(12);
    expect(await field(page, 'Name of the room').inputValue()).toBe('Basement bay, north side');
    const redo = page.getByRole('button', { name: /Redo/ });
    while (await redo.isEnabled()) await redo.click();
    expect(await savedText(page)).toBe(text);
  }, 180_000);
});
