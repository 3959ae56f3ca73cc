import { describe, expect, it } from 'vitest';
import {
  absorptionAt,
  FINISHES,
  finishLookup,
  nearestFinishId,
} from '../../../../core/room/finishes';
import { given } from '../../support/rooms';

describe('the library of finishes', () => {
  it('has each id once', () => {
    const ids = FINISHES.map((finish) => finish.id);
    expect(ids).toHaveLength(new Set(ids).size);
    expect(ids.length).toBeGreaterThan(100);
  });

  it('has ids that a room file may hold', () => {
    expect(FINISHES.filter((finish) => !/^[\w.+-]{1,60}$/.test(finish.id))).toEqual([]);
  });

  it('names a source, a category and a mounting for every row', () => {
    const bare = FINISHES.filter((finish) =>
      [finish.name, finish.source, finish.category, finish.mounting].some((t) => t.trim() === ''),
    );
    expect(bare).toEqual([]);
  });

  it('names a year or an edition in every source', () => {
    expect(FINISHES.filter((finish) => !/\d{4}/.test(finish.source)).map((f) => f.id)).toEqual([]);
  });

  it('has figures in the octaves 125 Hz to 4 kHz for every row', () => {
    const gaps = FINISHES.filter((finish) =>
      ([125, 250, 500, 1000, 2000, 4000] as const).some((hz) => absorptionAt(finish, hz) === null),
    );
    expect(gaps.map((finish) => finish.id)).toEqual([]);
  });

  it('has no figure outside 0 to 1.3, and none in a band that does not exist', () => {
    // ISO 354 samples absorb at their edges: test values up to 1.25 are published.
    const bands = ['63', '125', '250', '500', '1000', '2000', '4000', '8000'];
    const wrong = FINISHES.flatMap((finish) =>
      Object.entries(finish.absorption)
        .filter(([hz, value]) => !bands.includes(hz) || !(value >= 0 && value <= 1.3))
        .map(([hz, value]) => `${finish.id} ${hz}: ${value}`),
    );
    expect(wrong).toEqual([]);
  });

  it('keeps the figures of its sources', () => {
    // M. Long, Architectural Acoustics, Table 7.1: gypsum board 13 mm on studs.
    const gypsum = given(FINISHES.find((finish) => finish.id === 'gyp13-stud'));
    expect(gypsum.absorption).toEqual({
      '125': 0.29,
      '250': 0.1,
      '500': 0.05,
      '1000': 0.04,
      '2000': 0.07,
      '4000': 0.09,
    });
    // F. Alton Everest, The Master Handbook of Acoustics: concrete floor, 0.01 0.01 0.015 0.02.
    const concrete = given(FINISHES.find((finish) => finish.id === 'floor-concrete'));
    expect(absorptionAt(concrete, 125)).toBe(0.01);
    expect(absorptionAt(concrete, 500)).toBe(0.015);
    expect(absorptionAt(concrete, 4000)).toBe(0.02);
  });

  it('says null where a source gives no figure', () => {
    const gypsum = given(FINISHES.find((finish) => finish.id === 'gyp13-stud'));
    expect(absorptionAt(gypsum, 63)).toBeNull();
    expect(absorptionAt(gypsum, 8000)).toBeNull();
  });
});

describe('looking up a finish', () => {
  const own = { id: 'gyp13-stud', name: 'Own board', absorption: { '500': 0.5 }, source: 'own' };

  it('finds the built-in ones, and nothing under the names of object members', () => {
    const find = finishLookup({ finishesCustom: [] });
    expect(find('gyp13-stud')?.name).toMatch(/^Gypsum board 13 mm/);
    expect(find('toString')).toBeUndefined();
    expect(find('__proto__')).toBeUndefined();
  });

  it('prefers the project’s own under the same id', () => {
    const find = finishLookup({ finishesCustom: [own] });
    expect(find('gyp13-stud')).toMatchObject({ name: 'Own board', howKnown: 'own' });
  });

  it.each([
    ['gyp13stud', 'gyp13-stud'],
    ['carpet-heavy-concret', 'carpet-heavy-concrete'],
    ['felt-9', 'felt-90'],
  ])('suggests for %j the one that is spelled most like it, %j', (typed, nearest) => {
    const felt = { ...own, id: 'felt-90' };
    expect(nearestFinishId(typed, { finishesCustom: [felt] })).toBe(nearest);
  });
});
