import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { analyze, type Analysis } from '../../../../core/analysis/analyze';
import { example, given, roomOf } from '../../support/rooms';
import { findingIds, findingOf, tried } from '../../support/remedies';

/** Hertz by which gaps are too wide and neighbours too close, below `belowHz`. */
function unevenness({ modes }: Analysis, belowHz: number): number {
  let sum = 0;
  for (const gap of modes.gaps) if (gap.fromHz < belowHz) sum += gap.widthHz - 20;
  for (const { modes: run, lowHz } of modes.pileUps) {
    if (lowHz >= belowHz) continue;
    for (let i = 1; i < run.length; i++) {
      sum += 5 - (given(run[i]).frequencyHz - given(run[i - 1]).frequencyHz);
    }
  }
  return sum;
}

describe('a room in which axial modes coincide', () => {
  it('is warned of the closest pile-up, by the sides that make it', () => {
    // 5 m and 2.5 m: every second mode of the length falls on one of the height.
    const project = roomOf({ size: { width: 3.7, length: 5, height: 2.5 } });
    const finding = findingOf(project, 'axial-pile-up');
    expect(finding).toMatchObject({ severity: 'warning', value: 0, limit: 5, unit: 'Hz' });
    expect(finding.message).toContain('length 2 and height 1');
  });

  it('is warned of the lowest gap, with its edges', () => {
    const project = roomOf({ size: { width: 3, length: 3, height: 3 } });
    const finding = findingOf(project, 'axial-gap');
    // 343.2 / 6 = 57.2 Hz between the modes of a 3 m cube.
    expect(finding).toMatchObject({ where: '57 to 114 Hz', limit: 20 });
    expect(finding.value).toBeCloseTo(57.2, 6);
  });
});

describe('the good example', () => {
  it('has neither, nor anything else but early reflections', () => {
    const others = findingIds(example('long-room')).filter((id) => !id.startsWith('early-'));
    expect(others).toEqual([]);
  });
});

describe('the smaller room that is proposed', () => {
  const cm = (min: number, max: number) => fc.integer({ min, max }).map((n) => n / 100);
  const size = fc.record({ width: cm(250, 600), length: cm(300, 900), height: cm(200, 350) });

  it('has axial modes that follow each other more evenly, no more than 40 cm further in', () => {
    let proposals = 0;
    fc.assert(
      fc.property(size, (shell) => {
        const project = roomOf({ size: shell });
        const before = analyze(project);
        const belowHz = Math.min(200, before.modes.schroederHz ?? 200);
        for (const id of ['axial-gap', 'axial-pile-up']) {
          const finding = before.findings.find((candidate) => candidate.id === id);
          for (const trial of finding ? tried(project, finding) : []) {
            proposals++;
            expect(unevenness(trial.analysis, belowHz)).toBeLessThan(unevenness(before, belowHz));
            const { width, length, height } = trial.project.room.size;
            const steps = [shell.width - width, shell.length - length, shell.height - height];
            expect(steps.filter((step) => step !== 0)).toHaveLength(1);
            expect(Math.max(...steps)).toBeLessThan(0.4000001);
            expect(Math.min(...steps)).toBe(0);
          }
        }
      }),
      { numRuns: 100 },
    );
    expect(proposals).toBeGreaterThan(20);
  });

  it('is never one with a ceiling below 7 ft', () => {
    // IRC R305.1.
    fc.assert(
      fc.property(size, (shell) => {
        const project = roomOf({ size: shell });
        const finding = analyze(project).findings.find(({ id }) => id === 'axial-gap');
        for (const trial of finding ? tried(project, finding) : []) {
          const { height } = trial.project.room.size;
          expect(height === shell.height || height >= 2.1336).toBe(true);
        }
      }),
      { numRuns: 60 },
    );
  });

  it('takes its loudspeakers along', () => {
    const project = example('basement-bay');
    for (const trial of tried(project, findingOf(project, 'axial-gap'))) {
      expect(findingIds(trial.project).filter((id) => id.startsWith('speaker-outside'))).toEqual(
        [],
      );
    }
  });
});

describe('a room that no one side can mend', () => {
  it('gets advice in words', () => {
    // Sides of 1.2 m: the three lowest modes all lie at 143 Hz, whatever one side does.
    const project = roomOf({ size: { width: 1.2, length: 1.2, height: 1.2 } });
    const { remedies } = findingOf(project, 'axial-pile-up');
    expect(remedies).toHaveLength(1);
    expect(given(remedies[0]).text.length).toBeGreaterThan(20);
  });
});
