/**
 * Figures that stand in print, each with the constants of its own page. "Seen" means that the page
 * itself was read, "transcribed" that a public transcription names the work and the page.
 */

import { describe, expect, it } from 'vitest';
import { speedOfSoundMS } from '../../core/air/medium';
import { diffuseOfLocal } from '../../core/absorbers/diffuse';
import { decayFactor, eyringS, sabineS, type DecayInput } from '../../core/decay/reverberation';
import { modeDensityPerHz } from '../../core/modes/mode-count';
import { schroederHz } from '../../core/modes/schroeder';
import { modeFrequencyHz, type ModeOrder } from '../../core/modes/shell-modes';
import { quarterWaveHz } from '../../core/reflections/boundary';
import { cornerPowerDb } from '../../core/reflections/corner-power';
import {
  distanceM,
  reflectingRoom,
  reflectionsBetween,
} from '../../core/reflections/image-sources';
import { reflectionLossDb } from '../../core/reflections/reflection-level';
import type { ShellSize } from '../../core/room/project';
import { given, roomOf } from '../unit/support/rooms';

/** Half a unit of the last printed digit either way. */
function expectPrinted(value: number, printed: number, tolerance: number): void {
  expect(Math.abs(value - printed)).toBeLessThanOrEqual(tolerance);
}

/** Speed at which 24 ln(10)/c is the constant of a page, in its own length unit a second. */
const speedFor = (constant: number): number => (24 * Math.LN10) / constant;
/** The rule of the textbooks: 331 (T/273)^(1/2), degrees Celsius. */
const bookSpeedMS = (temperatureC: number): number => 331 * Math.sqrt((temperatureC + 273) / 273);

const decayOf = (
  constant: number,
  volumeM3: number,
  surfaceM2: number,
  absorptionM2: number,
  airPerM = 0,
): DecayInput => ({ volumeM3, surfaceM2, absorptionM2, airPerM, speedMS: speedFor(constant) });

describe('modes of 7 x 5 x 3 m', () => {
  // M. Long, Architectural Acoustics, 2nd ed. 2014, table 8.1, transcribed. The page gives no speed;
  // 344.65 m/s is inferred: it alone returns all six.
  const size: ShellSize = { length: 7, width: 5, height: 3 };
  it.each<[ModeOrder, number]>([
    [[0, 1, 0], 24.6],
    [[1, 0, 0], 34.5],
    [[1, 1, 0], 42.4],
    [[0, 2, 0], 49.2],
    [[0, 0, 1], 57.4],
    [[1, 2, 0], 60.1],
  ])('%j is at %f Hz', (order, printed) => {
    expectPrinted(modeFrequencyHz(order, size, 344.65), printed, 0.05);
  });

  it('lie 34 to the hertz at 1 kHz', () => {
    // The same, eq. 8.46, c = 344 m/s.
    expectPrinted(modeDensityPerHz(size, 1000, 344), 34, 0.5);
  });
});

describe('resonances along one axis', () => {
  const between = (lengthM: number, n: number, speedMS: number): number =>
    modeFrequencyHz([0, n, 0], { length: lengthM, width: 1, height: 1 }, speedMS);

  it.each([
    // College Physics 2e (OpenStax), 17.5, seen: c = 344 m/s.
    [0.672, 1, 344, 256, 0.5],
    [0.672, 2, 344, 512, 0.5],
    // The same, seen: 20.0 C.
    [1.8, 1, bookSpeedMS(20), 95.3, 0.05],
    // University Physics vol. 1 (OpenStax), ch. 17, seen: c = 343 m/s, lengths printed.
    [0.974, 1, 343, 176, 0.1],
    [0.974, 2, 343, 352, 0.2],
  ])('%f m, number %i, at %f m/s: %f Hz', (lengthM, n, speedMS, printed, tolerance) => {
    expectPrinted(between(lengthM, n, speedMS), printed, tolerance);
  });

  it.each([
    // A quarter wave, College Physics 2e and University Physics vol. 1 (OpenStax), seen.
    [1.8, 20, 47.6, 0.05],
    [0.026, 37, 3390, 5],
    [0.018, 37, 4900, 5],
    [0.24, 37, 367, 0.5],
    [0.334, 18, 256, 0.5],
  ])('a quarter wave of %f m at %f C: %f Hz', (lengthM, temperatureC, printed, tolerance) => {
    expectPrinted(quarterWaveHz(lengthM, bookSpeedMS(temperatureC)), printed, tolerance);
  });
});

