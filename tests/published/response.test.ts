import { describe, expect, it } from 'vitest';
import { shellField } from '../../core/response/field';
import { levelDb, pathResponse } from '../../core/response/path';
import { levelSpread } from '../../core/response/level-spread';
import type { Point } from '../../core/room/project';

const SIZE = { width: 6, length: 5, height: 2.4 };
const SPEED_MS = 343;

describe('the response of a 6 x 5 x 2.4 m shell', () => {
  // Modal sum with the damping 2 i d w, decay 0.5 s for all modes, modes to 500 Hz (Kuttruff, Room
  // Acoustics, ch. 3), worked out apart from this program; dB re the free field at 1 m.
  const HZ = [20, 25, 28.5833, 34.3, 50, 57.1667, 70];
  const ROWS: readonly (readonly [Point, Point, readonly number[]])[] = [
    [
      [0, 0, 0],
      [6, 5, 2.4],
      [11.49, 15.29, 19.11, 18.72, 8.09, 13.39, 9.16],
    ],
    [
      [0.5, 0.4, 0.2],
      [4, 2.5, 1.1],
      [7.93, 9.69, 12.0, -2.42, -6.97, 5.32, 10.74],
    ],
    [
      [3, 0, 0],
      [4, 2.5, 1.1],
      [2.91, -0.45, -2.4, -4.97, -13.69, 6.78, 7.31],
    ],
  ];
  const field = shellField(SIZE, SPEED_MS, 500);

  it.each(ROWS)('from %j to %j', (source, receiver, printed) => {
    const path = pathResponse(field, source, receiver, Float64Array.from(HZ), { modesS: 0.5 });
    expect(path).not.toBeNull();
    if (!path) return;
    levelDb(path).forEach((level, n) => {
      expect(Math.abs(level - (printed[n] ?? 0))).toBeLessThan(0.05);
    });
  });

  it('of mode (1,0,0) alone at its resonance, corner to corner, is 18.36 dB', () => {
    // rho c2 2/(2 d V) = 142.40 Pa s/m3 with rho = 1.204, over w rho/(4 pi).
    const single = shellField(SIZE, SPEED_MS, 28.6);
    const hz = Float64Array.of(SPEED_MS / 12);
    const withZero = pathResponse(single, [0, 0, 0], [6, 5, 2.4], hz, { modesS: 0.5, restS: 1e9 });
    const zero = pathResponse(shellField(SIZE, SPEED_MS, 1), [0, 0, 0], [6, 5, 2.4], hz, {
      modesS: 0.5,
      restS: 1e9,
    });
    if (!withZero || !zero) throw new Error('outside');
    const re = (withZero.re[0] ?? 0) - (zero.re[0] ?? 0);
    const im = (withZero.im[0] ?? 0) - (zero.im[0] ?? 0);
    expect(20 * Math.log10(Math.hypot(re, im))).toBeCloseTo(18.36, 2);
  });
});

describe('couplings of four equal subwoofers on the floor', () => {
  // From the cosine shapes (symmetry): mean of psi over the four places, psi = 1 at a corner.
  const NAMES = ['1,0,0', '0,1,0', '1,1,0', '2,0,0', '0,2,0', '2,1,0', '2,2,0', '4,0,0', '0,0,1'];
  const PLACES: readonly (readonly [string, readonly Point[], readonly number[]])[] = [
    [
      'wall mid-points',
      [
        [3, 0, 0],
        [3, 5, 0],
        [0, 2.5, 0],
        [6, 2.5, 0],
      ],
      [0, 0, 0, 0, 0, 0, -1, 1, 1],
    ],
    [
      'corners',
      [
        [0, 0, 0],
        [6, 0, 0],
        [0, 5, 0],
        [6, 5, 0],
      ],
      [0, 0, 0, 1, 1, 0, 1, 1, 1],
    ],
    [
      'quarter points',
      [
        [1.5, 1.25, 0],
        [4.5, 1.25, 0],
        [1.5, 3.75, 0],
        [4.5, 3.75, 0],
      ],
      [0, 0, 0, 0, 0, 0, 0, -1, 1],
    ],
  ];

  it.each(PLACES)('at the %s', (_, places, means) => {
    const field = shellField(SIZE, SPEED_MS, 200);
    NAMES.forEach((name, n) => {
      const mode = field.orders.findIndex((order) => order.join() === name);
      const norm = Math.sqrt(2) ** name.split(',').filter((order) => order !== '0').length;
      const sum = places.reduce((s, place) => s + (field.shapeAt(place)?.[mode] ?? NaN), 0);
      expect(Math.abs(sum / 4 / norm - (means[n] ?? 0))).toBeLessThan(1e-12);
    });
  });

  it('at the middle of the width is nothing for odd orders', () => {
    const field = shellField(SIZE, SPEED_MS, 200);
    const shapes = field.shapeAt([3, 1, 0.5]);
    field.orders.forEach((order, n) => {
      if (order[0] % 2 === 1) expect(Math.abs(shapes?.[n] ?? NaN)).toBeLessThan(1e-12);
    });
  });
});

describe('mean spatial variance', () => {
  it('of 80 and 84 dB, then 80 and 80 dB, is 4 dB2', () => {
    // Welti & Devantier, JAES 54 (2006) 347; divisor N - 1 (from memory). Worked by hand: 8 and 0.
    const spread = levelSpread([Float64Array.of(80, 80), Float64Array.of(84, 80)]);
    expect(spread?.meanSpatialVarianceDb2).toBe(4);
    expect([...(spread?.meanDb ?? [])]).toEqual([82, 80]);
  });
});
