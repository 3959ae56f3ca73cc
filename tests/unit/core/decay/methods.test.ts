import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { methodAdvice } from '../../../../core/decay/advice';
import { arauPuchadesS } from '../../../../core/decay/arau-puchades';
import { decayOf } from '../../../../core/decay/decay';
import { facePairs, type FacesInput } from '../../../../core/decay/face-absorption';
import { fitzroyS } from '../../../../core/decay/fitzroy';
import { kuttruffPathsS } from '../../../../core/decay/kuttruff';
import { METHOD_IDS, METHODS, methodTimes, spreadOf } from '../../../../core/decay/methods';
import { millingtonS } from '../../../../core/decay/millington';
import { eyringS, sabineS } from '../../../../core/decay/reverberation';
import { coefficientBandS } from '../../../../core/decay/uncertainty';
import { freeSpace } from '../../../../core/room/space';
import { arbitraryProject } from '../../support/arbitrary-project';
import { example, given, roomOf } from '../../support/rooms';

/** A 4 x 5 x 3 m shell by the coefficients of its three pairs, with some air. */
function shell(side: number, end: number, level: number): FacesInput {
  const parts = [
    ['left', 15, side],
    ['right', 15, side],
    ['front', 12, end],
    ['back', 12, end],
    ['floor', 20, level],
    ['ceiling', 20, level],
  ] as const;
  const faces = parts.map(([face, areaM2, coefficient]) => ({ face, areaM2, coefficient }));
  return {
    volumeM3: 60,
    surfaceM2: 94,
    absorptionM2: faces.reduce((sum, face) => sum + face.areaM2 * face.coefficient, 0),
    airPerM: 0.0005,
    speedMS: 343.2,
    faces,
  };
}

const coefficient = fc.double({ min: 0.001, max: 0.98, noNaN: true });

describe('even absorption', () => {
  it('gives Eyring by Millington, Fitzroy and Arau-Puchades', () => {
    fc.assert(
      fc.property(coefficient, (a) => {
        const input = shell(a, a, a);
        for (const timeS of [millingtonS, fitzroyS, arauPuchadesS]) {
          expect(timeS(input) / eyringS(input)).toBeCloseTo(1, 9);
        }
      }),
    );
  });

  it('that is small gives Sabine by all of them', () => {
    const input = shell(1e-4, 1e-4, 1e-4);
    for (const id of METHOD_IDS) {
      expect(Math.abs(METHODS[id].timeS(input) / sabineS(input) - 1)).toBeLessThan(2e-4);
    }
  });
});

describe('uneven absorption', () => {
  it('keeps Arau-Puchades between the pairs’ own times, and not above Fitzroy', () => {
    fc.assert(
      fc.property(coefficient, coefficient, coefficient, (a, b, c) => {
        const input = shell(a, b, c);
        const alone = [a, b, c].map((one) => eyringS(shell(one, one, one)));
        const arau = arauPuchadesS(input);
        expect(arau).toBeGreaterThanOrEqual(Math.min(...alone) * (1 - 1e-9));
        expect(arau).toBeLessThanOrEqual(Math.max(...alone) * (1 + 1e-9));
        // A geometric mean is never above the arithmetic one.
        expect(arau).toBeLessThanOrEqual(fitzroyS(input) * (1 + 1e-9));
      }),
    );
  });

  it('keeps Millington at or below Eyring, and Kuttruff’s free paths at or above', () => {
    fc.assert(
      fc.property(coefficient, coefficient, coefficient, (a, b, c) => {
        const input = shell(a, b, c);
        expect(millingtonS(input)).toBeLessThanOrEqual(eyringS(input) * (1 + 1e-9));
        expect(kuttruffPathsS(input)).toBeGreaterThanOrEqual(eyringS(input) * (1 - 1e-9));
      }),
    );
  });
});

