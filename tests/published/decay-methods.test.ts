import { describe, expect, it } from 'vitest';
import { arauPuchadesS } from '../../core/decay/arau-puchades';
import type { FacesInput } from '../../core/decay/face-absorption';
import { fitzroyS } from '../../core/decay/fitzroy';
import { kuttruffPathsS, kuttruffUnevenS } from '../../core/decay/kuttruff';
import { millingtonS } from '../../core/decay/millington';
import { decayFactor, eyringS, sabineS } from '../../core/decay/reverberation';
import { homeCinemaNominalS, targetBand } from '../../core/decay/target';

const FACES = ['front', 'back', 'left', 'right', 'floor', 'ceiling'] as const;
type Coefficients = Readonly<Record<(typeof FACES)[number], number>>;

const even = (coefficient: number): Coefficients => ({
  front: coefficient,
  back: coefficient,
  left: coefficient,
  right: coefficient,
  floor: coefficient,
  ceiling: coefficient,
});

/** A shell of width x length x height in m with these coefficients. */
function room(
  [width, length, height]: readonly [number, number, number],
  coefficients: Coefficients,
  rest: { readonly airPerM?: number; readonly speedMS?: number } = {},
): FacesInput {
  const area = (face: (typeof FACES)[number]): number =>
    face === 'front' || face === 'back'
      ? width * height
      : face === 'left' || face === 'right'
        ? length * height
        : width * length;
  const faces = FACES.map((face) => ({
    face,
    areaM2: area(face),
    coefficient: coefficients[face],
  }));
  return {
    volumeM3: width * length * height,
    surfaceM2: faces.reduce((sum, face) => sum + face.areaM2, 0),
    absorptionM2: faces.reduce((sum, face) => sum + face.areaM2 * face.coefficient, 0),
    airPerM: rest.airPerM ?? 0,
    speedMS: rest.speedMS ?? 343.2,
    faces,
  };
}

// 6 m wide, 5 m long, 2.4 m high; the pair of 24 m2 has 0.2 and 0.4, that of 28.8 m2 has 0.05, floor and
// ceiling have 0.3 and 0.1. Worked by hand from the formulas with c = 343.2 m/s.
const WORKED: Coefficients = {
  left: 0.2,
  right: 0.4,
  front: 0.05,
  back: 0.05,
  floor: 0.3,
  ceiling: 0.1,
};
const WORKED_SIZE = [6, 5, 2.4] as const;
// Energy attenuation at 1 kHz, 20 C, 50 % (ISO 9613-1), 1/m.
const WORKED_AIR = 0.001074;

describe('the worked room of 72 m3 by every method', () => {
  it('has 112.8 m2 of surface that absorb 20.64 m2', () => {
    const input = room(WORKED_SIZE, WORKED);
    expect(input.surfaceM2).toBeCloseTo(112.8, 9);
    expect(input.absorptionM2).toBeCloseTo(20.64, 9);
    expect(decayFactor(343.2)).toBeCloseTo(0.16102, 5);
  });

  it.each([
    ['Sabine 1922', sabineS, 0.5617, 0.5534],
    ['Eyring 1930', eyringS, 0.5086, 0.5018],
    ['Millington 1932 and Sette 1933', millingtonS, 0.4801, 0.4741],
    ['Fitzroy 1959', fitzroyS, 0.8179, 0.7885],
    ['Arau-Puchades 1988', arauPuchadesS, 0.6067, 0.5939],
    ['Kuttruff, free paths of variance 0.4', kuttruffPathsS, 0.53, 0.5226],
  ] as const)('%s: %#', (_, timeS, withoutAirS, withAirS) => {
    expect(Math.abs(timeS(room(WORKED_SIZE, WORKED)) - withoutAirS)).toBeLessThan(0.0005);
    const withAir = room(WORKED_SIZE, WORKED, { airPerM: WORKED_AIR });
    expect(Math.abs(timeS(withAir) - withAirS)).toBeLessThan(0.0005);
  });

  it('Kuttruff, uneven absorption of plane faces: 0.4994 s without air', () => {
    // Exponent 0.20578, worked by hand; formula from memory.
    expect(Math.abs(kuttruffUnevenS(room(WORKED_SIZE, WORKED)) - 0.4994)).toBeLessThan(0.0005);
  });

  it.each([
    ['left and right', 0.28816, 0.3],
    ['front and back', 2.00375, 0.05],
    ['floor and ceiling', 0.46059, 0.2],
  ] as const)('%s alone would give %f s', (_, seconds, mean) => {
    // The three Eyring times that Fitzroy and Arau-Puchades are means of.
    expect(eyringS(room(WORKED_SIZE, even(mean)))).toBeCloseTo(seconds, 5);
  });
});