describe('Schroeder frequency', () => {
  it('is about 140 Hz at 1 s in 200 m3', () => {
    // Kuttruff, Room Acoustics, 6th ed. 2016, p. 68, transcribed.
    expectPrinted(schroederHz(1, 200), 140, 5);
  });
});

describe('a furnished office of 4.54 x 2.73 x 2.40 m at 1 kHz', () => {
  // EN 12354-6:2003, annex E, transcribed; 55.3/c0 with c0 = 345.6 m/s; its absorption areas printed.
  const V = 29.75;
  const S = 59.68;

  it('has the constant 0.16', () => {
    expectPrinted(decayFactor(345.6), 0.16, 0.005);
  });

  it.each([
    ['bare, without the air', 2.2633, 0, 2.1],
    ['bare, with the air', 2.2633, 1e-3, 2.0],
    ['with one long wall lined', 10.2094, 0, 0.5],
  ] as const)('%s decays in %f s', (_, absorptionM2, airPerM, printed) => {
    expectPrinted(sabineS(decayOf(0.16, V, S, absorptionM2, airPerM)), printed, 0.05);
  });
});

describe('worked decay times', () => {
  it.each([
    // Everest & Pohlmann, Master Handbook of Acoustics, 4th ed., fig. 7-22, transcribed: feet, 0.049.
    ['Everest 250 Hz', 0.049, 3728, 373 * 0.01 + 1159 * 0.1, 1.53],
    ['Everest 500 Hz', 0.049, 3728, 373 * 0.015 + 1159 * 0.05, 2.87],
    ['Everest 2 kHz', 0.049, 3728, 373 * 0.02 + 1159 * 0.07, 2.06],
    ['Everest 4 kHz', 0.049, 3728, 373 * 0.02 + 1159 * 0.09, 1.63],
    // "Reverberation time problems, solved", a problem sheet without an author, seen: feet, 0.05.
    ['40 x 30 x 20 ft', 0.05, 24000, 5200 * 0.15, 1.54],
    ['70 x 40 x 15 ft with people', 0.05, 42000, 1360, 1.54],
    // The same, in metres: 0.162.
    ['15 x 8 x 3 m', 0.162, 360, 378 * 0.3, 0.51],
  ] as const)('%s by Sabine: %f', (_, constant, volume, absorption, printed) => {
    expectPrinted(sabineS(decayOf(constant, volume, NaN, absorption)), printed, 0.005);
  });

  it('15 x 8 x 3 m at 0.3 by Eyring: 0.43 s', () => {
    // The same sheet, seen: 0.162.
    expectPrinted(eyringS(decayOf(0.162, 360, 378, 378 * 0.3)), 0.43, 0.005);
  });

  it('5000 m3 with 200 m2 by Sabine: 4.025 s', () => {
    // A solved examination question, seen: 0.161.
    expectPrinted(sabineS(decayOf(0.161, 5000, NaN, 200)), 4.025, 0.0005);
  });
});