describe('coefficients of 1 and more', () => {
  it('stay raw for Sabine and are cut at 0.99 in every logarithm', () => {
    const raw = shell(1.2, 1.2, 1.2);
    const cut = shell(0.99, 0.99, 0.99);
    expect(sabineS(raw)).toBeCloseTo((sabineS(cut) * 0.99) / 1.2, 3);
    for (const id of METHOD_IDS) {
      if (id !== 'sabine') expect(METHODS[id].timeS(raw)).toBeCloseTo(METHODS[id].timeS(cut), 9);
    }
  });

  it('let Kuttruff’s free paths never call a deader room livelier', () => {
    const times = [0.5, 0.8, 0.9, 0.95, 0.99, 1.2].map((a) => kuttruffPathsS(shell(a, a, a)));
    times.slice(1).forEach((time, i) => expect(time).toBeLessThanOrEqual(given(times[i]) + 1e-12));
  });
});

describe('any project', () => {
  it('has finite, positive times by every method wherever it has any, within the spread', () => {
    fc.assert(
      fc.property(arbitraryProject, (project) => {
        for (const band of decayOf(project, freeSpace(project.room)).bands) {
          const times = METHOD_IDS.map((id) => band.methods[id]);
          if (band.eyringS === null) {
            expect(times.every((time) => time === null)).toBe(true);
            continue;
          }
          for (const time of times) {
            expect(Number.isFinite(time)).toBe(true);
            expect(given(time)).toBeGreaterThan(0);
          }
          const [shortest, longest] = given(band.spreadS);
          expect(shortest).toBeLessThanOrEqual(given(band.eyringS));
          expect(longest).toBeGreaterThanOrEqual(given(band.sabineS));
          const [least, most] = given(band.coefficientBandS);
          expect(least).toBeLessThanOrEqual(given(band.eyringS) * (1 + 1e-9));
          expect(most).toBeGreaterThanOrEqual(given(band.eyringS) * (1 - 1e-9));
        }
      }),
      { numRuns: 150 },
    );
  });
});

describe('the pairs of faces', () => {
  it('add up to the whole surface, a solid’s faces by the axis that they are normal to', () => {
    const { room } = example('under-the-ducts');
    const { surfaces, surfaceM2 } = freeSpace(room);
    const pairs = facePairs(surfaces.map((surface) => ({ ...surface, coefficient: 0.1 })));
    expect(pairs.map((pair) => pair.axis)).toEqual([0, 1, 2]);
    expect(pairs.reduce((sum, pair) => sum + pair.areaM2, 0)).toBeCloseTo(surfaceM2, 9);
    // Flat boxes hide as much floor as their tops show: 2 x 4.3 x 6.7 m2, less what nothing shows.
    expect(given(pairs[2]).areaM2).toBeLessThanOrEqual(2 * 4.3 * 6.7 + 1e-9);
  });
});

describe('without figures', () => {
  it('every time is null and there is no spread', () => {
    expect(spreadOf(methodTimes(null))).toBeNull();
  });
});

describe('the method that is advised', () => {
  const advised = (side: number, end: number, level: number) =>
    methodAdvice(
      ([250, 500, 1000, 2000, 4000] as const).map((hz) => ({
        hz,
        pairs: facePairs(shell(side, end, level).faces),
      })),
    );

  it('is Eyring where the pairs absorb within a factor of three', () => {
    expect(advised(0.1, 0.15, 0.25).method).toBe('eyring');
  });

  it('is Arau-Puchades beyond it, with the ratio and the pairs', () => {
    const advice = advised(0.05, 0.1, 0.5);
    expect(advice).toMatchObject({ method: 'arauPuchades', limit: 3, strongest: 2, weakest: 0 });
    // ln(1 - 0.5)/ln(1 - 0.05) = 13.5.
    expect(given(advice.ratio)).toBeCloseTo(13.51, 2);
  });

  it('needs more than half of the octaves to be uneven', () => {
    const [even, uneven] = [shell(0.1, 0.1, 0.1), shell(0.01, 0.1, 0.5)].map((room) =>
      facePairs(room.faces),
    );
    const bands = (count: number) =>
      ([250, 500, 1000, 2000, 4000] as const).map((hz, i) => ({
        hz,
        pairs: given(i < count ? uneven : even),
      }));
    expect(methodAdvice(bands(2)).method).toBe('eyring');
    expect(methodAdvice(bands(3)).method).toBe('arauPuchades');
  });

  it('is Eyring without a ratio where nothing is known, and a figure where a pair absorbs nothing', () => {
    expect(methodAdvice([])).toMatchObject({ method: 'eyring', ratio: null });
    expect(Number.isFinite(advised(0, 0.1, 0.5).ratio)).toBe(true);
  });
});

