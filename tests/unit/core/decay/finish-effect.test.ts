import { describe, expect, it } from 'vitest';
import { analyze } from '../../../../core/analysis/analyze';
import { finishEffect, outsideNowS } from '../../../../core/decay/finish-effect';
import { applyEdit, type Edit } from '../../../../core/room/edits';
import { FINISHES, finishLookup } from '../../../../core/room/finishes';
import type { Project } from '../../../../core/room/project';
import type { Surface } from '../../../../core/room/space';
import { given, roomOf } from '../../support/rooms';

const project = roomOf({
  solids: [
    { id: 'duct', kind: 'soffit', min: [0, 0, 2], max: [0.5, 5, 2.4], finish: 'gyp13-stud' },
  ],
  patches: [{ id: 'door', face: 'back', rect: [1, 0, 1.8, 2], finish: 'door-solid' }],
});

const effectOf = (room: Project, takes: (surface: Surface) => boolean, id: string) => {
  const { decay, geometry, air } = analyze(room);
  return finishEffect(
    { decay, geometry, speedMS: air.speedOfSoundMS },
    takes,
    given(finishLookup(room)(id)),
  );
};

describe('what a finish would do to the decay', () => {
  it.each<readonly [string, (surface: Surface) => boolean, (finish: string) => Edit]>([
    [
      'a face',
      ({ face, patch }) => face === 'back' && patch === null,
      (finish) => ({ kind: 'finish', face: 'back', finish }),
    ],
    [
      'a patch',
      ({ patch }) => patch === 'door',
      (finish) => ({
        kind: 'patches',
        patches: project.room.patches.map((patch) => ({ ...patch, finish })),
        what: 'finish',
      }),
    ],
    [
      'a fitting',
      ({ face }) => face.startsWith('duct:'),
      (finish) => ({
        kind: 'solids',
        solids: project.room.solids.map((solid) => ({ ...solid, finish })),
        what: 'finish',
      }),
    ],
  ])('is what the analysis says once %s has it', (_, takes, edit) => {
    for (const id of ['gf48-50-A', 'panel-mw-2', 'concrete-smooth-painted', 'drape-heavy-half']) {
      const effect = given(effectOf(project, takes, id));
      const after = analyze(applyEdit(project, edit(id)));
      expect(effect.outsideS).toBeCloseTo(outsideNowS(after.decay), 9);
      const eyring = (hz: number) => given(after.decay.bands.find((b) => b.hz === hz)?.eyringS);
      expect(effect.midS).toBeCloseTo((eyring(500) + eyring(1000)) / 2, 9);
      const before = outsideNowS(analyze(project).decay);
      expect(effect.nearerS).toBeCloseTo(before - effect.outsideS, 9);
    }
  });

  it('helps where it absorbs in a live room', () => {
    const ceiling = ({ face }: Surface): boolean => face === 'ceiling';
    expect(given(effectOf(project, ceiling, 'gf48-50-A')).nearerS).toBeGreaterThan(0.1);
    expect(given(effectOf(project, ceiling, 'concrete-smooth')).nearerS).toBeLessThan(0);
  });

  it('is unknown without a figure in a judged octave, and known for every finish of the library', () => {
    const own = { id: 'own', name: 'Own', absorption: { '500': 0.5 }, source: 'own' };
    const takes = ({ face }: Surface): boolean => face === 'left';
    expect(effectOf({ ...project, finishesCustom: [own] }, takes, 'own')).toBeNull();
    for (const { id } of FINISHES) expect(effectOf(project, takes, id)).not.toBeNull();
  });
});
