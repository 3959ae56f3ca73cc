import { describe, expect, it } from 'vitest';
import {
  boundaryCurve,
  faceNotches,
  notchDepthDb,
  quarterWaveHz,
  type BoundaryInput,
} from '../../core/reflections/boundary';
import { cornerPowerDb } from '../../core/reflections/corner-power';
import { finishLookup } from '../../core/room/finishes';
import { reflectionLossDb } from '../../core/reflections/reflection-level';
import { reflectingRoom, reflectionsBetween } from '../../core/reflections/image-sources';
import type { Point } from '../../core/room/project';
import { given, roomOf } from '../unit/support/rooms';

const SPEED_MS = 343;

describe('first-order images of a rectangular room', () => {
  // A shell of 6 x 5 x 2.4 m; images worked out by hand: 2w - x for a wall at x = w (textbook; Allen and
  // Berkley 1979, from memory).
  const { room } = roomOf({ size: { width: 6, length: 5, height: 2.4 } });
  const source: Point = [0.8, 1.2, 1.1];
  const listener: Point = [3.8, 2.5, 1.1];
  const found = given(reflectionsBetween(reflectingRoom(room), source, listener, SPEED_MS));

  it('the direct sound goes 3.2696 m', () => {
    expect(found.direct.lengthM).toBeCloseTo(3.2696, 4);
  });

  it.each([
    ['left', 4.7802, 4.404, -3.3],
    ['right', 7.5133, 12.372, -7.23],
    ['front', 4.7634, 4.355, -3.27],
    ['back', 6.9778, 10.811, -6.58],
    ['floor', 3.9408, 1.957, -1.62],
    ['ceiling', 4.1773, 2.647, -2.13],
  ])('%s: %f m, %f ms, %f dB off a hard wall', (face, lengthM, delayMs, levelDb) => {
    const path = given(found.paths.find(({ hits }) => hits[0].face === face));
    expect(path.lengthM).toBeCloseTo(lengthM, 4);
    expect(path.delayMs).toBeCloseTo(delayMs, 2);
    expect(path.spreadingDb).toBeCloseTo(levelDb, 2);
  });

  it('has 25 sources to the second order, the true one among them', () => {
    // (2N + 1)(2N^2 + 2N + 3)/3 lattice points: 25 for N = 2 (from memory, counted by hand).
    const second = given(
      reflectionsBetween(reflectingRoom(room), source, listener, SPEED_MS, { order: 2 }),
    );
    expect(second.paths.length + 1).toBe(25);
  });
});

describe('what a face returns', () => {
  it.each([
    [0, 0],
    [0.5, -3.01],
    [0.9, -10],
    [0.545, -3.42],
  ])('coefficient %f: %f dB (10 lg(1 - coefficient))', (coefficient, lossDb) => {
    expect(reflectionLossDb(coefficient)).toBeCloseTo(lossDb, 2);
  });

  it('is held at -20 dB where a table gives 1 or more', () => {
    expect(reflectionLossDb(1)).toBe(-20);
    expect(reflectionLossDb(1.2)).toBe(-20);
  });
});

describe('sound takes its time', () => {
  it('2.915 ms a metre at 343 m/s', () => {
    const { room } = roomOf();
    // Half a metre before the front wall: its path is 1 m longer than the direct one.
    const found = given(reflectionsBetween(reflectingRoom(room), [2, 0.5, 1], [2, 3, 1], SPEED_MS));
    const front = given(found.paths.find(({ hits }) => hits[0].face === 'front'));
    expect(front.delayMs).toBeCloseTo(2.915, 3);
  });
});