describe('the error of the coefficients', () => {
  const input = shell(0.3, 0.3, 0.3);

  it('of one finish all over is as large as that of its coefficient', () => {
    const one = input.faces.map((face) => ({ ...face, finish: 'a' }));
    const [least, most] = coefficientBandS(input, one, 500);
    expect(least).toBeCloseTo(eyringS(shell(0.4, 0.4, 0.4)), 9);
    expect(most).toBeCloseTo(eyringS(shell(0.2, 0.2, 0.2)), 9);
  });

  it('of several finishes is smaller, because not all err alike', () => {
    const own = input.faces.map((face) => ({ ...face, finish: face.face }));
    const one = input.faces.map((face) => ({ ...face, finish: 'a' }));
    const width = ([least, most]: readonly [number, number]): number => most - least;
    expect(width(coefficientBandS(input, own, 500))).toBeLessThan(
      width(coefficientBandS(input, one, 500)) / 2,
    );
  });

  it('of a hard face is half its coefficient at most', () => {
    const hard = shell(0.04, 0.04, 0.04);
    const faces = hard.faces.map((face) => ({ ...face, finish: 'a' }));
    expect(coefficientBandS(hard, faces, 500)[1]).toBeCloseTo(eyringS(shell(0.02, 0.02, 0.02)), 9);
  });
});

describe('people and chairs', () => {
  const bandAt = (objects: readonly unknown[], hz: number) =>
    given(
      decayOf(roomOf({}, { objects }), freeSpace(roomOf().room)).bands.find(
        (band) => band.hz === hz,
      ),
    );

  it('add their absorption to every method', () => {
    const bare = bandAt([], 500);
    const full = bandAt([{ id: 'a', item: 'person-seated', count: 6 }], 500);
    // 6 x 0.44 m2: each method’s 0.161 V/T grows by it.
    for (const id of METHOD_IDS) {
      if (id === 'fitzroy' || id === 'arauPuchades') continue;
      const area = (band: typeof bare): number => (0.16102 * 60) / given(band.methods[id]);
      expect(area(full) - area(bare)).toBeCloseTo(2.64, 2);
    }
    expect(given(full.methods.arauPuchades)).toBeLessThan(given(bare.methods.arauPuchades));
    expect(given(full.methods.fitzroy)).toBeLessThan(given(bare.methods.fitzroy));
  });

  it('without a figure in a band leave that band unknown, and none leave it alone', () => {
    const finishesCustom = [{ id: 'o', name: 'O', absorption: { '63': 0.1 }, source: 's' }];
    const faces = ['front', 'back', 'left', 'right', 'floor', 'ceiling'];
    const finishes = Object.fromEntries(faces.map((face) => [face, 'o']));
    const at63 = (count: number) => {
      const objects = [{ id: 'a', item: 'person-seated', count }];
      const project = roomOf({ finishes }, { finishesCustom, objects });
      return decayOf(project, freeSpace(project.room)).bands[0]?.eyringS;
    };
    expect(at63(1)).toBeNull();
    expect(at63(0)).toBeGreaterThan(0);
  });

  it('of an unknown kind are left out, and a finding says so', () => {
    const odd = bandAt([{ id: 'a', item: 'unheard-of', count: 6 }], 500);
    expect(odd.eyringS).toBe(bandAt([], 500).eyringS);
    expect(odd.objects).toEqual([]);
  });
});
