import { REMEDY_FINISHES } from '../../../../core/findings/decay';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { analyze, type Analysis } from '../../../../core/analysis/analyze';
import { absorptionAt, FINISHES } from '../../../../core/room/finishes';
import { FACES } from '../../../../core/room/project';
import { example, given, roomOf, type Fields } from '../../support/rooms';
import { findingIds, findingOf, tried } from '../../support/remedies';

/**
 * Seconds by which the octaves 250 Hz to 4 kHz lie outside the corridor by Eyring and by Arau-Puchades
 * alike, added up.
 */
function outsideS(analysis: Analysis): number {
  let sum = 0;
  for (const { hz, methods, lowS, highS } of analysis.decay.bands) {
    const { eyring, arauPuchades } = methods;
    if (hz < 250 || hz > 4000 || lowS === null || highS === null) continue;
    if (eyring === null || arauPuchades === null) continue;
    sum += Math.max(
      0,
      Math.min(eyring, arauPuchades) - highS,
      lowS - Math.max(eyring, arauPuchades),
    );
  }
  return sum;
}

/** A 4 x 5 x 3 m room with these finishes. */
const clad = (finishes: Fields, rest: Fields = {}) => roomOf({ finishes }, rest);

const allOver = (finish: string): Fields => Object.fromEntries(FACES.map((face) => [face, finish]));

describe('a bare room', () => {
  it('rings: the worst band is named with its time and its limit', () => {
    const project = clad({});
    const finding = findingOf(project, 'decay-long');
    const band = given(analyze(project).decay.bands.find(({ hz }) => hz === 1000));
    expect(finding).toMatchObject({ subject: 'decay', severity: 'warning', unit: 's' });
    expect(finding.where).toBe('250 Hz, 500 Hz, 1 kHz, 2 kHz, 4 kHz');
    expect(finding.value).toBe(band.eyringS);
    // 60 m3: 0.25 (60/100)^(1/3) + 0.05 = 0.261 s (ITU-R BS.1116).
    expect(finding.limit).toBeCloseTo(0.261, 3);
    expect(finding.message).toMatch(/^1 kHz decays in /);
  });
});

describe('a padded room', () => {
  it('is dead: the finding is the short kind', () => {
    const finding = findingOf(clad(allOver('gf-50-rigid')), 'decay-short');
    // 0.25 (60/100)^(1/3) - 0.05 = 0.161 s.
    expect(finding.limit).toBeCloseTo(0.161, 3);
    expect(given(finding.value)).toBeLessThan(0.161);
  });
});

describe('a room within its corridor', () => {
  it('has no finding on decay', () => {
    expect(findingIds(example('long-room')).filter((id) => id.startsWith('decay'))).toEqual([]);
  });

  it('of the person’s own making is judged by that alone', () => {
    const target = { kind: 'custom', seconds: { '1000': 9 } };
    expect(findingOf(clad({}, { target }), 'decay-short')).toMatchObject({
      limit: 6.75,
      where: '1 kHz',
    });
  });
});

describe('bands without figures and bands in the bass', () => {
  it('raise no finding', () => {
    const own = { id: 'own', name: 'Own', absorption: { '125': 0.01 } };
    const project = clad(allOver('own'), { finishesCustom: [own] });
    expect(analyze(project).decay.bands.find(({ hz }) => hz === 125)?.eyringS).toBeGreaterThan(5);
    expect(findingIds(project).filter((id) => id.startsWith('decay'))).toEqual([]);
  });
});

describe('the change of finish that is proposed', () => {
  const ids = FINISHES.map((finish) => finish.id);

  it('brings the decay nearer to the corridor, and names a finish that exists', () => {
    let proposals = 0;
    const finishes = fc.record(
      Object.fromEntries(FACES.map((face) => [face, fc.constantFrom(...ids)])),
    );
    fc.assert(
      fc.property(finishes, (faces) => {
        const project = clad(faces);
        const before = analyze(project);
        for (const finding of before.findings.filter(({ subject }) => subject === 'decay')) {
          for (const { edit, analysis } of tried(project, finding)) {
            proposals++;
            expect(outsideS(analysis)).toBeLessThan(outsideS(before));
            expect(edit.kind === 'finish' && ids.includes(edit.finish)).toBe(true);
          }
        }
      }),
      { numRuns: 100 },
    );
    expect(proposals).toBeGreaterThan(30);
  });

  it('is told with the mid-band time that the room then has', () => {
    const project = clad({});
    const finding = findingOf(project, 'decay-long');
    const [trial] = tried(project, finding);
    const told = Number(
      /: (\d+\.\d\d) s in the middle bands/.exec(finding.remedies[0]?.text ?? '')?.[1],
    );
    expect(Math.abs(told - given(given(trial).analysis.decay.midS))).toBeLessThan(0.0051);
  });

  it('leaves alone what a patch covers, also one of the finish that the face has', () => {
    const patch = { id: 'p', face: 'ceiling', rect: [0, 0, 4, 4.5], finish: 'gyp13-stud' };
    const project = roomOf({ patches: [patch] });
    const before = analyze(project);
    const finding = given(before.findings.find(({ subject }) => subject === 'decay'));
    for (const { analysis } of tried(project, finding)) {
      const told = Number(/: (\d+\.\d\d) s in/.exec(finding.remedies[0]?.text ?? '')?.[1]);
      expect(Math.abs(told - given(analysis.decay.midS))).toBeLessThan(0.0051);
    }
  });

  it.each(Object.values(REMEDY_FINISHES).flat())(
    'may be %s, which the library has with every band that is judged',
    (id) => {
      const finish = given(FINISHES.find((candidate) => candidate.id === id));
      for (const hz of [250, 500, 1000, 2000, 4000] as const) {
        expect(absorptionAt(finish, hz)).not.toBeNull();
      }
    },
  );

  it('is put in words where no single face mends it', () => {
    // A target that no finish can reach in so many bands at once.
    const seconds = { '250': 9, '500': 0.05, '1000': 9, '2000': 0.05, '4000': 9 };
    const project = clad(allOver('gf-50-rigid'), { target: { kind: 'custom', seconds } });
    const finding = given(analyze(project).findings.find(({ subject }) => subject === 'decay'));
    expect(finding.remedies.length).toBeGreaterThan(0);
    for (const { analysis } of tried(project, finding)) {
      expect(outsideS(analysis)).toBeLessThan(outsideS(analyze(project)));
    }
  });
});
