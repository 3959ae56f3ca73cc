import { describe, expect, it } from 'vitest';
import { findFinishes } from '../../../../core/room/finish-search';
import { FINISHES } from '../../../../core/room/finishes';

const ids = (query: string): readonly string[] => findFinishes(query, FINISHES).map(({ id }) => id);

describe('finding a finish', () => {
  it('is by the words of either side of the ocean', () => {
    expect(ids('drywall')).toContain('gyp13-stud');
    expect(ids('plasterboard')).toEqual(ids('drywall'));
    expect(ids('Gypsum Board')).toEqual(ids('drywall'));
    expect(ids('fiberglass')).toEqual(ids('glass fibre'));
    expect(ids('rock wool')).toEqual(ids('mineral wool'));
    expect(ids('curtain')).toEqual(ids('drapes'));
    expect(ids('rug pad')).toEqual(ids('carpet underlay'));
  });

  it('is by sizes in either system, and by what a shop calls them', () => {
    expect(ids('1/2" drywall 2x4')).toContain('gyp13-stud');
    expect(ids('1/2 in drywall 2 x 4')).toContain('gyp13-stud');
    expect(ids('plasterboard 13mm')).toContain('gyp13-stud');
    expect(ids('R-13')).toEqual(['batt-r13-cloth', 'pegboard-r13', 'slats-1x4-r13']);
    expect(ids('carpet pad concrete')).toContain('carpet-pad-concrete');
    expect(ids('OSB').length).toBeGreaterThan(1);
  });

  it('needs every word, and takes a figure as a whole one', () => {
    expect(ids('drywall carpet')).toEqual([]);
    expect(ids('zinc')).toEqual([]);
    expect(ids('5 mm carpet')).toContain('carpet-5-hard');
    expect(ids('5 mm carpet')).not.toContain('carpet-9-wool-concrete');
    expect(ids('  ')).toHaveLength(FINISHES.length);
  });

  it('finds every finish by its own name in either system', () => {
    for (const finish of FINISHES) {
      for (const name of Object.values(finish.names)) expect(ids(name)).toContain(finish.id);
    }
  });
});
