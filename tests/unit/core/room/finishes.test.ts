import { describe, expect, it } from 'vitest';
import { designAsFinish } from '../../../../core/absorbers/as-finish';
import { POROUS_MATERIALS } from '../../../../core/absorbers/materials';
import { readDesign } from '../../../../core/absorbers/read-design';
import { measuresIn } from '../../../../core/quantity/measures';
import {
  absorptionAt,
  FINISHES,
  finishLookup,
  finishName,
  nearestFinishId,
  ownFinish,
} from '../../../../core/room/finishes';
import { mountingText, takesText } from '../../../../core/room/mounting';
import library from '../../../../resources/finishes/builds.json';
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

describe('how a finish is built', () => {
  const byId = finishLookup({ finishesCustom: [] });
  const finish = (id: string) => given(byId(id));

  it('takes its depth from the mounting of the test: E-400 is 0.4 m', () => {
    const hung = FINISHES.flatMap((one) => {
      const depth = /^E-(\d+)$/.exec(one.mounting)?.[1];
      return depth === undefined ? [] : [{ one, testedM: Number(depth) / 1000 }];
    });
    expect(hung.length).toBeGreaterThan(10);
    // A specimen whose source counts its air without its own thickness stands that much farther off.
    for (const { one, testedM } of hung) {
      expect(one.depthM).toBeGreaterThanOrEqual(testedM);
      expect(one.depthM - testedM).toBeLessThanOrEqual(0.11);
      expect(one.suits).toEqual(['ceiling']);
    }
    expect(finish('tile-gf-25-cloth-e400').depthM).toBe(0.4);
  });

  it('has a depth that holds its air, and no depth where the face itself is built so', () => {
    for (const one of FINISHES) {
      expect(one.depthM).toBeGreaterThanOrEqual(one.airM ?? 0);
      expect(one.depthM).toBeLessThan(0.6);
      if (one.mount === 'face') expect(one.depthM).toBe(0);
      else expect(one.depthM, one.id).toBeGreaterThan(0);
      if (one.mount === 'air') expect(one.airM, one.id).toBeGreaterThan(0);
      expect(one.suits.length).toBeGreaterThan(0);
    }
  });

  it('is said in the units of the reader', () => {
    const [metric, imperial] = [measuresIn('metric'), measuresIn('imperial')];
    const tile = finish('tile-gf-25-cloth-e400');
    expect(mountingText(tile, metric)).toBe('hung with 375 mm of air above');
    expect(takesText(tile, 'ceiling', metric)).toBe('takes 40 cm of height');
    expect(takesText(tile, 'ceiling', imperial)).toBe('takes 15 3/4" of height');
    expect(mountingText(finish('gf-50-rigid'), metric)).toBe('fixed flat on the face');
    expect(takesText(finish('panel-gf-2-air-2'), 'closet:left', imperial)).toBe(
      'takes 4" of width',
    );
    expect(takesText(finish('gyp13-stud'), 'left', metric)).toBeNull();
    const own = { id: 'own', name: 'Own', absorption: {}, source: 'own', depthM: 0.2 };
    expect(takesText(ownFinish(own), 'back', metric)).toBe('takes 20 cm of length');
  });

  it('has the sizes of its name in either system, the shop sizes of each', () => {
    const drywall = finish('gyp13-stud');
    expect(finishName(drywall, 'metric')).toBe(
      'Plasterboard 13 mm on 50 x 100 mm studs, 400 mm centres',
    );
    expect(finishName(drywall, 'imperial')).toBe('Drywall 1/2" on 2x4 studs, 16" on center');
    for (const one of FINISHES) {
      for (const text of [...Object.values(one.names), ...Object.values(one.sources)]) {
        expect(text).not.toMatch(/[{|}]/);
      }
      expect(one.names.imperial, one.id).not.toMatch(/\d (mm|cm|m|kg)\b/);
      expect(one.names.metric, one.id).not.toMatch(/\d"|\b(lb|oz|sq ft)\b/);
    }
  });
});

describe('what shops sell', () => {
  const computed = FINISHES.filter((one) => one.howKnown === 'computed');
  const builds = library.finishes.map((row) => given(FINISHES.find(({ id }) => id === row.id)));

  it('has rows of both markets, all with a source', () => {
    expect(
      builds.filter(({ builds: market }) => market === 'north-american').length,
    ).toBeGreaterThan(19);
    expect(builds.filter(({ builds: market }) => market === 'metric').length).toBeGreaterThan(9);
    expect(builds.every((one) => one.shop === true)).toBe(true);
  });

  it('takes measured figures over as they are, and says how that was built', () => {
    const taken = library.finishes.flatMap((row) => ('figuresOf' in row ? [row] : []));
    expect(taken.length).toBeGreaterThan(15);
    for (const row of taken) {
      const [one, measured] = [row.id, row.figuresOf].map((id) =>
        given(FINISHES.find((finish) => finish.id === id)),
      );
      expect(one?.absorption).toEqual(measured?.absorption);
      expect(one?.howKnown).toBe(measured?.howKnown);
      expect(one?.source.startsWith(`${measured?.source}; `)).toBe(true);
    }
  });

  it.each(computed.map((one) => [one.id, one] as const))(
    'has for %s the figures that the absorber model gives its build',
    (id, one) => {
      const design = given(readDesign(one.design));
      const again = designAsFinish(design, id, one.name);
      expect(one.absorption).toEqual(again.absorption);
      expect(one.source).toMatch(/^Computed by Roomwright's absorber model, not measured/);
      expect(Math.abs(one.depthM - given(again.depthM))).toBeLessThan(0.001);
      if (one.mount === 'air') expect(one.airM).toBeCloseTo(design.airGapM, 9);
      // Every resistance that it was computed with is one of the table, and stands in the source.
      for (const { flowResistivity } of design.layers) {
        expect(POROUS_MATERIALS.map(({ typical }) => typical)).toContain(flowResistivity);
        expect(one.source.replaceAll(' ', '')).toContain(`of${flowResistivity}Pas/m²`);
      }
    },
  );
});

describe('looking up a finish', () => {
  const own = { id: 'gyp13-stud', name: 'Own board', absorption: { '500': 0.5 }, source: 'own' };

  it('finds the built-in ones, and nothing under the names of object members', () => {
    const find = finishLookup({ finishesCustom: [] });
    expect(find('gyp13-stud')?.name).toMatch(/^Plasterboard 13 mm/);
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

  it('tell a usual depth in no sixteenths, since nobody measured it', () => {
    const usual = FINISHES.filter(({ depthUsual }) => depthUsual);
    expect(usual.length).toBeGreaterThan(0);
    for (const finish of usual) {
      const words = `${mountingText(finish, measuresIn('imperial'))} ${takesText(finish, 'left', measuresIn('imperial')) ?? ''}`;
      expect(words).not.toMatch(/\/16/);
    }
  });
});
