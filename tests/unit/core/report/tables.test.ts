import { describe, expect, it } from 'vitest';
import { analyze } from '../../../../core/analysis/analyze';
import { tables } from '../../../../core/report/tables';
import type { Project } from '../../../../core/room/project';
import { example, given, roomOf } from '../../support/rooms';

const table = (project: Project, name: string): string =>
  given(tables(project, analyze(project)).find((candidate) => candidate.name === name)).text;

/** Rows of comma-separated text after RFC 4180, read by a reader of our own. */
function read(text: string): readonly (readonly string[])[] {
  const rows: string[][] = [];
  let row: string[] = [];
  for (const [, quoted, plain, end] of text.matchAll(
    /(?:"((?:[^"]|"")*)"|([^",\r\n]*))(,|\r\n)/g,
  )) {
    row.push(quoted?.replaceAll('""', '"') ?? plain ?? '');
    if (end === ',') continue;
    rows.push(row);
    row = [];
  }
  return rows;
}

const CSV = ['placements.csv', 'modes.csv', 'decay.csv', 'materials.csv'] as const;

describe('the tables', () => {
  it('are four of comma-separated text and one of JSON', () => {
    const project = example('under-the-ducts');
    expect(tables(project, analyze(project)).map(({ name }) => name)).toEqual([
      ...CSV,
      'analysis.json',
    ]);
    expect(JSON.parse(table(project, 'analysis.json'))).toMatchObject({
      geometry: { volumeM3: expect.any(Number) as number },
    });
  });

  it.each(CSV)('%s has as many cells in every line as in its first', (name) => {
    const rows = read(table(example('under-the-ducts'), name));
    expect(rows.length).toBeGreaterThan(5);
    expect(new Set(rows.map((row) => row.length)).size).toBe(1);
  });

  it('end every line as RFC 4180 says', () => {
    for (const name of CSV) {
      expect(table(example('long-room'), name)).toMatch(/^(?:[^\r\n]*\r\n)+$/);
    }
  });

  it('leave a cell empty where a figure is unknown', () => {
    const rows = read(table(example('long-room'), 'decay.csv'));
    expect(rows.find(([hz]) => hz === '63')?.slice(0, 3)).toEqual(['63', '', '']);
  });

  it('give places to the millimetre and the verdict in words', () => {
    const rows = read(table(example('basement-bay'), 'placements.csv'));
    const left = given(rows.find(([, name]) => name === 'M+110'));
    expect(left.slice(0, 5)).toEqual(['loudspeaker', 'M+110', '0.12', '5.4', '1.6']);
    expect(left.at(-3)).toBe('no');
    expect(left.at(-2)).toBe('on-wall');
    expect(rows.filter(([what]) => what === 'ears')).toHaveLength(6);
    expect(rows.filter(([what]) => what === 'subwoofer')).toHaveLength(1);
  });
});

describe('a finish with an awkward name', () => {
  const named = (name: string, source = 'own'): string =>
    table(
      roomOf(
        { finishes: { back: 'own' } },
        { finishesCustom: [{ id: 'own', name, absorption: {}, source }] },
      ),
      'materials.csv',
    );
  const nameCell = (text: string): string | undefined =>
    read(text).find(([, finish]) => finish === 'own')?.[2];

  it.each(['Felt, grey', 'the "good" felt', 'Größe ½″', ','])(
    'such as %j is quoted and comes back whole',
    (name) => {
      expect(nameCell(named(name))).toBe(name);
    },
  );

  it('doubles a quotation mark inside quotation marks', () => {
    expect(named('the "good" felt')).toContain('"the ""good"" felt"');
  });

  it.each([
    ...['=1+1', '+1', '-1', '@SUM(A1)', '=HYPERLINK("http://x","y")'],
    ...[' =1', '\u00a0+1', '\uff1d1', '\uff0b1', '\uff0d1', '\uff20SUM(A1)', '\u3000\uff1d1'],
  ])('such as %j is no formula to a spreadsheet', (name) => {
    expect(nameCell(named(name))).toBe(`'${name}`);
  });

  it.each([
    ['\t=1', "' =1"],
    ['\r=1', "' =1"],
    ['\n=1', "' =1"],
    ['\u202e=1', "'=1"],
    ['two\r\nlines', 'two  lines'],
    ['a\u001b[31mb\u009b', 'a [31mb '],
    ['den\u202egnp\u2069', 'dengnp'],
  ])('such as %j stays on its line and in its direction, as %j', (name, cell) => {
    expect(nameCell(named(name))).toBe(cell);
  });

  it('is harmless in the column of sources, too', () => {
    expect(named('Felt', '=1+1')).toContain(",'=1+1\r\n");
  });
});

describe('figures in the tables', () => {
  it('are never "NaN", also where solids fill the whole room', () => {
    const block = { id: 'block', kind: 'other', min: [0, 0, 0], max: [4, 5, 3] };
    for (const name of CSV) expect(table(roomOf({ solids: [block] }), name)).not.toContain('NaN');
  });

  it('below zero stay figures and are not taken for formulas', () => {
    const rows = read(table(example('basement-bay'), 'placements.csv'));
    expect(rows.find(([, name]) => name === 'M-030')?.[5]).toBe('-30');
  });
});
