import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { CHAPTERS, matchesTerm, TERMS, termTitle } from '../../../renderer/glossary/terms';

const ALL = Object.entries(TERMS);

describe('the glossary', () => {
  it('explains every word in a sentence, says its source, and stands in one chapter', () => {
    expect(ALL.length).toBeGreaterThan(50);
    for (const [id, text] of ALL) {
      expect(text.says, id).toMatch(/^[A-Z0-9].{25,}[.]$/s);
      expect(text.source.trim(), id).not.toBe('');
      expect(text.source, id).not.toMatch(/[.]$/);
      if (text.good !== undefined) expect(text.good, id).toMatch(/[.]$/);
    }
    const listed = CHAPTERS.flatMap(({ ids }) => ids);
    expect([...listed].sort()).toEqual(ALL.map(([id]) => id).sort());
  });

  it('begins with plain words, the word of the trade after them in brackets', () => {
    expect(termTitle(TERMS.schroeder)).toBe('Where single resonances end (Schroeder frequency)');
    const titles = ALL.map(([, text]) => termTitle(text));
    expect(new Set(titles).size).toBe(titles.length);
  });

  it('is searched by the word of the trade, by plain words and by what people call it', () => {
    const found = (query: string) =>
      ALL.filter(([, text]) => matchesTerm(text, query)).map(([id]) => id);
    expect(found('schroeder')).toContain('schroeder');
    expect(found('RT60')).toEqual(['decayTime']);
    expect(found('first reflection')).toContain('early');
    expect(found('no such word anywhere')).toEqual([]);
    expect(found('')).toHaveLength(ALL.length);
  });

  it('is used: every word of the modes and of the decay stands somewhere in the window', () => {
    const folder = new URL('../../../renderer/', import.meta.url);
    const sources = (readdirSync(folder, { recursive: true }) as string[])
      .filter((path) => /\.tsx?$/.test(path) && !path.includes('glossary'))
      .map((path) => readFileSync(new URL(path, folder), 'utf8'))
      .join('\n');
    for (const id of ['mode', 'schroeder', 'pileUp', 'gap', 'eyring', 'corridor', 'unevenness']) {
      expect(sources, id).toMatch(new RegExp(`(id="|term="|')${id}['"]`));
    }
  });
});
