import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { AxeResults } from 'axe-core';
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { browserOrSkip } from './support/browser';
import { drawn, programWindows } from './support/window';

const AXE = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');
const SUBJECTS = ['Shell', 'Fittings', 'Speakers', 'Bass', 'Decay'] as const;

/** Violations of the page as it stands, one line each with the elements that it is about. */
async function violations(page: Page, where: string): Promise<readonly string[]> {
  // Tags of a small drawing lie closer: their list in the inputs has each thing at full size.
  const wide = (page.viewportSize()?.width ?? 0) > 1000;
  const results = await page.evaluate<AxeResults>(
    // Targets of 24 px: WCAG 2.2, 2.5.8, which axe-core does not look at by default.
    `axe.run(document, { resultTypes: ["violations"], rules: { "target-size": { enabled: ${wide} } } })`,
  );
  return results.violations.map(
    ({ id, nodes }) => `${where}: ${id}: ${nodes.map(({ target }) => target.join(' ')).join(', ')}`,
  );
}

describe.runIf(browserOrSkip())('the window for every reader (axe-core)', () => {
  const { open } = programWindows();

  it.each([
    [1440, 900, 'light'],
    [1440, 900, 'dark'],
    [1024, 700, 'light'],
    [1024, 700, 'dark'],
    // 1440 by 900 at 200 percent zoom.
    [720, 450, 'light'],
  ] as const)(
    'has no violation at %d by %d, %s, in any subject and tab',
    async (width, height, colorScheme) => {
      const { page } = await open({ viewport: { width, height }, colorScheme });
      await page.evaluate(AXE);
      const found: string[] = [];
      for (const subject of SUBJECTS) {
        await page.getByRole('button', { name: new RegExp(`^\\d\\s*${subject}`) }).click();
        for (const group of await page.locator('.inputs details, .inputs summary').all()) {
          await group.evaluate((element) => element.closest('details')?.setAttribute('open', ''));
        }
        const first = page.locator('.finding-head').first();
        if ((await first.getAttribute('aria-expanded')) === 'false') await first.click();
        await page.getByRole('button', { name: new RegExp(`^\\d\\s*${subject}`) }).click();
        const tabs = page.getByRole('tab');
        for (let n = 0; n < Math.max(1, await tabs.count()); n++) {
          if ((await tabs.count()) > 0) await tabs.nth(n).click();
          await drawn(page);
          found.push(...(await violations(page, `${subject} ${n + 1}`)));
        }
      }
      // Decay is open: its chooser of finishes, then the glossary.
      await page
        .getByRole('button', { name: /^Back wall/ })
        .first()
        .click();
      await page.getByRole('listbox', { name: 'Finishes' }).waitFor();
      found.push(...(await violations(page, 'chooser of finishes')));
      await page.keyboard.press('Escape');
      await page.getByRole('button', { name: 'Words', exact: true }).click();
      await page.getByRole('dialog').waitFor();
      found.push(...(await violations(page, 'glossary')));
      expect(found).toEqual([]);
    },
    240_000,
  );
});
