import { describe, expect, it } from 'vitest';
import { analyze } from '../../../../core/analysis/analyze';
import { applyEdit } from '../../../../core/room/edits';
import { given, roomOf, type Fields } from '../../support/rooms';
import { findingIds, findingOf, tried } from '../../support/remedies';

describe('a ceiling', () => {
  const under = (height: number) => roomOf({ size: { width: 4, length: 5, height } });

  it('below 7 ft is a warning that sends the person to the local code', () => {
    // IRC R305.1: 7 ft, which are 2133.6 mm.
    const finding = findingOf(under(2.13), 'ceiling-height');
    expect(finding).toMatchObject({ severity: 'warning', value: 2.13, limit: 2.1336, unit: 'm' });
    expect(finding.caution).toMatch(/local code decides: ask your building office/);
  });

  it('of 7 ft is none', () => {
    expect(findingIds(under(2.1336))).not.toContain('ceiling-height');
  });

  it('that is raised as proposed is high enough', () => {
    const project = under(2);
    const trials = tried(project, findingOf(project, 'ceiling-height'));
    expect(trials).toHaveLength(1);
    for (const trial of trials) expect(findingIds(trial.project)).not.toContain('ceiling-height');
  });
});

describe('a solid', () => {
  const solid = (max: readonly number[]): Fields => ({
    solids: [{ id: 'duct', kind: 'soffit', min: [0, 0, 2.5], max }],
  });

  it('that sticks out of the shell is a warning with the length that does', () => {
    expect(findingIds(roomOf(solid([1, 5, 3])))).not.toContain('solid-outside:duct');
    const finding = findingOf(roomOf(solid([1, 5.4, 3])), 'solid-outside:duct');
    expect(finding.severity).toBe('warning');
    expect(finding.value).toBeCloseTo(0.4, 9);
    const project = roomOf(solid([1, 5.4, 3]));
    for (const trial of tried(project, finding)) {
      expect(trial.project.room.solids[0]?.max).toEqual([1, 5, 3]);
      expect(findingIds(trial.project)).not.toContain('solid-outside:duct');
    }
    expect(tried(project, finding)).toHaveLength(1);
  });
});

describe('a row of seats', () => {
  const rowAt = (row: Fields, size: Fields = { width: 4, length: 5, height: 3 }) =>
    roomOf({ size }, { seating: { rows: [{ id: 'a', seats: 3, pitchM: 0.7, y: 3, ...row }] } });

  it('inside the room is no finding', () => {
    expect(findingIds(rowAt({}))).not.toContain('row-outside:a');
  });

  it.each([
    ['behind the back wall', { y: 5.3 }, 0.3],
    ['in front of the screen wall', { y: -0.2 }, 0.2],
    ['through the left wall', { x: 0.5 }, 0.2],
    ['through the right wall', { x: 3.6 }, 0.3],
    ['above the ceiling', { riserM: 2.5, earHeightM: 1.1 }, 0.6],
    ['too wide for the room', { seats: 9 }, 0.8],
  ])('%s is a fault with the length that is outside', (_, row, out) => {
    const finding = findingOf(rowAt(row), 'row-outside:a');
    expect(finding.severity).toBe('fault');
    expect(finding.value).toBeCloseTo(out, 9);
    expect(finding.remedies.length).toBeGreaterThan(0);
  });

  it.each([
    ['behind the back wall', { y: 5.3 }],
    ['in front of the screen wall', { y: -0.2 }],
  ])('%s is inside once moved as proposed', (_, row) => {
    const project = rowAt(row);
    const trials = tried(project, findingOf(project, 'row-outside:a'));
    expect(trials).toHaveLength(1);
    for (const trial of trials) expect(findingIds(trial.project)).not.toContain('row-outside:a');
  });

  it.each([
    ['near the screen wall and through a side wall', { y: 0.1, x: 0.5 }],
    ['near the back wall and through a side wall', { y: 4.9, x: 3.7 }],
    ['outside on two sides', { y: 5.5, x: 4.2 }],
  ])('%s is only offered changes that bring it further in', (_, row) => {
    const project = rowAt(row);
    const finding = findingOf(project, 'row-outside:a');
    for (const trial of tried(project, finding)) {
      const left = trial.analysis.findings.find(({ id }) => id === finding.id);
      expect(left?.value ?? -1).toBeLessThan(finding.value ?? 0);
    }
  });

  it('that is missing is a fault, and nothing is judged', () => {
    const finding = findingOf(roomOf({}, { seating: { rows: [] } }), 'no-seats');
    expect(finding).toMatchObject({ severity: 'fault', value: 0, limit: 1 });
  });
});

