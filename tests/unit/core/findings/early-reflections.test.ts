import { describe, expect, it } from 'vitest';
import { analyze } from '../../../../core/analysis/analyze';
import type { Finding } from '../../../../core/findings/finding';
import { earlyReflections, excessDb } from '../../../../core/reflections/early-limit';
import type { Project } from '../../../../core/room/project';
import { isSamePlace, referencePlace, type ListeningPlace } from '../../../../core/room/seats';
import { example, EXAMPLES, given, roomOf, type Fields } from '../../support/rooms';
import { tried } from '../../support/remedies';

const findingsOn = (project: Project): readonly Finding[] =>
  analyze(project).findings.filter(({ id }) => id.startsWith('early-reflection:'));

const isReference = (project: Project, seat: ListeningPlace): boolean =>
  isSamePlace(seat, given(referencePlace(project)));

/** Decibels over the limit on a face at the reference seat, added up over loudspeakers. */
const overDb = (project: Project, face: string): number =>
  earlyReflections(project, analyze(project).air.speedOfSoundMS)
    .filter(({ hit, seat }) => hit.face === face && isReference(project, seat))
    .reduce((sum, { levelDb }) => sum + excessDb(levelDb), 0);

const faceOf = ({ id }: Finding): string => id.slice('early-reflection:'.length);

/** Faces of the reflections over the limit at the reference place, once for each reflection. */
const overOf = (project: Project): readonly string[] =>
  earlyReflections(project, analyze(project).air.speedOfSoundMS)
    .filter(({ seat, levelDb }) => isReference(project, seat) && excessDb(levelDb) > 0)
    .map(({ hit }) => hit.face);

describe('early reflections of the example rooms', () => {
  it.each(EXAMPLES)('%s: every face over the limit, each with figure, limit and source', (name) => {
    const findings = findingsOn(example(name));
    const over = overOf(example(name));
    expect([...new Set(findings.map(faceOf))].sort()).toEqual([...new Set(over)].sort());
    expect(findings.length).toBeGreaterThan(3);
    for (const finding of findings) {
      expect(finding).toMatchObject({ limit: -10, unit: 'dB', subject: 'speakers' });
      expect(given(finding.value)).toBeGreaterThan(-10);
      expect(finding.source).toContain('BS.1116');
      expect(finding.message).toMatch(
        / reaches the reference place by way of .* ms after its direct sound, /,
      );
      expect(finding.remedies.length).toBeGreaterThan(0);
    }
  });

  it.each(EXAMPLES)('%s: every remedy lessens the finding and can be built', (name) => {
    const project = example(name);
    let edits = 0;
    for (const finding of findingsOn(project)) {
      const face = faceOf(finding);
      const before = overDb(project, face);
      for (const trial of tried(project, finding)) {
        edits++;
        expect(overDb(trial.project, face)).toBeLessThan(Math.max(before - 1, 1e-9));
        const patches = trial.project.room.patches.map(({ id }) => id);
        expect(new Set(patches).size).toBe(patches.length);
        const over = overOf(trial.project).filter((one) => one === face);
        const isTold = trial.analysis.findings.some(({ id }) => id === finding.id);
        // It leaves the list when all of its reflections keep the limit, and not before.
        expect(isTold).toBe(over.length > 0);
        const faults = trial.analysis.findings.filter(({ id }) => id.startsWith('patch-'));
        expect(faults).toEqual([]);
      }
    }
    expect(edits).toBeGreaterThan(0);
  });
});

