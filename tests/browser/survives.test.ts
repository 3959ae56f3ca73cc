import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import type { LoopbackServer } from '../../electron/loopback/loopback-server';
import { browserOrSkip, launchBrowser } from './support/browser';
import { serveProgram } from './support/served-program';
import { drawn, NO_PICKERS, openProgram, savedText } from './support/window';

const width = (page: Page) => page.getByLabel('Width', { exact: true });

async function setWidth(page: Page, figure: string): Promise<void> {
  await width(page).fill(figure);
  await page.keyboard.press('Enter');
}

/** The rest of the program, proved by its work: a typed length reaches the charts, the findings and the file. */
async function worksOn(page: Page): Promise<void> {
  const chart = page.locator('.evidence');
  const before = await chart.innerHTML();
  await setWidth(page, '4.09');
  expect(await chart.innerHTML()).not.toBe(before);
  expect(await page.locator('.findings .finding').count()).toBeGreaterThan(0);
  expect(JSON.parse(await savedText(page))).toMatchObject({ room: { size: { width: 4.09 } } });
}

/** Contexts of one browser; these windows fail on purpose, so that nothing is held against the console. */
function windowsWith(flags: readonly string[]) {
  let browser: Browser;
  let served: LoopbackServer;
  let contexts: BrowserContext[] = [];
  beforeAll(async () => {
    served = await serveProgram();
    browser = await launchBrowser(flags);
  });
  afterEach(async () => {
    await Promise.all(contexts.map((context) => context.close()));
    contexts = [];
  });
  afterAll(async () => {
    await browser.close();
    await served.close();
  });
  const context = async (script = ''): Promise<BrowserContext> => {
    const made = await browser.newContext({
      viewport: { width: 1440, height: 900 },
      locale: 'en-GB',
    });
    contexts.push(made);
    await made.addInitScript(`${NO_PICKERS}${script}`);
    return made;
  };
  return {
    /** Where no drawing is to be waited for. */
    bare: async (script = ''): Promise<Page> => {
      const page = await (await context(script)).newPage();
      await page.goto(served.runAddress);
      await page.locator('.findings').waitFor();
      return page;
    },
    open: async (script = ''): Promise<Page> =>
      openProgram(await context(script), served.runAddress),
  };
}

describe.runIf(browserOrSkip())('a window without WebGL', () => {
  const { bare } = windowsWith(['--disable-3d-apis']);

  it('says so in the place of the drawing, and all the rest works', async () => {
    const page = await bare();
    const note = page.locator('.drawing');
    expect(await note.innerText()).toMatch(/cannot be drawn[\s\S]*WebGL[\s\S]*graphics driver/);
    await worksOn(page);
    for (const subject of ['Fittings', 'Speakers', 'Bass', 'Decay']) {
      await page.getByRole('button', { name: new RegExp(`^\\d?\\s*${subject}`) }).click();
      await page.getByRole('heading', { name: subject, exact: true }).waitFor();
    }
    await note.getByRole('button', { name: 'Try again' }).click();
    expect(await note.innerText()).toMatch(/cannot be drawn/);
  });

  it('draws plan and sections, and things are moved in them', async () => {
    const page = await bare();
    for (const view of ['Plan', 'Long section', 'Cross section']) {
      await page.getByRole('radio', { name: view, exact: true }).check({ force: true });
      await page.waitForSelector('.drawing[data-frames] svg.flat path');
      expect(await page.locator('.no-drawing').count()).toBe(0);
      expect(await page.locator('.dimension-figure').count()).toBe(2);
    }
    const width = page.getByRole('textbox', { name: 'Width' });
    const before = await width.inputValue();
    await drawn(page);
    const grip = await page.locator('.grip-width').boundingBox();
    if (!grip) throw new Error('no grip');
    const [x, y] = [grip.x + grip.width / 2, grip.y + grip.height / 2];
    await page.mouse.move(x, y);
    await page.mouse.down();
    await page.mouse.move(x + 40, y, { steps: 5 });
    await page.mouse.up();
    expect(parseFloat(await width.inputValue())).toBeGreaterThan(parseFloat(before));
    // The room in space still says why it is not there.
    await page.getByRole('radio', { name: 'Room', exact: true }).check({ force: true });
    expect(await page.locator('.drawing').innerText()).toMatch(/cannot be drawn/);
  });
});

