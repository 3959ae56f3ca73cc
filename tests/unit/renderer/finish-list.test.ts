import { describe, expect, it } from 'vitest';
import { analyze } from '../../../core/analysis/analyze';
import { FINISHES } from '../../../core/room/finishes';
import {
  effectText,
  finishList,
  type FinishListInput,
} from '../../../renderer/finishes/finish-list';
import { roomOf } from '../support/rooms';

const project = roomOf({});
const INPUT: FinishListInput = {
  project,
  analysis: analyze(project),
  spot: { kind: 'face', face: 'ceiling' },
  units: 'imperial',
  query: '',
  order: 'help',
};
const list = (part: Partial<FinishListInput> = {}) => finishList({ ...INPUT, ...part });
const group = (title: string, part: Partial<FinishListInput> = {}) =>
  list(part).find((one) => one.title === title)?.rows ?? [];

describe('the finishes to choose from', () => {
  it('has every finish once, what shops sell in the reader’s sizes first', () => {
    const rows = list().flatMap(({ rows }) => rows);
    expect(rows.map(({ finish }) => finish.id).sort()).toEqual(FINISHES.map(({ id }) => id).sort());
    expect(list()[0]?.title).toBe('Sold in shops');
    const markets = group('Sold in shops').map(({ finish }) => finish.builds);
    expect(markets).toContain('north-american');
    expect(markets).not.toContain('metric');
    expect(
      group('Sold in shops', { units: 'metric' }).map(({ finish }) => finish.builds),
    ).not.toContain('north-american');
  });

  it('keeps what is made for other faces apart', () => {
    for (const { finish } of group('Sold in shops')) expect(finish.suits).toContain('ceiling');
    expect(group('For other faces').map(({ finish }) => finish.id)).toContain(
      'carpet-pad-concrete',
    );
    expect(list({ spot: { kind: 'solid', id: 'duct' } }).map(({ title }) => title)).not.toContain(
      'For other faces',
    );
  });

  it('is in the order of what helps, or of the names', () => {
    const helps = group('Sold in shops').map(({ effect }) => effect?.nearerS ?? -Infinity);
    for (const [i, nearer] of helps.entries()) {
      expect(nearer).toBeLessThanOrEqual((helps[i - 1] ?? Infinity) + 0.005);
    }
    expect(helps[0]).toBeGreaterThan(helps.at(-1) ?? 0);
    const names = group('Sold in shops', { order: 'name' }).map(({ name }) => name);
    expect(names).toEqual([...names].sort((a, b) => a.localeCompare(b, 'en')));
  });

  it('puts the person’s own first, also one that stands for a row of the library', () => {
    const own = { id: 'gyp13-stud', name: 'My board', absorption: { '500': 0.1 }, source: 'own' };
    const rows = list({ project: { ...project, finishesCustom: [own] } });
    expect(rows[0]).toMatchObject({ title: 'My own', rows: [{ name: 'My board', effect: null }] });
    expect(
      rows.flatMap((one) => one.rows).filter(({ finish }) => finish.id === own.id),
    ).toHaveLength(1);
  });

  it('says how much nearer the target comes', () => {
    const effect = { outsideS: 0.2, nearerS: 0.312, midS: 0.4 };
    expect(effectText(effect, 0.512)).toBe('0.31 s nearer');
    expect(effectText({ ...effect, nearerS: -0.1 }, 0.1)).toBe('0.10 s farther');
    expect(effectText({ ...effect, nearerS: 0.001 }, 0.2)).toBe('no change');
    expect(effectText({ ...effect, outsideS: 0 }, 0.312)).toBe('within the target');
    expect(effectText({ ...effect, outsideS: 0, nearerS: 0 }, 0)).toBe('stays within the target');
    expect(effectText(null, 0.3)).toBe('no figure');
  });
});