describe('reflections', () => {
  it('lose 0.97 dB on a coefficient of 0.2', () => {
    // Sound System Design Reference Manual, ch. 5, seen.
    expectPrinted(-reflectionLossDb(0.2), 0.97, 0.005);
  });

  it('are six of the first order in a box', () => {
    // Kuttruff, Room Acoustics, 6th ed. 2016, eq. 9.23, transcribed: (2/3)(2n^3 + 3n^2 + 4n), n = 1.
    const { room } = roomOf({ size: { width: 5, length: 6, height: 2.5 } });
    const found = given(reflectionsBetween(reflectingRoom(room), [1, 1, 1], [3, 4, 1.2], 343));
    expect(found.paths).toHaveLength(6);
  });

  it.each([
    // Inverse square table of an audio-visual trade association's course, seen: 20 ft against these.
    [40, -6, 0.5],
    [60, -9.5, 0.05],
    [80, -12, 0.5],
  ])('over %i ft against a direct 20 ft are at %f dB', (pathFt, printed, tolerance) => {
    // A hard floor far enough below that the way over it is as long as the table asks for.
    const heightFt = Math.sqrt(pathFt ** 2 - 20 ** 2) / 2;
    const { room } = roomOf({ size: { width: 12, length: 12, height: 12 } });
    const foot = 0.25;
    const found = given(
      reflectionsBetween(
        reflectingRoom(room),
        [6, 3, heightFt * foot],
        [6, 3 + 20 * foot, heightFt * foot],
        343,
      ),
    );
    const floor = given(found.paths.find(({ hits }) => hits[0].face === 'floor'));
    expectPrinted(floor.spreadingDb, printed, tolerance);
  });

  it.each([
    // University Physics vol. 1 (OpenStax), ch. 17, seen.
    [6, 2, 6.32],
    [6, 3, 6.71],
  ])('come over (%f, %f) m in %f m', (x, y, printed) => {
    expectPrinted(distanceM([0, 0, 0], [x, y, 0]), printed, 0.005);
  });

  it('that come 1 ms late put the first notch at 500 Hz', () => {
    // Everest & Pohlmann, Master Handbook of Acoustics, ch. 10, seen. 1 ms there and back is c/2000.
    expectPrinted(quarterWaveHz(343 / 2000, 343), 500, 0.5);
  });

  it('from one hard wall take most power where tan(2kd) = 2kd, 1.06 dB', () => {
    // OEIS A115365, seen: the least of sin(x)/x is -0.217233628, at x = 4.493409457909.
    const speedMS = 343;
    const distance = 1;
    const hz = (4.493409457909 * speedMS) / (4 * Math.PI * distance);
    const least = cornerPowerDb([distance], hz, speedMS);
    expect(10 ** (least / 10)).toBeCloseTo(1 - 0.217233628, 9);
    expect(cornerPowerDb([distance], hz * 1.001, speedMS)).toBeGreaterThan(least);
    expect(cornerPowerDb([distance], hz / 1.001, speedMS)).toBeGreaterThan(least);
  });
});

describe('absorption of a plane that reacts at its front only', () => {
  it('is 0.951 at most in a diffuse field', () => {
    // Mechel, Formulas of Acoustics, 2nd ed. 2008, D.5, transcribed: real impedance, Paris' integral.
    let most = 0;
    for (let z = 1; z < 3; z += 0.001) most = Math.max(most, diffuseOfLocal({ re: z, im: 0 }));
    expectPrinted(most, 0.951, 0.0005);
  });
});

describe('speed of sound', () => {
  it.each([
    // University Physics vol. 1 (OpenStax), ch. 17, seen, to the whole metre.
    [20, 343, 0.5],
    // An encyclopedia's entry on the speed of sound, seen.
    [21, 344, 0.5],
  ])('at %f C is %f m/s', (temperatureC, printed, tolerance) => {
    expectPrinted(speedOfSoundMS(temperatureC), printed, tolerance);
  });

  it('grows from 0 to 20 C by 1.03594', () => {
    // J. O. Smith, Physical Audio Signal Processing, seen: 1085.1 and 1124.1 ft/s.
    expectPrinted(speedOfSoundMS(20) / speedOfSoundMS(0), 1.03594, 5e-5);
  });

  it('grows from 22 to 35 C as 344.08 to 351.58', () => {
    // University Physics vol. 1 (OpenStax), ch. 17, seen: 331 m/s at 273 K, so only the ratio is held.
    expectPrinted(speedOfSoundMS(35) / speedOfSoundMS(22), 351.58 / 344.08, 3e-5);
  });
});