describe.runIf(browserOrSkip())('a window that meets trouble', () => {
  const { bare, open } = windowsWith([]);

  it('draws when it is pressed again, once there is a context', async () => {
    const page = await bare(`
      const given = HTMLCanvasElement.prototype.getContext;
      HTMLCanvasElement.prototype.getContext = () => null;
      window.giveContexts = () => { HTMLCanvasElement.prototype.getContext = given; };
    `);
    await page.getByText('The room cannot be drawn in space in this window').waitFor();
    await worksOn(page);
    await page.evaluate('window.giveContexts()');
    await page.locator('.drawing').getByRole('button', { name: 'Try again' }).click();
    await page.waitForSelector('.drawing[data-frames] canvas');
    expect(await page.locator('.no-drawing').count()).toBe(0);
  });

  it('says that its context was lost, and draws the room again when it is back', async () => {
    const page = await open();
    await page.evaluate(`
      window.loss = document.querySelector('canvas').getContext('webgl2').getExtension('WEBGL_lose_context');
      window.loss.loseContext();
    `);
    await page.getByText('The drawing was interrupted').waitFor();
    await worksOn(page);
    const picture = async (): Promise<Buffer> => {
      await drawn(page);
      return page.locator('.drawing').screenshot();
    };
    const without = await picture();
    const back = async (): Promise<void> => {
      await page.evaluate('window.loss.restoreContext()');
      await page.getByText('The drawing was interrupted').waitFor({ state: 'detached' });
    };
    await back();
    const withIt = await picture();
    expect(withIt.equals(without)).toBe(false);
    expect(withIt.byteLength).toBeGreaterThan(10_000);
    // Lost and found once more, with no change between: the very same picture.
    await page.evaluate('window.loss.loseContext()');
    await page.getByText('The drawing was interrupted').waitFor();
    await back();
    await expect.poll(async () => (await picture()).equals(withIt)).toBe(true);
  });

  it('takes a fresh context at a press where the lost one does not come back', async () => {
    const page = await open();
    await page.evaluate(`
      document.querySelector('canvas').getContext('webgl2').getExtension('WEBGL_lose_context').loseContext();
    `);
    await page.getByRole('button', { name: 'Draw it again now' }).click();
    await page.getByText('The drawing was interrupted').waitFor({ state: 'detached' });
    await drawn(page);
    expect(await page.locator('.grip-length').isVisible()).toBe(true);
  });

  /** An error in one part: what sets it off, what the person does to meet it, and what is said. */
  const PARTS: readonly [string, string, (page: Page) => Promise<unknown>, RegExp][] = [
    [
      'the drawing',
      `const asked = window.matchMedia.bind(window);
       window.matchMedia = (query) => {
         if (query.includes('reduced-motion')) throw new Error('broken on purpose');
         return asked(query);
       };`,
      (page) => page.getByRole('radio', { name: 'Plan', exact: true }).check({ force: true }),
      /The drawing cannot be shown/,
    ],
    [
      'the evidence',
      `window.ResizeObserver = class { constructor() { throw new Error('broken on purpose'); } };`,
      (page) => page.getByRole('button', { name: /^\d?\s*Decay/ }).click(),
      /This evidence cannot be shown/,
    ],
    [
      'the inputs',
      `const made = document.createElement.bind(document);
       document.createElement = (name, options) => {
         if (name === 'input') throw new Error('broken on purpose');
         return made(name, options);
       };`,
      (page) => page.getByRole('button', { name: /^\d?\s*Decay/ }).click(),
      /This pane cannot be shown/,
    ],
    [
      'the findings',
      `Element.prototype.scrollIntoView = () => { throw new Error('broken on purpose'); };`,
      (page) => page.locator('.finding button').first().click(),
      /The list of findings cannot be shown/,
    ],
  ];

  it.each(PARTS)('keeps an error in %s to that part', async (_part, poison, meet, said) => {
    const page = await open();
    await page.evaluate(poison);
    await meet(page);
    const alert = page.getByRole('alert').filter({ hasText: said });
    await alert.waitFor();
    expect(await alert.innerText()).toContain('broken on purpose');
    // Told once: longer than a notice waits for a part to hold the error.
    await page.waitForTimeout(200);
    expect(await page.locator('.notice').count()).toBe(0);
    expect(await page.getByRole('button', { name: 'Save', exact: true }).isVisible()).toBe(true);
    await page.getByLabel('Name of the room').fill('Still here');
    await page.keyboard.press('Enter');
    expect(JSON.parse(await savedText(page))).toMatchObject({ name: 'Still here' });
  });

  it('lets a part come back when it is tried again', async () => {
    const page = await open();
    await page.evaluate(`
      window.whole = window.ResizeObserver;
      window.ResizeObserver = class { constructor() { throw new Error('broken on purpose'); } };
    `);
    await page.getByRole('button', { name: /^\d?\s*Decay/ }).click();
    const alert = page.locator('.evidence').getByRole('alert');
    await alert.waitFor();
    await page.evaluate('window.ResizeObserver = window.whole');
    await alert.getByRole('button', { name: 'Try again' }).click();
    await alert.waitFor({ state: 'detached' });
    expect(await page.locator('.evidence svg').count()).toBeGreaterThan(0);
  });

  it('offers to save where the whole window fails, and shows it again', async () => {
    const page = await open();
    // The undo button is outside of all parts; it is freed by the first change.
    await page.evaluate(`
      window.freed = Element.prototype.removeAttribute;
      Element.prototype.removeAttribute = function (name) {
        if (name === 'disabled') throw new Error('broken on purpose');
        return window.freed.call(this, name);
      };
    `);
    await setWidth(page, '4.09');
    await page.getByRole('heading', { name: /cannot show its window/ }).waitFor();
    expect(JSON.parse(await savedText(page))).toMatchObject({ room: { size: { width: 4.09 } } });
    await page.getByText(/Saved as/).waitFor();
    await page.evaluate('Element.prototype.removeAttribute = window.freed');
    await page.getByRole('button', { name: 'Show the window again' }).click();
    expect(await width(page).inputValue()).toBe('4.09 m');
    await page.reload();
    await expect.poll(() => width(page).inputValue()).toBe('4.09 m');
  });

  it('tells an error that no component met', async () => {
    const page = await open();
    await page.evaluate(`setTimeout(() => { throw new Error('broken on purpose'); })`);
    await page.getByText('The last step met an error in the program').waitFor();
    expect(await page.locator('.notice').innerText()).toContain('broken on purpose');
    await worksOn(page);
  });

  /** The file of the worker, whatever its name in the build. */
  const WORKER = '**/compute.worker*';
  const SOLVED = { timeout: 20_000 };
  const modes = (page: Page) => page.getByRole('figure', { name: 'Modes as built' });
  const openFittings = async (page: Page): Promise<void> => {
    await page.getByLabel('Open an example room').selectOption('under-the-ducts');
    await page.getByRole('button', { name: /^\d?\s*Fittings/ }).click();
  };
  const solves = (page: Page): Promise<unknown> =>
    expect.poll(() => modes(page).innerText(), SOLVED).toMatch(/to 200 Hz, each within/);

  it('gives up a worker that falls silent, says so, and solves with a fresh one at a press', async () => {
    const page = await open();
    await page.route(
      WORKER,
      (route) =>
        route.fulfill({
          contentType: 'text/javascript',
          body: 'self.onmessage = () => undefined;',
        }),
      { times: 1 },
    );
    const made = page.waitForEvent('worker');
    await page.reload();
    const silent = await made;
    await openFittings(page);
    await modes(page)
      .getByText(/no sign of life for 10 s/)
      .waitFor();
    expect(page.workers()).not.toContain(silent);
    await modes(page).getByRole('button', { name: 'Solve them' }).click();
    await solves(page);
    expect(page.workers()).toHaveLength(1);
  });

  it('says that a worker could not be loaded, and tries again with the next change', async () => {
    const page = await open();
    await page.route(WORKER, (route) => route.fulfill({ status: 404 }));
    await page.reload();
    await openFittings(page);
    await modes(page)
      .getByText(/could not be started/)
      .waitFor();
    await page.unroute(WORKER);
    await page.getByRole('button', { name: 'riser-back', exact: true }).click();
    await page.getByRole('button', { name: 'Remove riser-back' }).click();
    await solves(page);
  });

  it('works on where the browser has no workers', async () => {
    const page = await open('delete window.Worker;');
    await openFittings(page);
    await modes(page)
      .getByText(/could not be started/)
      .waitFor();
    await page.getByRole('button', { name: /^\d?\s*Bass/ }).click();
    const bass = page.locator('.evidence');
    await bass.getByText(/could not be started/).waitFor();
    expect(await bass.getByRole('button', { name: 'Try again' }).isVisible()).toBe(true);
    await page.getByRole('button', { name: /^\d?\s*Shell/ }).click();
    await worksOn(page);
  });
});
