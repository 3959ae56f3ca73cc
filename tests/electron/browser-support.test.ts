import { describe, expect, it } from 'vitest';
import { browserOrSkip, findChromium } from '../browser/support/browser';
import { serveProgram } from '../browser/support/served-program';
import { freshFolder } from './support/temp-folder';

const temp = freshFolder();

describe('the browser for tests', () => {
  it('is the one that is named, and no other in its place', () => {
    expect(findChromium({ ROOMWRIGHT_CHROMIUM: process.execPath })).toBe(process.execPath);
    expect(findChromium({ ROOMWRIGHT_CHROMIUM: temp.at('missing') })).toBeNull();
  });

  it('fails the run where it is required and missing, and says how to get it', () => {
    const env = { ROOMWRIGHT_CHROMIUM: temp.at('missing'), ROOMWRIGHT_BROWSER_TESTS: 'required' };
    expect(() => browserOrSkip(env)).toThrow(/Install Chromium .* ROOMWRIGHT_CHROMIUM/);
  });

  it('has no page to open before the build', async () => {
    await expect(serveProgram(temp.at())).rejects.toThrow('npm run build');
  });
});