describe('boundary interference', () => {
  it.each([
    [0.5, 171.5],
    [0.6, 142.92],
    [0.8, 107.19],
    [1, 85.75],
    [1.2, 71.46],
    [1.5, 57.17],
    [2, 42.88],
  ])('a wall %f m behind a loudspeaker: first notch at %f Hz (c / 4d, textbook)', (d, hz) => {
    expect(quarterWaveHz(d, SPEED_MS)).toBeCloseTo(hz, 1);
  });

  it.each([
    [0.7079, -10.69],
    [0.5012, -6.04],
    [0.3162, -3.3],
  ])('a reflection of %f of the pressure: a dip of %f dB (20 lg(1 - g), textbook)', (g, dipDb) => {
    expect(notchDepthDb(g)).toBeCloseTo(dipDb, 1);
  });

  it.each([
    ['left', 113.53],
    ['right', 40.41],
    ['front', 114.8],
    ['back', 46.25],
    ['floor', 255.49],
    ['ceiling', 188.93],
  ])('the worked room of 6 x 5 x 2.4 m: %s, first notch %f Hz', (face, hz) => {
    const project = roomOf({ size: { width: 6, length: 5, height: 2.4 } });
    const notches = given(
      faceNotches({
        ...{ reflecting: reflectingRoom(project.room), finish: finishLookup(project) },
        ...{ source: [0.8, 1.2, 1.1], receiver: [3.8, 2.5, 1.1], speedMS: SPEED_MS },
      }),
    );
    const notch = given(notches.find(({ hit }) => hit.face === face));
    expect(Math.abs(given(notch.notchHz) / hz - 1)).toBeLessThan(1e-3);
  });

  it('a comb of 1 ms: dips at 500, 1500 and 2500 Hz, peaks at 1000 and 2000 Hz ((2k + 1) / 2t, k / t)', () => {
    const absorption = { '125': 0 };
    const hard = { id: 'hard', name: 'Hard', absorption, source: 'invented' };
    const project = roomOf({ finishes: { front: 'hard' } }, { finishesCustom: [hard] });
    const input: BoundaryInput = {
      ...{ reflecting: reflectingRoom(project.room), finish: finishLookup(project) },
      ...{ source: [2, 0.1715, 1.5], receiver: [2, 0.6715, 1.5], speedMS: SPEED_MS },
    };
    const options = { only: ['front'], fromHz: 250, toHz: 2800, stepsPerOctave: 200 };
    const { frequenciesHz, levelsDb } = given(boundaryCurve(input, options));
    const turns = (sign: 1 | -1): readonly number[] =>
      frequenciesHz.filter((_, i) => {
        const level = (at: number): number => sign * (levelsDb[at] ?? -Infinity * sign);
        return (
          i > 0 && i < levelsDb.length - 1 && level(i) > level(i - 1) && level(i) > level(i + 1)
        );
      });
    // The path is 0.343 m longer: 1 ms.
    const near = (found: readonly number[], wanted: readonly number[]): void => {
      expect(found).toHaveLength(wanted.length);
      found.forEach((hz, i) => expect(Math.abs(hz / given(wanted[i]) - 1)).toBeLessThan(0.01));
    };
    near(turns(-1), [500, 1500, 2500]);
    near(turns(1), [1000, 2000]);
  });
});

describe('power beside hard faces', () => {
  it.each([
    [[0.01], 3.01],
    [[0.01, 0.01], 6.02],
    [[0.01, 0.01, 0.01], 9.03],
  ])(
    '%j m away: %f dB at low frequencies (Waterhouse 1955; limits by count of images)',
    (d, db) => {
      expect(cornerPowerDb(d, 20, SPEED_MS)).toBeCloseTo(db, 2);
    },
  );

  it('one wall: 1 + sin(2kd) / 2kd, 0 dB where 2kd is pi', () => {
    expect(cornerPowerDb([1], 343 / 4, SPEED_MS)).toBeCloseTo(0, 9);
    // 2kd = 3 pi / 2: 1 - 2 / (3 pi).
    const power = 1 - 2 / (3 * Math.PI);
    expect(cornerPowerDb([1], (3 * 343) / 8, SPEED_MS)).toBeCloseTo(10 * Math.log10(power), 9);
  });

  it('far from all faces: the free field', () => {
    expect(cornerPowerDb([1e4, 1e4, 1e4], 100, SPEED_MS)).toBeCloseTo(0, 2);
  });
});
