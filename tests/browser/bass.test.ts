import { describe, expect, it } from 'vitest';
import { browserOrSkip } from './support/browser';
import { analyzeWhole } from '../../core/analysis/slow-work';
import { example } from '../unit/support/rooms';
import { drawn, programWindows } from './support/window';

/** Modes are solved in the worker; a busy machine takes its time. */
const SOLVED = { timeout: 20_000 };

describe.runIf(browserOrSkip())('bass, in the window', () => {
  const { open } = programWindows();

  it('shows the response at every seat, names the modes behind a frequency and paints it', async () => {
    const { page } = await open();
    await page.getByRole('button', { name: /Bass/ }).click();
    const chart = page.getByRole('figure', { name: 'Response at the seats' });
    await expect
      .poll(() => chart.innerText(), SOLVED)
      .toMatch(/plain shell, spread over 6 seats \d\.\d dB \(20 to 120 Hz\)/);
    const box = await chart.getByRole('img').boundingBox();
    if (!box) throw new Error('no chart');
    await page.mouse.click(box.x + box.width / 2, box.y + 40);
    expect(await page.getByLabel('Key of the painted pressure').innerText()).toMatch(
      /\d+\.\d Hz\s*all subwoofers/,
    );
    const behind = page.getByRole('figure', { name: 'Modes behind this frequency' });
    expect(await behind.locator('tbody tr').count()).toBe(5);
  });

  it('follows a dragged subwoofer, and undo takes it back', async () => {
    const { page } = await open();
    await page.getByRole('button', { name: /Bass/ }).click();
    await page.getByRole('radio', { name: 'Plan', exact: true }).check({ force: true });
    const chart = page.getByRole('figure', { name: 'Response at the seats' });
    await expect.poll(() => chart.innerText(), SOLVED).toMatch(/spread over 6 seats/);
    const before = await chart.innerText();
    await drawn(page);
    const tag = await page.getByRole('button', { name: /^Subwoofer sub-1/ }).boundingBox();
    if (!tag) throw new Error('no tag');
    await page.mouse.move(tag.x + 10, tag.y + 8);
    await page.mouse.down();
    await page.mouse.move(tag.x + 120, tag.y - 60, { steps: 5 });
    await page.mouse.up();
    await page.mouse.move(4, 400);
    expect(
      await page.getByRole('textbox', { name: 'sub-1 from the screen wall' }).inputValue(),
    ).not.toBe('0.40 m');
    await expect.poll(() => chart.innerText(), SOLVED).not.toBe(before);
    await page.getByRole('button', { name: /Undo place of sub-1/ }).click();
    expect(
      await page.getByRole('textbox', { name: 'sub-1 from the screen wall' }).inputValue(),
    ).toBe('0.40 m');
    await expect.poll(() => chart.innerText(), SOLVED).toBe(before);
  });

  it('adds and removes subwoofers and drives them', async () => {
    const { page } = await open();
    await page.getByRole('button', { name: /Bass/ }).click();
    await page.getByRole('button', { name: '+ Add' }).click();
    expect(await page.getByRole('textbox', { name: 'sub-2 above the floor' }).inputValue()).toBe(
      '0.20 m',
    );
    await page.getByLabel('Delay ms').fill('40');
    await page.keyboard.press('Enter');
    expect(await page.locator('.complaint').innerText()).toMatch(/from 0 to 30 ms/);
    await page.getByLabel('Delay ms').fill('4.5');
    await page.keyboard.press('Enter');
    await page.getByRole('button', { name: /Undo drive of sub-2/ }).click();
    expect(await page.getByLabel('Delay ms').inputValue()).toBe('0');
    await page.getByRole('button', { name: 'Remove sub-2' }).click();
    await page.getByRole('button', { name: 'Remove sub-1' }).click();
    expect(await page.getByText('No subwoofer stands in the room yet').count()).toBe(1);
    await expect
      .poll(() => page.getByRole('figure', { name: 'Response at the seats' }).innerText(), SOLVED)
      .toMatch(/no seat hears a subwoofer/);
  });

  it('finds better places along the walls, proves them, and puts the subwoofers there', async () => {
    const { page } = await open();
    await page.getByRole('button', { name: /Bass/ }).click();
    await page.getByRole('button', { name: 'Find the best places' }).first().click();
    const places = page.getByRole('figure', { name: 'Places for the subwoofers' });
    await expect.poll(() => places.innerText(), SOLVED).toMatch(/proved best: all [\d,]+ tried/);
    const spreads = await places.locator('tbody tr td:nth-child(2)').allInnerTexts();
    const [before = NaN, best = NaN] = spreads.map(Number);
    expect(best).toBeLessThan(before);
    await places.locator('.take-places').first().click();
    expect(await page.getByRole('button', { name: 'sub-2', exact: true }).count()).toBe(1);
    // What the finding says is what the table promised.
    await expect
      .poll(() => page.getByRole('figure', { name: 'Response at the seats' }).innerText(), SOLVED)
      .toContain(`spread over 6 seats ${best.toFixed(1)} dB`);
    await page.getByRole('button', { name: /Undo subwoofer places/ }).click();
    expect(await page.getByRole('button', { name: 'sub-2', exact: true }).count()).toBe(0);
  });

  it('previews the places of a row by focus, ends it on Escape, and leaves the room alone', async () => {
    const { page } = await open();
    await page.getByRole('button', { name: /Bass/ }).click();
    await page.getByRole('button', { name: 'Find the best places' }).first().click();
    const places = page.getByRole('figure', { name: 'Places for the subwoofers' });
    await expect.poll(() => places.innerText(), SOLVED).toMatch(/proved best/);
    await drawn(page);
    const drawing = page.locator('.drawing canvas');
    const plain = await drawing.screenshot();
    const row = places.locator('.show-places').first();
    await row.focus();
    await drawn(page);
    expect(await row.getAttribute('aria-pressed')).toBe('true');
    const shown = await drawing.screenshot();
    expect(shown.equals(plain)).toBe(false);
    await page.keyboard.press('Escape');
    await drawn(page);
    expect(await row.getAttribute('aria-pressed')).toBe('false');
    expect((await drawing.screenshot()).equals(plain)).toBe(true);
    // By press it shows again; by keyboard the row's own button is the next stop, and leaving it ends it.
    await row.click();
    expect(await row.getAttribute('aria-pressed')).toBe('true');
    await page.keyboard.press('Tab');
    expect(await row.getAttribute('aria-pressed')).toBe('true');
    await page.keyboard.press('Tab');
    expect(await row.getAttribute('aria-pressed')).toBe('false');
    expect(await page.getByRole('button', { name: /Undo/ }).isDisabled()).toBe(true);
    expect(await page.getByRole('button', { name: 'sub-2', exact: true }).count()).toBe(0);
  });

  it.each(['basement-bay', 'under-the-ducts'] as const)(
    'tells of %s what the batch command tells, wherever one stands',
    async (name) => {
      const { page } = await open();
      await page.getByLabel('Open an example room').selectOption(name);
      const { findings } = analyzeWhole(example(name));
      const list = page.getByRole('region', { name: 'Findings' });
      await expect
        .poll(() => list.locator('.finding').count(), { timeout: 60_000 })
        .toBe(findings.length);
      expect(findings.filter(({ subject }) => subject === 'bass').length).toBeGreaterThan(0);
      for (const { where } of findings) expect(await list.innerText()).toContain(where);
    },
  );

  it('starts the search from a finding, and then offers what it found', async () => {
    const { page } = await open();
    const list = page.getByRole('region', { name: 'Findings' });
    const spread = list.locator('.finding', { hasText: '6 seats' });
    await spread.waitFor({ timeout: 20_000 });
    await spread.locator('.finding-head').click();
    await spread.getByRole('button', { name: 'Search' }).click();
    await spread.getByRole('button', { name: 'Apply' }).click({ timeout: 20_000 });
    await page.getByRole('button', { name: /Undo subwoofer places/ }).waitFor();
  });

  it('keeps the first answer where the search is stopped, and says that it is not proved', async () => {
    const { page } = await open();
    await page.getByRole('button', { name: /Bass/ }).click();
    await page.getByLabel('Step along the walls').fill('0.1');
    await page.keyboard.press('Enter');
    await page.getByRole('radio', { name: '4', exact: true }).check({ force: true });
    await page.getByRole('button', { name: 'Find the best places' }).first().click();
    const places = page.getByRole('figure', { name: 'Places for the subwoofers' });
    await expect.poll(() => places.locator('.take-places').count(), SOLVED).toBeGreaterThan(0);
    const stop = page.getByRole('button', { name: 'Stop the search' });
    if ((await stop.count()) > 0) await stop.click();
    await expect
      .poll(() => places.innerText(), SOLVED)
      .toMatch(/not proved: [\d,]+ of [\d,]+ tried/);
  });
});