describe('a panel that ends just beside the point', () => {
  it.each([
    ['metric', '10 cm'],
    ['imperial', '4"'],
  ] as const)('is made wider, in %s by %s', (units, by) => {
    const project = example('long-room');
    const right = given(
      analyze(project, units).findings.find(({ id }) => id === 'early-reflection:right'),
    );
    const text = `Widen panel-right-1 by ${by} towards the back wall`;
    const remedy = given(right.remedies.find((one) => one.text.startsWith(`${text}: then it is `)));
    const [panel] = given(remedy.edit?.kind === 'patches' ? remedy.edit.patches : null).filter(
      ({ id }) => id === 'panel-right-1',
    );
    // It ended at 1.90 m, and the reflection of the centre meets the wall at 1.91 m.
    expect(given(panel).rect[2]).toBeCloseTo(units === 'metric' ? 2 : 1.9 + 4 * 0.0254, 9);
    expect(right.remedies[0]?.text).toContain('4 of the 4 then keep the limit');
  });

  const onLeft = (id: string) =>
    roomOf(
      {
        finishes: Object.fromEntries(
          ['front', 'back', 'left', 'right', 'ceiling', 'floor'].map((f) => [f, 'gf-100-rigid']),
        ),
        patches: [{ id, face: 'left', rect: [0, 0, 5, 3], finish: 'gyp13-stud' }],
      },
      {
        speakers: { layout: '0+5+0', placed: [{ channel: 'M+000', position: [2, 1, 1.2] }] },
        seating: { rows: [{ id: 'row-1', seats: 1, y: 3, earHeightM: 1.2, eyeHeightM: 1.3 }] },
        // No decay is asked for: reflections alone are judged.
        target: { kind: 'custom', seconds: {} },
      },
    );

  it('is given another finish where the reflection meets it', () => {
    const project = onLeft('panel-1');
    const left = given(findingsOn(project)[0]);
    expect(left.remedies[0]?.text).toMatch(/^Make panel-1 of "/);
    expect(findingsOn(given(tried(project, left)[0]).project)).toEqual([]);
  });

  it('is left alone where it is a door', () => {
    const left = given(findingsOn(onLeft('door-1'))[0]);
    expect(left.remedies.map(({ edit }) => edit)).toEqual([undefined]);
  });
});

describe('a finish without a figure at 8 kHz', () => {
  it('is judged in the octaves of one with such a figure, by its figure at 4 kHz', () => {
    const own = (absorption: Fields) => ({ id: 'own', name: 'Own', absorption, source: 's' });
    const worst = (absorption: Fields) => {
      const project = roomOf(
        { finishes: { left: 'own' } },
        {
          finishesCustom: [own(absorption)],
          speakers: { layout: '0+5+0', placed: [{ channel: 'M+000', position: [2, 1, 1.2] }] },
          seating: { rows: [{ id: 'row-1', seats: 1, y: 3, earHeightM: 1.2, eyeHeightM: 1.3 }] },
        },
      );
      return earlyReflections(project, 343).filter(({ hit }) => hit.face === 'left');
    };
    const upTo4 = { '1000': 0.5, '2000': 0.5, '4000': 0.3 };
    expect(worst(upTo4).length).toBeGreaterThan(0);
    expect(worst(upTo4)).toEqual(worst({ ...upTo4, '8000': 0.3 }));
    expect(worst({ ...upTo4, '8000': 0.1 })).not.toEqual(worst(upTo4));
  });
});

describe('a room of one loudspeaker and one seat', () => {
  const room = (finish: string) => {
    const sides = ['front', 'back', 'left', 'right', 'ceiling', 'floor'];
    return roomOf(
      { finishes: Object.fromEntries(sides.map((side) => [side, finish])) },
      {
        speakers: { layout: '0+5+0', placed: [{ channel: 'M+000', position: [2, 1, 1.2] }] },
        seating: { rows: [{ id: 'row-1', seats: 1, y: 3, earHeightM: 1.2, eyeHeightM: 1.3 }] },
      },
    );
  };

  it('with hard faces: the floor is worst; a rug helps and does not do', () => {
    const [floor] = findingsOn(room('concrete-poured'));
    expect(floor).toMatchObject({ id: 'early-reflection:floor', severity: 'note' });
    expect(given(floor).remedies[0]?.text).toContain('No usual finish is enough here');
    expect(given(floor).remedies.filter(({ edit }) => edit)).toEqual([]);
    expect(given(floor).place).toMatchObject({ kind: 'reflection', face: 'floor' });
  });

  it('with soft faces: no finding', () => {
    expect(findingsOn(room('gf-100-rigid'))).toEqual([]);
  });

  it('one panel keeps the limit on the left wall: then there is no finding there', () => {
    const project = room('concrete-poured');
    const left = given(findingsOn(project).find(({ id }) => id === 'early-reflection:left'));
    const [trial] = tried(project, left);
    expect(findingsOn(given(trial).project).map(faceOf)).not.toContain('left');
  });
});
