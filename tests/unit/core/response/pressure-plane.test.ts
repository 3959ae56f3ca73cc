import { describe, expect, it } from 'vitest';
import { contour } from '../../../../core/response/contour';
import { roomModesField, shellField } from '../../../../core/response/field';
import type { Drive } from '../../../../core/response/drive';
import { levelDb, pathResponse, together } from '../../../../core/response/path';
import { fieldWeights, levelOver } from '../../../../core/response/pressure-plane';
import type { Point } from '../../../../core/room/project';
import { SPEED_MS, sizeOf, solved } from '../room-modes/solve';

const ROOM = sizeOf([3.4, 4.6, 2.4]);
const SOFFIT = { min: [0, 0, 2.1], max: [0.4, 4.6, 2.4] } as const;
const US = Float64Array.of(0.2, 1.1, 2.05, 3.3);
const VS = Float64Array.of(0.3, 2.3, 4.5);
const SOURCES: readonly { readonly at: Point; readonly drive?: Partial<Drive> }[] = [
  { at: [0.3, 0.3, 0.2] },
  { at: [3.1, 0.3, 0.3], drive: { delayMs: 4, levelDb: -3, inverted: true } },
];

describe.each([
  ['the plain shell', shellField(ROOM, SPEED_MS, 200)],
  ['the room as built', roomModesField(solved(ROOM, [SOFFIT]))],
])('a picture of %s', (_, field) => {
  it.each([
    ['floor', 2, 0],
    ['ears', 2, 1.1],
    ['left wall', 0, 0],
    ['back wall', 1, 4.6],
  ] as const)('shows each mode on the %s as it is at every point', (_name, axis, atM) => {
    const [us, vs] = axis === 2 ? [US, VS] : [US, Float64Array.of(0.1, 1, 2)];
    const map = field.planeMap(axis, atM, us, vs);
    for (const mode of [0, 3, 20]) {
      const shape = map.shape(mode);
      us.forEach((u, i) =>
        vs.forEach((v, j) => {
          const at: Point = axis === 0 ? [atM, u, v] : axis === 1 ? [u, atM, v] : [u, v, atM];
          expect(shape[i * vs.length + j]).toBeCloseTo(field.shapeAt(at)?.[mode] ?? NaN, 5);
        }),
      );
    }
  });

  it('shows the level that the sources make together', () => {
    const hz = 63;
    const levels = levelOver(
      field.planeMap(2, 1.1, US, VS),
      fieldWeights(field, SOURCES, hz, { modesS: 0.4 }),
    );
    US.forEach((x, i) =>
      VS.forEach((y, j) => {
        const paths = SOURCES.map(({ at, drive }) => {
          const path = pathResponse(field, at, [x, y, 1.1], Float64Array.of(hz));
          if (!path) throw new Error('outside');
          return { path, ...(drive ? { drive } : {}) };
        });
        const sum = together(paths);
        const level = sum ? (levelDb(sum)[0] ?? NaN) : NaN;
        expect(levels[i * VS.length + j]).toBeCloseTo(level, 3);
      }),
    );
  });
});

describe('a picture outside the free space', () => {
  it('is empty', () => {
    const plane = [Float64Array.of(0.2, 1), Float64Array.of(1)] as const;
    const inSoffit = roomModesField(solved(ROOM, [SOFFIT]))
      .planeMap(2, 2.2, ...plane)
      .shape(0);
    expect(inSoffit[0]).toBeNaN();
    expect(inSoffit[1]).not.toBeNaN();
    const above = shellField(ROOM, SPEED_MS, 100)
      .planeMap(2, 2.5, ...plane)
      .shape(0);
    expect([...above].every(Number.isNaN)).toBe(true);
  });
});

describe('a contour', () => {
  const line = Float64Array.from({ length: 41 }, (_, n) => -1 + n / 20);
  const sampled = (f: (u: number, v: number) => number): Float32Array =>
    Float32Array.from({ length: 41 * 41 }, (_, n) =>
      f(line[Math.floor(n / 41)] ?? 0, line[n % 41] ?? 0),
    );

  it('of the distance from the middle is a circle of its length, closed', () => {
    const found = contour(
      sampled((u, v) => Math.hypot(u, v)),
      line,
      line,
      0.713,
    );
    let length = 0;
    const ends = new Map<string, number>();
    for (const [u0, v0, u1, v1] of found) {
      length += Math.hypot(u1 - u0, v1 - v0);
      expect(Math.hypot(u0, v0)).toBeCloseTo(0.713, 2);
      for (const end of [`${u0.toFixed(6)} ${v0.toFixed(6)}`, `${u1.toFixed(6)} ${v1.toFixed(6)}`])
        ends.set(end, (ends.get(end) ?? 0) + 1);
    }
    expect(length / (2 * Math.PI * 0.713)).toBeCloseTo(1, 2);
    expect([...ends.values()].every((count) => count === 2)).toBe(true);
  });

  it('of a saddle has two branches that do not cross', () => {
    const found = contour(
      sampled((u, v) => u * v - 0.001),
      line,
      line,
      0,
    );
    for (const [u0, v0, u1, v1] of found) {
      // Both ends lie in the same quarter, where u v = 0.001.
      expect(Math.sign(u0 + u1)).toBe(Math.sign(v0 + v1));
    }
  });

  it('stops where there is no value, and is none where the level is never met', () => {
    const half = sampled((u, v) => (u < 0 ? NaN : v));
    const found = contour(half, line, line, 0.01);
    expect(found.length).toBeGreaterThan(0);
    for (const [u0] of found) expect(u0).toBeGreaterThanOrEqual(0);
    expect(contour(half, line, line, 3)).toEqual([]);
  });
});
