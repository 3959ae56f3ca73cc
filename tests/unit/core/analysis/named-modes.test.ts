import { describe, expect, it } from 'vitest';
import { analyze } from '../../../../core/analysis/analyze';
import { namedModes, refusalSentence, spaceOf } from '../../../../core/analysis/named-modes';
import { builtDamping, shellDamping } from '../../../../core/analysis/field-damping';
import { analyzeWhole } from '../../../../core/analysis/slow-work';
import { modeFrequencyHz } from '../../../../core/modes/shell-modes';
import { finish } from '../../../../core/quantity/slices';
import { shellField } from '../../../../core/response/field';
import type { Project } from '../../../../core/room/project';
import { freeSpace } from '../../../../core/room/space';
import { roomModes } from '../../../../core/room-modes/room-modes';
import { coverageOfFaces } from '../../../../core/room-modes/on-faces';
import { example, given, roomOf } from '../../support/rooms';

const SOFFIT = { id: 'duct', kind: 'soffit', min: [0, 0, 2.6], max: [0.8, 5, 3] };

const built = (project: Project) => {
  const outcome = finish(namedModes(spaceOf(project)));
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.refusal));
  return outcome.built;
};

describe('modes as built', () => {
  const project = roomOf({ solids: [SOFFIT] });
  const found = built(project);

  it('carry the name and the shift of the shell mode that they are most like', () => {
    const [lowest] = found.modes;
    expect(lowest?.likeShell).toEqual([0, 1, 0]);
    const shellHz = modeFrequencyHz([0, 1, 0], project.room.size, spaceOf(project).speedMS);
    expect(lowest?.shiftHz).toBeCloseTo((lowest?.frequencyHz ?? NaN) - shellHz, 9);
    for (const mode of found.modes) {
      expect(mode.likeShell === null).toBe(mode.shiftHz === null);
      expect(mode.errorPercent).toBeLessThanOrEqual(found.errorPercent);
    }
  });

  it('say what mixed ones are made of, the larger share first', () => {
    const mixed = found.modes.filter((mode) => mode.likeShell === null);
    expect(mixed.length).toBeGreaterThan(0);
    for (const { shares } of found.modes) {
      shares.slice(1).forEach(({ share }, n) => {
        expect(share).toBeLessThanOrEqual(shares[n]?.share ?? NaN);
      });
    }
    for (const { shares } of mixed) expect(shares.length).toBeGreaterThan(1);
  });

  it('are in the whole analysis where there are fittings, rising to 200 Hz, and absent where not', () => {
    const { modes } = analyzeWhole(project);
    const shaped = given(modes.shaped);
    expect(shaped).toHaveLength(found.modes.length);
    shaped.slice(1).forEach((mode, n) => {
      expect(mode.frequencyHz).toBeGreaterThanOrEqual(shaped[n]?.frequencyHz ?? NaN);
    });
    expect(shaped.at(-1)?.frequencyHz).toBeLessThanOrEqual(200);
    expect(modes.shapedErrorPercent).toBeGreaterThan(0);
    expect(analyzeWhole(roomOf()).modes).not.toHaveProperty('shaped');
    expect(analyze(project).modes).not.toHaveProperty('shaped');
  });
});

describe('a room that has no modes as built', () => {
  it('of two parts is told as a fault, once, and refused in words', () => {
    const wall = { id: 'wall', kind: 'other', min: [0, 2, 0], max: [4, 2.2, 3] };
    const project = roomOf({ solids: [wall] });
    const outcome = finish(namedModes(spaceOf(project)));
    expect(outcome.ok ? '' : refusalSentence(outcome.refusal)).toMatch(/2 parts.*passage/);
    const { findings, modes } = analyzeWhole(project);
    expect(findings.filter(({ id }) => id === 'space-in-parts')).toHaveLength(1);
    expect(modes).not.toHaveProperty('shaped');
  });
});

describe('the decay of modes as built', () => {
  it('is that of the formula where nothing fills the shell', () => {
    // Two ways to the same figure: each mode's square over each face by quadrature, and 2 or 1 by its order.
    const project = example('basement-bay');
    const space = freeSpace(project.room);
    const outcome = finish(roomModes(spaceOf(project)));
    if (!outcome.ok) throw new Error('refused');
    const byShape = builtDamping(project, space, outcome.modes);
    const field = shellField(project.room.size, spaceOf(project).speedMS, 200);
    const byFormula = shellDamping(project, space, field);
    expect(byShape.defaulted).toBe(0);
    byFormula.damping.modesS.slice(0, 30).forEach((decayS, n) => {
      expect((byShape.damping.modesS[n] ?? NaN) / decayS).toBeCloseTo(1, 2);
    });
  });

  it('stands in where a face has no figure, and says for how many', () => {
    const finishesCustom = [
      { id: 'unknown', name: 'Not measured', absorption: {}, source: 'none' },
    ];
    const project = roomOf({ finishes: { left: 'unknown' } }, { finishesCustom });
    const space = freeSpace(project.room);
    const field = shellField(project.room.size, 343, 120);
    const { damping, defaulted } = shellDamping(project, space, field);
    expect(defaulted).toBe(field.frequenciesHz.length);
    expect(new Set(damping.modesS)).toEqual(new Set([0.4]));
  });

  it('counts every face of the free space: the mode at zero would have its whole area', () => {
    // Sum over the modes' squares is no area, but a constant is: the weights themselves must add up.
    const project = roomOf({ solids: [SOFFIT] });
    const outcome = finish(roomModes(spaceOf(project)));
    if (!outcome.ok) throw new Error('refused');
    const flat = { ...outcome.modes, shapes: outcome.modes.shapes.map(() => 1) };
    const sides = coverageOfFaces(flat, (_, axis) => axis, 3);
    const area = sides.reduce((sum, side) => sum + (side[0] ?? 0), 0);
    expect(area).toBeCloseTo(freeSpace(project.room).surfaceM2, 9);
  });
});
