import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { analyze } from '../../../../core/analysis/analyze';
import { bayOf, withinBay } from '../../../../core/proportions/bay';
import type { Project } from '../../../../core/room/project';
import { example, given, roomOf } from '../../support/rooms';
import { findingIds, findingOf, tried } from '../../support/remedies';

const AXIAL = ['axial-gap', 'axial-pile-up'];

const cm = (min: number, max: number) => fc.integer({ min, max }).map((n) => n / 100);
const size = fc.record({ width: cm(250, 600), length: cm(300, 900), height: cm(200, 350) });

describe('a room in which axial modes coincide', () => {
  it('is told of the closest pile-up, by the sides that make it, as one of the plain shell', () => {
    // 5 m and 2.5 m: every second mode of the length falls on one of the height.
    const project = roomOf({ size: { width: 3.7, length: 5, height: 2.5 } });
    const finding = findingOf(project, 'axial-pile-up');
    expect(finding).toMatchObject({ value: 0, limit: 5, unit: 'Hz' });
    expect(finding.message).toContain('length 2 and height 1');
    expect(finding.message).toContain('plain shell');
  });

  it('is warned of the gap that no other mode fills, with its edges', () => {
    const project = roomOf({ size: { width: 3, length: 3, height: 3 } });
    const finding = findingOf(project, 'axial-gap');
    // 343.2 / 6 = 57.2 Hz between the modes of a 3 m cube; the next mode of any kind is at 80.9 Hz.
    expect(finding).toMatchObject({ severity: 'warning', where: '57 to 114 Hz', limit: 20 });
    expect(finding.value).toBeCloseTo(57.2, 6);
    expect(finding.message).toContain('No mode of any kind lies in 24 Hz of it');
  });
});

describe('what other modes cover', () => {
  it('is a note: a gap with tangential and oblique modes in it', () => {
    const finding = findingOf(example('basement-bay'), 'axial-gap');
    expect(finding.severity).toBe('note');
    expect(finding.message).toMatch(/plain shell.*7 tangential and oblique modes fill it/);
  });

  it('is a note: a pile-up where five modes or more share the third octave', () => {
    const finding = findingOf(example('basement-bay'), 'axial-pile-up');
    expect(finding.severity).toBe('note');
    expect(finding.message).toContain('7 modes in their third octave');
    // Bonello 1981: fewer than five do not hide a double mode.
    const small = findingOf(
      roomOf({ size: { width: 3.5, length: 3.5, height: 2.4 } }),
      'axial-pile-up',
    );
    expect(small.severity).toBe('warning');
  });

  it('is a note in a room with fittings, whose modes are not those of the shell', () => {
    const cube = { size: { width: 3, length: 3, height: 3 } };
    const box = { id: 'a', kind: 'soffit', min: [0, 0, 2.6], max: [0.6, 3, 3] };
    const finding = findingOf(roomOf({ ...cube, solids: [box] }), 'axial-gap');
    expect(finding.severity).toBe('note');
    expect(finding.message).toContain('modes as built');
  });
});

describe('the good example', () => {
  it('has neither, nor anything else but early reflections', () => {
    const others = findingIds(example('long-room')).filter((id) => !id.startsWith('early-'));
    expect(others).toEqual([]);
  });
});

/** What the axial findings of a room weigh: a warning more than any note. */
function gravity(project: Project): number {
  return analyze(project)
    .findings.filter(({ id }) => AXIAL.includes(id))
    .reduce((sum, { severity }) => sum + (severity === 'warning' ? 2 : 1), 0);
}

describe('the size that is proposed', () => {
  it('lies in the bay, mends what it is proposed for, and is proposed once', () => {
    let proposals = 0;
    fc.assert(
      fc.property(size, (shell) => {
        const project = roomOf({ size: shell });
        for (const finding of analyze(project).findings) {
          if (!AXIAL.includes(finding.id)) continue;
          for (const { project: built, edit } of tried(project, finding)) {
            proposals++;
            expect(edit.kind).toBe('several');
            const { room } = built;
            // Without a bay of the person's own, the linings come in: the bay is kept as it was.
            expect(room.bay).toEqual(bayOf(project));
            expect(withinBay(room.size, bayOf(project))).toBe(room.size);
            expect(gravity(built)).toBeLessThan(gravity(project));
            const again = analyze(built).findings.flatMap(({ id, remedies }) =>
              AXIAL.includes(id) ? remedies.filter((remedy) => remedy.edit) : [],
            );
            expect(again).toEqual([]);
          }
        }
      }),
      { numRuns: 60 },
    );
    expect(proposals).toBeGreaterThan(10);
  }, 60_000);

  it('is never one with a ceiling below 7 ft', () => {
    // IRC R305.1.
    fc.assert(
      fc.property(size, (shell) => {
        const project = roomOf({ size: shell });
        const finding = analyze(project).findings.find(({ id }) => AXIAL.includes(id));
        for (const trial of finding ? tried(project, finding) : []) {
          const { height } = trial.project.room.size;
          expect(height === shell.height || height >= 2.1336).toBe(true);
        }
      }),
      { numRuns: 40 },
    );
  }, 60_000);

  const proposing = roomOf({ size: { width: 3.5, length: 3.5, height: 2.4 } });

  it.each(['metric', 'imperial'] as const)('says what it costs, in %s', (units) => {
    const finding = given(
      analyze(proposing, units).findings.find(
        ({ id, remedies }) => AXIAL.includes(id) && remedies[0]?.edit,
      ),
    );
    const text = given(finding.remedies[0]).text;
    expect(text).toMatch(
      units === 'metric'
        ? /Build it \d\.\d+ m by .* That is \d.*less (width|length).*: \d.* m² less floor\./
        : /Build it \d+' .* That is .*less (width|length).*: \d.* sq ft less floor\./,
    );
  });

  it('stays out of what the person holds fixed', () => {
    const bay = {
      largest: { width: 3.5, length: 3.5, height: 2.4 },
      least: { width: 3, length: 3, height: 2.2 },
      stepM: 0.01,
      fixed: ['width', 'height'],
      leastFloorM2: 11,
    };
    const project = roomOf({ size: { width: 3.5, length: 3.5, height: 2.4 }, bay });
    for (const finding of analyze(project).findings) {
      if (!AXIAL.includes(finding.id)) continue;
      for (const { project: built } of tried(project, finding)) {
        const { width, length, height } = built.room.size;
        expect([width, height]).toEqual([3.5, 2.4]);
        expect(width * length).toBeGreaterThanOrEqual(11);
      }
    }
  });
});

describe('a room that no size of its bay can mend', () => {
  it('gets advice in words', () => {
    // Sides of 1.2 m: the three lowest modes all lie at 143 Hz.
    const project = roomOf({
      size: { width: 1.2, length: 1.2, height: 1.2 },
      bay: {
        largest: { width: 1.2, length: 1.2, height: 1.2 },
        least: { width: 1.2, length: 1.2, height: 1.2 },
        stepM: 0.01,
        fixed: ['width', 'length', 'height'],
        leastFloorM2: 0,
      },
    });
    const { remedies } = findingOf(project, 'axial-pile-up');
    expect(remedies.map(({ edit }) => edit)).toEqual([undefined]);
    expect(given(remedies[0]).text).toContain('No room of the bay mends it');
  });
});