describe('a coefficient of 0.2 on every face of the same room', () => {
  it.each([
    ['Sabine', sabineS, 0.51389],
    ['Eyring', eyringS, 0.46059],
    ['Millington-Sette', millingtonS, 0.46059],
    ['Fitzroy', fitzroyS, 0.46059],
    ['Arau-Puchades', arauPuchadesS, 0.46059],
    ['Kuttruff, free paths', kuttruffPathsS, 0.48211],
    ['Kuttruff, uneven faces', kuttruffUnevenS, 0.46059],
  ] as const)('%s: all but Sabine and the free paths agree', (_, timeS, seconds) => {
    // An identity of the formulas.
    expect(timeS(room(WORKED_SIZE, even(0.2)))).toBeCloseTo(seconds, 5);
  });
});

describe('8 x 5 x 3 m, 0.5 on the walls of 5 x 3 m and 0.1 on all others', () => {
  it('decays in 0.812147 s by Arau-Puchades', () => {
    // Conformance report of an independent public implementation, citing Acustica 65 (1988), eq. 18;
    // c = 343.0 m/s.
    const walls = { ...even(0.1), left: 0.5, right: 0.5 };
    expect(arauPuchadesS(room([8, 5, 3], walls, { speedMS: 343 }))).toBeCloseTo(0.812147, 5);
  });
});

describe('a cube with one face that absorbs everything', () => {
  it('has the exponent ln 1.25 by Kuttruff’s correction for uneven faces', () => {
    // Counting view factors: of the sound from a wall a fifth goes to each other wall.
    const open = { ...even(0), front: 1 };
    const seconds = kuttruffUnevenS(room([4, 4, 4], open));
    // The program cuts 1 at 0.99, which moves the exponent by about 1 %.
    const exponent = (decayFactor(343.2) * 64) / (96 * seconds);
    expect(Math.abs(exponent / Math.log(1.25) - 1)).toBeLessThan(0.02);
  });
});

// F. Alton Everest, The Master Handbook of Acoustics, example 1: floor 373 ft2 concrete, 1159 ft2 gypsum
// board; the Eyring times are his data put into the formula with 0.161 in metres.
describe('Everest’s untreated room by Eyring', () => {
  const V = 105.565;
  it.each([
    [125, 0.01, 0.29, 0.476],
    [250, 0.01, 0.1, 1.469],
    [500, 0.015, 0.05, 2.819],
    [1000, 0.02, 0.04, 3.339],
    [2000, 0.02, 0.07, 2.005],
    [4000, 0.02, 0.09, 1.576],
  ] as const)('at %i Hz', (_, concrete, gypsum, seconds) => {
    const input = {
      volumeM3: V,
      surfaceM2: 34.653 + 107.675,
      absorptionM2: 34.653 * concrete + 107.675 * gypsum,
      airPerM: 0,
      speedMS: (24 * Math.LN10) / 0.161,
    };
    expect(Math.abs(eyringS(input) - seconds)).toBeLessThan(0.001);
  });
});

describe('the home-cinema corridor', () => {
  it('is 0.3 s in 3532 cubic feet, the law’s own reference', () => {
    // Sound & Vision, "Design the ultimate home theater on a budget", p. 7: trade rule.
    expect(homeCinemaNominalS(3532 * 0.3048 ** 3)).toBeCloseTo(0.3, 3);
  });

  it('stays within 0.2 to 0.5 s', () => {
    // Acoustic Frontiers, "Understanding small room reverberation time measurements": trade rule.
    expect(homeCinemaNominalS(10)).toBe(0.2);
    expect(homeCinemaNominalS(2000)).toBe(0.5);
  });

  it('is 25 % wide from 250 Hz to 4 kHz and says nothing outside', () => {
    // Same source: T20 and T30 within 25 % over that range.
    const band = targetBand({ kind: 'home-cinema' }, 500, 100);
    expect(band.lowS).toBeCloseTo(0.225, 9);
    expect(band.highS).toBeCloseTo(0.375, 9);
    for (const hz of [63, 125, 8000] as const) {
      expect(targetBand({ kind: 'home-cinema' }, hz, 100).targetS).toBeNull();
    }
  });
});
