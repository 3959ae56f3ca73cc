/**
 * Figures of general-purpose acoustics libraries and standards bodies' code: numbers from outside, but
 * from no printed page. They are not counted as published.
 */

import { describe, expect, it } from 'vitest';
import { attenuationDbPerM } from '../../core/air/attenuation';
import { arauPuchadesS } from '../../core/decay/arau-puchades';
import type { FacesInput } from '../../core/decay/face-absorption';
import { fitzroyS } from '../../core/decay/fitzroy';
import { millingtonS } from '../../core/decay/millington';
import { decayFactor, eyringS, sabineS } from '../../core/decay/reverberation';
import { directionFrom } from '../../core/speakers/direction';

const FACES = ['left', 'right', 'front', 'back', 'floor', 'ceiling'] as const;

/** Three pairs of faces, area of both in m2 and coefficient of each pair. */
function pairs(
  volumeM3: number,
  ...of: readonly (readonly [areaM2: number, coefficient: number])[]
): FacesInput {
  const faces = FACES.map((face, n) => {
    const [areaM2, coefficient] = of[Math.floor(n / 2)] ?? [0, 0];
    return { face, areaM2: areaM2 / 2, coefficient };
  });
  return {
    volumeM3,
    surfaceM2: faces.reduce((sum, { areaM2 }) => sum + areaM2, 0),
    absorptionM2: faces.reduce((sum, { areaM2, coefficient }) => sum + areaM2 * coefficient, 0),
    airPerM: 0,
    speedMS: 343,
    faces,
  };
}

describe('decay times of two open acoustics libraries, c = 343 m/s', () => {
  // phonometry, tests/room/test_reverberation_prediction.py.
  const hall = pairs(120, [30, 0.5], [48, 0.1], [80, 0.1]);
  // python-acoustics, tests/test_room.py.
  const large = pairs(3000, [240, 0.1], [600, 0.25], [500, 0.45]);

  it('the constant is 0.161113', () => {
    expect(Math.abs(decayFactor(343) - 0.161113)).toBeLessThan(1.5e-6);
  });

  it.each([
    ['Fitzroy in 8 x 5 x 3 m', fitzroyS(hall), 0.974394, 1e-6],
    ['Millington in 100 m3', millingtonS(pairs(100, [60, 0.3], [40, 0.6])), 0.277533, 5e-7],
    ['Sabine in 3000 m3', sabineS(large), 1.211382149, 1e-7],
    ['Eyring in 3000 m3', eyringS(large), 1.020427763, 1e-7],
    ['Arau-Puchades in 3000 m3', arauPuchadesS(large), 1.142442931, 1e-7],
    [
      'Fitzroy in 3000 m3',
      fitzroyS(pairs(3000, [480, 0.1], [1200, 0.25], [1000, 0.45])),
      0.699854185,
      1e-7,
    ],
  ])('%s', (_, seconds, given, tolerance) => {
    expect(Math.abs(seconds - given)).toBeLessThan(tolerance);
  });
});

describe('absorption of air at 25 C and 80 %', () => {
  // python-acoustics, tests/data/absorption_coefficient.csv: layout of ISO 9613-1 table 1, source not
  // named. Midbands are the exact ones.
  it.each([
    [50, 0.0426],
    [63, 0.0673],
    [80, 0.106],
    [100, 0.167],
    [125, 0.262],
    [160, 0.409],
    [200, 0.631],
    [250, 0.963],
    [315, 1.44],
    [400, 2.1],
    [500, 2.95],
    [630, 3.97],
    [800, 5.12],
    [1000, 6.35],
    [1250, 7.62],
    [1600, 9.01],
    [2000, 10.7],
    [2500, 12.9],
    [3150, 16.2],
    [4000, 21.1],
    [5000, 28.8],
    [6300, 40.8],
    [8000, 59.8],
    [10000, 89.6],
  ])('at %i Hz is %f dB/km', (nominalHz, dbPerKm) => {
    const exactHz = 1000 * 10 ** (Math.round(10 * Math.log10(nominalHz / 1000)) / 10);
    const air = { temperatureC: 25, humidityPercent: 80, pressureKPa: 101.325 };
    const computed = 1000 * attenuationDbPerM(exactHz, air);
    expect(Number(computed.toPrecision(3))).toBe(dbPerKm);
  });
});

describe('directions of a standards body’s renderer', () => {
  // EBU ADM renderer, ear/core/test/test_geom.py: x right, y ahead, z up. In the room y runs backwards.
  it.each([
    [[1, 1, 0], -45, 0],
    [[0, 1, 1], 0, 45],
    [[Math.SQRT2, Math.SQRT2, 2], -45, 45],
  ] as const)('of %j is %f degrees to the left and %f up', ([x, y, z], azimuth, elevation) => {
    const { azimuthDeg, elevationDeg } = directionFrom([0, 0, 0], [x, -y, z]);
    expect(azimuthDeg).toBeCloseTo(azimuth, 9);
    expect(elevationDeg).toBeCloseTo(elevation, 9);
  });
});
