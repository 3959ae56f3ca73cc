import { describe, expect, it } from 'vitest';
import { analyze } from '../../../../core/analysis/analyze';
import type { Finding } from '../../../../core/findings/finding';
import { earlyReflections, excessDb } from '../../../../core/reflections/early-limit';
import type { Project } from '../../../../core/room/project';
import { isSamePlace, referencePlace, type ListeningPlace } from '../../../../core/room/seats';
import { example, EXAMPLES, given, roomOf } from '../../support/rooms';
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

describe('early reflections of the example rooms', () => {
  it.each(EXAMPLES)('%s: three faces at most, each with figure, limit and source', (name) => {
    const findings = findingsOn(example(name));
    expect(findings.length).toBeGreaterThan(0);
    expect(findings.length).toBeLessThanOrEqual(3);
    for (const finding of findings) {
      expect(finding).toMatchObject({ limit: -10, unit: 'dB', subject: 'speakers' });
      expect(given(finding.value)).toBeGreaterThan(-10);
      expect(finding.source).toContain('BS.1116');
      expect(finding.message).toMatch(
        / reaches the reference seat by way of .* ms after its direct sound, /,
      );
      expect(finding.remedies.length).toBeGreaterThan(0);
    }
    const more = findings.filter(({ message }) => message.includes('more face'));
    expect(more).toEqual(findings.slice(-1));
  });

  it.each(EXAMPLES)('%s: every remedy lessens the finding and can be built', (name) => {
    const project = example(name);
    let edits = 0;
    for (const finding of findingsOn(project)) {
      const face = faceOf(finding);
      const before = overDb(project, face);
      for (const trial of tried(project, finding)) {
        edits++;
        expect(overDb(trial.project, face)).toBeLessThan(before - 1);
        const patches = trial.project.room.patches.map(({ id }) => id);
        expect(new Set(patches).size).toBe(patches.length);
        const faults = trial.analysis.findings.filter(({ id }) => id.startsWith('patch-'));
        expect(faults).toEqual([]);
      }
    }
    expect(edits).toBeGreaterThan(0);
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
    expect(given(floor).remedies[0]?.text).toContain('not enough');
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
