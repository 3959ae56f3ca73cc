import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { decayOf, type DecayBand } from '../../../../core/decay/decay';
import { eyringS, sabineS } from '../../../../core/decay/reverberation';
import { targetBand } from '../../../../core/decay/target';
import type { Project } from '../../../../core/room/project';
import { freeSpace } from '../../../../core/room/space';
import { given, roomOf, type Fields } from '../../support/rooms';

const bandsOf = (project: Project): readonly DecayBand[] =>
  decayOf(project, freeSpace(project.room)).bands;

const bandOf = (project: Project, hz: number): DecayBand =>
  given(bandsOf(project).find((band) => band.hz === hz));

const FACES = ['front', 'back', 'left', 'right', 'floor', 'ceiling'];

/** A 4 x 5 x 3 m room with one finish all over, of these coefficients. */
function clad(absorption: Fields): Project {
  return roomOf(
    { finishes: Object.fromEntries(FACES.map((face) => [face, 'own'])) },
    { finishesCustom: [{ id: 'own', name: 'Own', absorption, source: 'own test' }] },
  );
}

describe('a band without a figure', () => {
  it('has no times, while its neighbours have', () => {
    const project = clad({ '500': 0.3, '2000': 0.3 });
    expect(bandOf(project, 1000)).toMatchObject({
      sabineS: null,
      eyringS: null,
      absorptionM2: null,
      meanCoefficient: null,
    });
    expect(bandOf(project, 500).eyringS).toBeGreaterThan(0);
    expect(bandOf(project, 1000).targetS).toBeCloseTo(0.211, 3);
  });

  it('is unknown for the whole room where one patch of it is unknown', () => {
    const project = roomOf(
      { patches: [{ id: 'p', face: 'left', rect: [0, 0, 0.1, 0.1], finish: 'own' }] },
      { finishesCustom: [{ id: 'own', name: 'Own', absorption: { '500': 0.3 }, source: 's' }] },
    );
    expect(bandOf(project, 500).eyringS).not.toBeNull();
    expect(bandOf(project, 1000).eyringS).toBeNull();
  });

  it('at 500 Hz or 1 kHz leaves the mid-band time unknown', () => {
    const project = clad({ '500': 0.3 });
    expect(decayOf(project, freeSpace(project.room)).midS).toBeNull();
  });
});

describe('a clad room of 4 x 5 x 3 m', () => {
  it('with a coefficient of 0.2 absorbs 18.8 m2', () => {
    const band = bandOf(clad({ '500': 0.2 }), 500);
    expect(band.absorptionM2).toBeCloseTo(18.8, 9);
    expect(band.meanCoefficient).toBeCloseTo(0.2, 9);
    // 0.161 * 60 / 18.8 = 0.514 s, and the air at 500 Hz takes 0.8 % off.
    expect(band.sabineS).toBeCloseTo(0.51, 2);
  });

  it('has as mid-band time the mean of 500 Hz and 1 kHz', () => {
    const project = clad({ '500': 0.2, '1000': 0.4 });
    const { midS } = decayOf(project, freeSpace(project.room));
    const [low, high] = [bandOf(project, 500).eyringS, bandOf(project, 1000).eyringS];
    expect(midS).toBeCloseTo((given(low) + given(high)) / 2, 12);
  });

  it('takes the mid-band time by the method that is to be read', () => {
    const soft = { '500': 0.9, '1000': 0.9 };
    const hard = { '500': 0.02, '1000': 0.02 };
    const of = (id: string, absorption: Fields) => ({ id, name: id, absorption, source: 's' });
    const project = roomOf(
      {
        finishes: {
          floor: 'soft',
          ceiling: 'soft',
          left: 'hard',
          right: 'hard',
          front: 'hard',
          back: 'hard',
        },
      },
      { finishesCustom: [of('soft', soft), of('hard', hard)] },
    );
    const { midS, advice } = decayOf(project, freeSpace(project.room));
    expect(advice.method).toBe('arauPuchades');
    const at = (hz: 500 | 1000) => given(bandOf(project, hz).methods.arauPuchades);
    expect(midS).toBeCloseTo((at(500) + at(1000)) / 2, 12);
    expect(midS).toBeGreaterThan(1.2 * given(bandOf(project, 500).eyringS));
  });

  it('decays more slowly in humid air at 8 kHz', () => {
    const live = clad({ '8000': 0.02 });
    const dry = bandOf({ ...live, air: { ...live.air, humidityPercent: 20 } }, 8000);
    const humid = bandOf({ ...live, air: { ...live.air, humidityPercent: 80 } }, 8000);
    expect(given(humid.sabineS)).toBeGreaterThan(1.3 * given(dry.sabineS));
  });
});

describe('Eyring beside Sabine', () => {
  const room = { volumeM3: 60, surfaceM2: 94, airPerM: 0.001, speedMS: 343.2 };

  it('is never longer', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 990 }), (thousandths) => {
        const input = { ...room, absorptionM2: (94 * thousandths) / 1000 };
        expect(eyringS(input)).toBeLessThan(sabineS(input));
      }),
    );
  });

  it('comes to the same for small absorption', () => {
    const at = (mean: number): number => {
      const input = { ...room, absorptionM2: 94 * mean };
      return sabineS(input) / eyringS(input) - 1;
    };
    expect(at(0.1)).toBeGreaterThan(0.04);
    expect(at(0.001)).toBeLessThan(0.001);
    expect(at(1e-9)).toBeLessThan(1e-8);
  });

  it.each([94, 95, 200])(
    'is cut at 0.99 of the surface where %f of 94 m2 absorb',
    (absorptionM2) => {
      const most = eyringS({ ...room, absorptionM2: 0.99 * 94 });
      expect(eyringS({ ...room, absorptionM2 })).toBeCloseTo(most, 12);
      expect(most).toBeGreaterThan(0);
    },
  );

  it('without any absorption leaves the decay to the air', () => {
    const input = { ...room, absorptionM2: 0 };
    expect(eyringS(input)).toBeCloseTo(sabineS(input), 9);
    // 0.161 / (4 * 0.001) s, whatever the room.
    expect(sabineS(input)).toBeCloseTo(40.25, 1);
  });
});

describe('a person’s own target', () => {
  it('leaves out the bands it does not name', () => {
    const target = { kind: 'custom', seconds: { '500': 0.4 } } as const;
    expect(targetBand(target, 1000, 60)).toEqual({ targetS: null, lowS: null, highS: null });
  });
});

describe('the corridor of a very small room', () => {
  it('does not go below zero', () => {
    expect(targetBand({ kind: 'bs1116' }, 1000, 0.5).lowS).toBe(0);
  });
});