describe('a picture', () => {
  const screen = (fields: Fields) => roomOf({}, { screen: fields });

  it('that fits the wall is no finding', () => {
    expect(findingIds(screen({ widthM: 3.9, bottomM: 0.7 }))).not.toContain('screen-outside');
  });

  it.each([
    ['wider than the wall', { widthM: 4.6, bottomM: 0.2 }, 4],
    // 16:9: 1.8 m are left above the lower edge, which is 3.2 m across.
    ['higher than the wall', { widthM: 3.6, bottomM: 1.2 }, 3.2],
    ['too far to one side', { widthM: 3, bottomM: 0.7, centreX: 1.2 }, 2.4],
  ])('%s is a fault, and fits at the width that is proposed', (_, fields, widthM) => {
    const project = screen(fields);
    const finding = findingOf(project, 'screen-outside');
    expect(finding).toMatchObject({ severity: 'fault', value: fields.widthM });
    expect(finding.limit).toBeCloseTo(widthM, 2);
    const trials = tried(project, finding);
    expect(trials).toHaveLength(1);
    for (const trial of trials) expect(findingIds(trial.project)).not.toContain('screen-outside');
  });

  it('is offered whole centimetres that still fit a wall of 4.005 m', () => {
    const project = roomOf(
      { size: { width: 4.005, length: 5, height: 3 } },
      { screen: { widthM: 4.5, bottomM: 0.2 } },
    );
    const [trial] = tried(project, findingOf(project, 'screen-outside'));
    expect(trial?.project.screen.widthM).toBe(4);
    expect(trial?.analysis.findings.map(({ id }) => id)).not.toContain('screen-outside');
  });

  it('that hangs where no width would fit gets advice in words', () => {
    const finding = findingOf(screen({ widthM: 1, bottomM: 2.95 }), 'screen-outside');
    expect(finding.remedies.map((remedy) => [remedy.text, remedy.edit])).toEqual([
      ['Move the screen down or to the middle of the wall.', undefined],
    ]);
  });
});

describe('rows of a room that became too short', () => {
  it('are brought in one behind the other, never onto each other', () => {
    let project = roomOf(
      { size: { width: 4, length: 3, height: 2.4 } },
      {
        seating: {
          rows: [
            { id: 'a', seats: 3, y: 3.6 },
            { id: 'b', seats: 3, y: 5.2 },
          ],
        },
      },
    );
    for (let round = 0; round < 4; round++) {
      const finding = analyze(project).findings.find(({ id }) => id.startsWith('row-outside'));
      const edit = finding?.remedies[0]?.edit;
      if (edit) project = applyEdit(project, edit);
    }
    const [a, b] = project.seating.rows.map((row) => row.y);
    expect(Math.abs(given(a) - given(b))).toBeGreaterThanOrEqual(0.9 - 1e-9);
    expect(findingIds(project).filter((id) => id.startsWith('row-'))).toEqual([]);
  });

  it('are a fault where heads of two rows share a place', () => {
    const project = roomOf(
      {},
      {
        seating: {
          rows: [
            { id: 'a', seats: 3, y: 3 },
            { id: 'b', seats: 3, y: 3.2 },
          ],
        },
      },
    );
    expect(findingOf(project, 'rows-overlap:b')).toMatchObject({ severity: 'fault', limit: 0.6 });
  });
});
