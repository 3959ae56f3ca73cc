import { REMEDY_FINISHES } from '../../../../core/findings/refinishing';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { analyze, type Analysis } from '../../../../core/analysis/analyze';
import { absorptionAt, FINISHES, type FacePlace } from '../../../../core/room/finishes';
import { FACES, type Project } from '../../../../core/room/project';
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
            const edits = edit.kind === 'several' ? edit.edits : [edit];
            expect(edits.length).toBeLessThanOrEqual(2);
            for (const one of edits) {
              expect(one.kind === 'finish' && ids.includes(one.finish)).toBe(true);
            }
          }
        }
      }),
      { numRuns: 100 },
    );
    expect(proposals).toBeGreaterThan(30);
  });

  /** The mid-band time that the first remedy promises, and that which the room then has. */
  const promise = (project: Project): readonly [number, number] => {
    const finding = given(analyze(project).findings.find(({ subject }) => subject === 'decay'));
    const told = /: (\d+\.\d\d) s in the middle bands/.exec(finding.remedies[0]?.text ?? '');
    return [Number(told?.[1]), given(given(tried(project, finding)[0]).analysis.decay.midS)];
  };

  it('is told with the mid-band time that the room then has', () => {
    const [told, has] = promise(clad({}));
    expect(Math.abs(told - has)).toBeLessThan(0.0051);
  });

  it('leaves alone what a patch covers, also one of the finish that the face has', () => {
    const patch = { id: 'p', face: 'ceiling', rect: [0, 0, 4, 4.5], finish: 'gyp13-stud' };
    const [told, has] = promise(roomOf({ patches: [patch] }));
    expect(Math.abs(told - has)).toBeLessThan(0.0051);
  });

  it('may be two faces at once, where one alone leaves the room outside', () => {
    const project = clad({});
    const finding = findingOf(project, 'decay-long');
    const [two, one] = tried(project, finding);
    expect(two?.edit.kind).toBe('several');
    expect(one?.edit.kind).toBe('finish');
    expect(outsideS(given(two).analysis)).toBeLessThan(outsideS(given(one).analysis));
  });

  it('says what is left of the finding', () => {
    const project = clad({});
    const finding = findingOf(project, 'decay-long');
    tried(project, finding).forEach(({ analysis }, i) => {
      const left = analysis.findings.find(({ id }) => id === 'decay-long');
      const text = given(finding.remedies[i]).text;
      if (left)
        expect(text).toContain(`Left then: ${left.figureName} ${given(left.value).toFixed(2)} s`);
      else expect(text).not.toContain('Left then');
    });
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

  it.each(
    Object.entries(REMEDY_FINISHES).flatMap(([place, ids]) =>
      ids.map((id) => [id, place as FacePlace] as const),
    ),
  )('may be %s on a %s, for it is built there as it was tested, in 10 cm at most', (id, place) => {
    const finish = given(FINISHES.find((candidate) => candidate.id === id));
    expect(finish.mounting).not.toMatch(/^E-|suspended/);
    expect(finish.suits).toContain(place);
    expect(finish.depthM).toBeLessThanOrEqual(0.1);
  });

  it('is put in words where no face mends it', () => {
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
