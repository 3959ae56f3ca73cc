import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { gainAt } from '../../../../core/picture/brightness';
import { meetsLight } from '../../../../core/picture/light-cone';
import { lensZone, projectorResult } from '../../../../core/picture/throw';
import { equalAngleCircle, topAngleDeg, viewingAngleDeg } from '../../../../core/picture/viewing';
import type { Point } from '../../../../core/room/project';
import { roomOf } from '../../support/rooms';

const picture = { leftX: 1, rightX: 3.4, bottomZ: 0.6, topZ: 1.95 };
const m = (min: number, max: number) => fc.integer({ min, max }).map((n) => n / 100);

describe('the viewing angle', () => {
  it('is that of the two edges, by the law of cosines', () => {
    fc.assert(
      fc.property(m(-100, 600), m(20, 900), (x, y) => {
        const [a, b] = [Math.hypot(x - 1, y), Math.hypot(x - 3.4, y)];
        const cosine = (a * a + b * b - 2.4 ** 2) / (2 * a * b);
        const angle = viewingAngleDeg([x, y, 1.2], picture);
        expect(Math.cos((angle * Math.PI) / 180)).toBeCloseTo(cosine, 9);
      }),
    );
  });

  it('is alike all along its circle', () => {
    fc.assert(
      fc.property(m(1500, 12000), m(5, 300), (angleDeg, turn) => {
        const { centre, radiusM } = equalAngleCircle(picture, angleDeg);
        const at = [centre[0] + radiusM * Math.cos(turn), centre[1] + radiusM * Math.sin(turn)];
        const [x = 0, y = 0] = at;
        fc.pre(y > 0.01);
        expect(viewingAngleDeg([x, y, 1], picture)).toBeCloseTo(angleDeg, 6);
      }),
    );
  });

  it('up to the top is 45 degrees where it is as high as it is far', () => {
    expect(topAngleDeg([2.2, 0.75, 1.2], picture)).toBeCloseTo(45, 9);
  });
});

describe('the light', () => {
  const point = fc.tuple(m(0, 440), m(0, 600), m(0, 260));

  it('meets a box just where a point of the box lies between lens and picture', () => {
    fc.assert(
      fc.property(point, point, fc.tuple(m(0, 440), m(250, 600), m(0, 260)), (a, b, lens) => {
        const min = a.map((at, n) => Math.min(at, b[n] ?? at)) as unknown as Point;
        const max = a.map((at, n) => Math.max(at, b[n] ?? at)) as unknown as Point;
        const inLight = ([x, y, z]: Point): boolean => {
          if (y < 0 || y > lens[1]) return false;
          const share = lens[1] / (lens[1] - y);
          const at = [lens[0] + (x - lens[0]) * share, lens[2] + (z - lens[2]) * share] as const;
          return at[0] > 1 && at[0] < 3.4 && at[1] > 0.6 && at[1] < 1.95;
        };
        const steps = Array.from({ length: 13 }, (_, n) => (n + 0.5) / 13);
        const isHit = steps.some((u) =>
          steps.some((v) =>
            steps.some((w) =>
              inLight([
                min[0] + u * (max[0] - min[0]),
                min[1] + v * (max[1] - min[1]),
                min[2] + w * (max[2] - min[2]),
              ]),
            ),
          ),
        );
        const meets = meetsLight(lens, picture, { min, max });
        // Points inside both prove that they meet; the other way round a thin overlap can be missed.
        if (isHit) expect(meets).toBe(true);
        if (meets) {
          const wide = (corner: Point, by: number): Point => [
            corner[0] + by,
            corner[1] + by,
            corner[2] + by,
          ];
          expect(meetsLight(lens, picture, { min: wide(min, -0.1), max: wide(max, 0.1) })).toBe(
            true,
          );
        }
      }),
      { numRuns: 200 },
    );
  });

  it.each([
    ['a head in the light', [2, 2.4, 0.9], [2.3, 2.6, 1.5], true],
    ['a head below it', [2, 4.4, 0.9], [2.3, 4.6, 1.3], false],
    ['a soffit at the side', [0, 0, 2.2], [0.6, 6, 2.6], false],
    ['a beam that hangs before the lens', [0, 4, 2.1], [4.4, 4.2, 2.6], true],
    ['a box that only touches the picture', [1, -0.5, 0.6], [3.4, 0, 1.95], false],
  ] as const)('%s', (_, min, max, meets) => {
    expect(meetsLight([2.2, 5, 2.3], picture, { min, max })).toBe(meets);
  });
});

describe('the projector', () => {
  const projector = {
    position: [2.2, 3.9, 2.2],
    throwRatio: [1.3, 1.9],
    verticalOffsetPercent: [0, 70],
    horizontalOffsetPercent: [-20, 20],
    lumens: 2000,
  };
  const home = (change: object = {}) =>
    roomOf(
      { size: { width: 4.4, length: 6, height: 2.6 } },
      {
        screen: { widthM: 2.4, aspect: [16, 9], bottomM: 0.6, gain: 1.2 },
        projector: { ...projector, ...change },
      },
    );

  it('is judged by throw and offsets of the whole picture', () => {
    const result = projectorResult(home());
    expect(result?.throwM).toBe(3.9);
    expect(result?.throwRatio).toBeCloseTo(1.625, 9);
    // The middle of the picture is at 1.275 m, its height 1.35 m.
    expect(result?.verticalOffsetPercent).toBeCloseTo(100 * (0.925 / 1.35), 9);
    expect(result?.horizontalOffsetPercent).toBeCloseTo(0, 9);
    expect(result?.luminanceCdM2).toBeCloseTo((2000 * 1.2) / (Math.PI * 2.4 * 1.35), 9);
    expect(result?.inRange).toBe(true);
  });

  it.each([
    ['too near', { position: [2.2, 3, 2.2] }],
    ['too high', { position: [2.2, 3.9, 2.3] }],
    ['too far to the side', { position: [2.8, 3.9, 2.2] }],
  ])('is out of range %s', (_, change) => {
    expect(projectorResult(home(change))?.inRange).toBe(false);
  });

  it('is in range just where its lens is in the zone', () => {
    const zone = lensZone(
      {
        throwRatio: [1.3, 1.9],
        verticalOffsetPercent: [0, 70],
        horizontalOffsetPercent: [-20, 20],
        lumens: 1,
      },
      picture,
    );
    fc.assert(
      fc.property(fc.tuple(m(0, 440), m(200, 600), m(0, 260)), (position) => {
        const isIn = position.every(
          (at, n) => at >= (zone.min[n] ?? 0) - 1e-9 && at <= (zone.max[n] ?? 0) + 1e-9,
        );
        expect(projectorResult(home({ position }))?.inRange).toBe(isIn);
      }),
    );
  });
});

describe('the gain off the axis', () => {
  it('is the stated one straight on and half at the half-gain angle', () => {
    expect(gainAt(1.3, 0, 35)).toBeCloseTo(1.3, 9);
    expect(gainAt(1.3, 35, 35)).toBeCloseTo(0.65, 9);
    expect(gainAt(1.3, 60, null)).toBe(1.3);
    expect(gainAt(1.3, 20, 35)).toBeGreaterThan(gainAt(1.3, 30, 35));
  });
});
