import { describe, expect, it } from 'vitest';
import { roomOf } from '../../support/rooms';
import { findingIds, findingOf, tried } from '../../support/remedies';

const box = (id: string, min: readonly number[], max: readonly number[]) => ({
  id,
  kind: 'soffit',
  min,
  max,
});

describe('fittings', () => {
  it('that leave one room in one piece are no finding', () => {
    expect(findingIds(roomOf({ solids: [box('duct', [0, 0, 2.6], [1, 5, 3])] }))).not.toContain(
      'space-in-parts',
    );
  });

  it('that leave a layer of air too thin to matter are noted, and lined up as proposed they are not', () => {
    const project = roomOf({
      solids: [box('a', [0, 0, 2.6], [1, 5, 3]), box('b', [1.006, 0, 2.5], [2, 5, 3])],
    });
    const finding = findingOf(project, 'sliver:b');
    expect(finding).toMatchObject({ severity: 'note', limit: 0.01, unit: 'm' });
    expect(finding.value).toBeGreaterThan(0);
    expect(finding.value).toBeLessThan(0.01);
    const trials = tried(project, finding);
    expect(trials).toHaveLength(1);
    for (const trial of trials) expect(findingIds(trial.project)).not.toContain('sliver:b');
  });

  it('that are a sheet are noted with the thickness that they are computed with', () => {
    const project = roomOf({ solids: [box('board', [1, 1, 0], [1.004, 3, 2])] });
    expect(findingOf(project, 'sliver:board').value).toBeCloseTo(0.003, 6);
    for (const trial of tried(project, findingOf(project, 'sliver:board'))) {
      expect(findingIds(trial.project)).not.toContain('sliver:board');
    }
  });

  it('that are a board on a wall are told to go or to be thicker: no remedy leaves them flat', () => {
    const project = roomOf({ solids: [box('panel', [0, 1, 0], [0.008, 2, 2])] });
    const [remedy] = findingOf(project, 'sliver:panel').remedies;
    expect(remedy?.edit).toBeUndefined();
    expect(remedy?.text).toContain('at least 2 cm thick');
  });
});
