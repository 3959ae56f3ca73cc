import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  distanceM,
  reflectingRoom,
  reflectionsBetween,
  type ReflectionPath,
  type Reflections,
} from '../../../../core/reflections/image-sources';
import { mirrored } from '../../../../core/reflections/mirrors';
import { FACE_NORMALS, patchSide } from '../../../../core/room/faces';
import type { Point, Room } from '../../../../core/room/project';
import { given, notFinite, only } from '../../support/rooms';
import { box, facesOf, isDeepInside, pathsIn, pointAt, roomWith, scene, SPEED_MS } from './support';

const SOURCE: Point = [1, 1, 1];
const RECEIVER: Point = [3, 4, 1.2];

/** The corners of a path: source, hits, receiver. */
const corners = (path: ReflectionPath, source: Point, receiver: Point): readonly Point[] => [
  source,
  ...path.hits.map((hit) => hit.point),
  receiver,
];

const legs = (points: readonly Point[]): readonly (readonly [Point, Point])[] =>
  points.slice(1).map((to, i) => [given(points[i]), to] as const);

describe('a plain room', () => {
  it('has one path by each face, and 18 of the second order', () => {
    const first = pathsIn(roomWith(), SOURCE, RECEIVER);
    expect(first.direct).toEqual({ lengthM: Math.hypot(2, 3, 0.2), isVisible: true });
    expect(facesOf(first)).toEqual(['front', 'back', 'left', 'right', 'floor', 'ceiling']);
    // 25 images up to the second order: the source itself, 6 and 18.
    expect(pathsIn(roomWith(), SOURCE, RECEIVER, 2).paths).toHaveLength(24);
  });

  it('tells point, delay, level and direction of the floor’s path', () => {
    const path = given(
      pathsIn(roomWith(), [2, 1, 1], [2, 4, 1]).paths.find(({ hits }) => hits[0].face === 'floor'),
    );
    const lengthM = Math.hypot(3, 2);
    expect(path.hits[0]).toMatchObject({ point: [2, 2.5, 0], patch: null });
    expect(path.lengthM).toBeCloseTo(lengthM, 12);
    expect(path.delayMs).toBeCloseTo(((lengthM - 3) / SPEED_MS) * 1000, 12);
    expect(path.spreadingDb).toBeCloseTo(20 * Math.log10(3 / lengthM), 12);
    expect(path.azimuthDeg).toBeCloseTo(0, 12);
    expect(path.elevationDeg).toBeCloseTo((-Math.atan2(2, 3) * 180) / Math.PI, 12);
    expect(path.departureDeg).toBeCloseTo((Math.atan2(2, 3) * 180) / Math.PI, 10);
  });

  it('finds the patch that lies on top at the very point', () => {
    const patch = (id: string, rect: readonly number[]) => ({
      ...{ id, rect, face: 'floor' },
      finish: 'carpet-heavy-pad',
    });
    const room = roomWith([], {
      patches: [patch('rug', [1, 2, 3, 3]), patch('mat', [1.9, 2.4, 2.1, 2.6])],
    });
    const onFloor = (from: Point, to: Point) =>
      given(pathsIn(room, from, to).paths.find(({ hits }) => hits[0].face === 'floor')).hits[0];
    expect(onFloor([2, 1, 1], [2, 4, 1])).toMatchObject({
      patch: 'mat',
      finish: 'carpet-heavy-pad',
    });
    expect(onFloor([1.5, 1, 1], [1.5, 4, 1]).patch).toBe('rug');
    expect(onFloor([0.5, 1, 1], [0.5, 4, 1])).toMatchObject({
      patch: null,
      finish: room.finishes.floor,
    });
  });
});

describe('fittings', () => {
  it('hide what lies behind them: a soffit across takes the ceiling’s path and gives its own', () => {
    const soffit = box('duct', [0, 2, 2.5], [4, 3, 3], 'soffit');
    const bare = facesOf(pathsIn(roomWith(), [2, 1, 1], [2, 4, 1]));
    const under = facesOf(pathsIn(roomWith([soffit]), [2, 1, 1], [2, 4, 1]));
    expect(bare).toContain('ceiling');
    expect(under).not.toContain('ceiling');
    expect(under).toContain('duct:floor');
  });

  it('hide the direct sound', () => {
    const column = box('post', [1.8, 2, 0], [2.2, 2.4, 3], 'column');
    expect(pathsIn(roomWith([column]), [2, 1, 1], [2, 4, 1]).direct.isVisible).toBe(false);
    expect(pathsIn(roomWith([column]), [1.8, 1, 1], [1.8, 4, 1]).direct.isVisible).toBe(true);
  });

  it('leave no gap where they stand against each other or against the shell', () => {
    const twins = [box('a', [1, 2, 0], [2, 3, 3]), box('b', [2, 2, 0], [3, 3, 3])];
    expect(pathsIn(roomWith(twins), [2, 1, 1], [2, 4, 1]).direct.isVisible).toBe(false);
    const closet = box('closet', [0, 2, 0], [1, 3, 3]);
    expect(pathsIn(roomWith([closet]), [0, 1, 1], [0, 4, 1]).direct.isVisible).toBe(false);
    expect(pathsIn(roomWith([closet]), [1, 1, 1], [1, 4, 1]).direct.isVisible).toBe(true);
  });

  it('that share a plane give one path where they overlap or meet', () => {
    const low = box('a', [0, 0, 2.5], [4, 3, 3]);
    const more = box('b', [0, 2, 2.5], [4, 5, 3]);
    const seen = (solids: Parameters<typeof roomWith>[0]) =>
      facesOf(pathsIn(roomWith(solids), [2, 1, 1], [2, 4, 1])).filter((face) =>
        face.endsWith(':floor'),
      );
    expect(seen([low, more])).toEqual(['a:floor']);
    expect(seen([box('a', [0, 0, 2.5], [4, 2.5, 3]), box('b', [0, 2.5, 2.5], [4, 5, 3])])).toEqual([
      'a:floor',
    ]);
  });
});

describe('odd places', () => {
  it('outside the free space have no paths', () => {
    const reflecting = reflectingRoom(roomWith([box('a', [1, 1, 0], [2, 2, 3])]));
    const between = (source: Point, receiver: Point) =>
      reflectionsBetween(reflecting, source, receiver, SPEED_MS);
    expect(between([-0.01, 1, 1], RECEIVER)).toBeNull();
    expect(between([1.5, 1.5, 1], RECEIVER)).toBeNull();
    expect(between(RECEIVER, [1.5, 1.5, 1])).toBeNull();
    expect(between([1, 1.5, 1], RECEIVER)).not.toBeNull();
  });

  it('on a face: the image falls on the source, at the level of the direct sound', () => {
    const { paths } = pathsIn(roomWith(), [0, 1, 1], RECEIVER);
    const left = given(paths.find(({ hits }) => hits[0].face === 'left'));
    expect(left).toMatchObject({ delayMs: 0, spreadingDb: 0 });
    expect(left.hits[0].point).toEqual([0, 1, 1]);
  });

  it('source at the receiver: every figure stays finite', () => {
    expect(notFinite(pathsIn(roomWith(), SOURCE, SOURCE, 2))).toEqual([]);
    expect(notFinite(pathsIn(roomWith(), [0, 0, 0], [0, 0, 0], 2))).toEqual([]);
  });
});

describe('a way in the plane of a side, but for the dust of binary arithmetic', () => {
  it('has the same paths from either end', () => {
    // 0.3 + 2.3 is not quite 2.6: the top of the solid lies 4e-16 m under source and receiver.
    const room = roomWith([box('a', [0, 0, 0.3], [0.1, 0.1, 0.3 + 2.3])]);
    const [source, receiver]: readonly Point[] = [
      [0.1, 0, 2.6],
      [0.2, 0, 2.6],
    ];
    if (!source || !receiver) throw new Error('No places.');
    const faces = (from: Point, to: Point) =>
      pathsIn(room, from, to, 2)
        .paths.map((path) =>
          path.hits
            .map((hit) => hit.face)
            .sort()
            .join(' '),
        )
        .sort();
    expect(faces(source, receiver)).toEqual(faces(receiver, source));
  });

  it('through a corner is the same path from either end', () => {
    const count = (from: Point, to: Point) => pathsIn(roomWith(), from, to, 2).paths.length;
    expect(count([1.4, 1.4, 0], [0.5, 0.5, 0])).toBe(count([0.5, 0.5, 0], [1.4, 1.4, 0]));
  });
});

describe('in any room, to the second order', () => {
  const all = ({ room, source, receiver }: { room: Room; source: Point; receiver: Point }) =>
    pathsIn(room, source, receiver, 2);

  it('figures are finite, and lengths are those of the legs and of the image', () => {
    fc.assert(
      fc.property(scene, (given) => {
        const found = all(given);
        expect(notFinite(found)).toEqual([]);
        for (const path of found.paths) {
          const points = corners(path, given.source, given.receiver);
          const walkedM = legs(points).reduce((sum, [from, to]) => sum + distanceM(from, to), 0);
          const image = path.hits.reduce<Point>(mirrored, given.source);
          expect(walkedM).toBeCloseTo(path.lengthM, 9);
          expect(distanceM(image, given.receiver)).toBeCloseTo(path.lengthM, 9);
          expect(path.lengthM).toBeGreaterThanOrEqual(found.direct.lengthM - 1e-9);
        }
      }),
      { numRuns: 150 },
    );
  });

  it('angles in and out are equal at each point, and the point lies in the open', () => {
    fc.assert(
      fc.property(scene, (given) => {
        for (const path of all(given).paths) {
          const points = corners(path, given.source, given.receiver);
          path.hits.forEach((hit, i) => {
            const [before, after] = [points[i], points[i + 2]];
            if (!before || !after) throw new Error('A hit without legs.');
            const [inM, outM] = [distanceM(before, hit.point), distanceM(hit.point, after)];
            // The component along the normal turns round; the others go on. A leg of no length has none.
            if (inM < 1e-9 || outM < 1e-9) return;
            for (const axis of [0, 1, 2] as const) {
              const into = (hit.point[axis] - before[axis]) / inM;
              const out = (after[axis] - hit.point[axis]) / outM;
              expect(out).toBeCloseTo(axis === hit.axis ? -into : into, 6);
            }
            expect(FACE_NORMALS[patchSide(hit.face)].axis).toBe(hit.axis);
          });
        }
      }),
      { numRuns: 150 },
    );
  });

  it('no leg passes through a solid, looked at point by point', () => {
    fc.assert(
      fc.property(scene, (given) => {
        const samples = Array.from({ length: 301 }, (_, i) => i / 300);
        const found = all(given);
        const lines = [
          ...(found.direct.isVisible ? [[given.source, given.receiver] as const] : []),
          ...found.paths.flatMap((path) => legs(corners(path, given.source, given.receiver))),
        ];
        for (const [from, to] of lines)
          expect(samples.some((share) => isDeepInside(pointAt(from, to, share), given.room))).toBe(
            false,
          );
      }),
      { numRuns: 60 },
    );
  });

  it('a shell face is missing only where a solid stands in its path', () => {
    fc.assert(
      fc.property(scene, (given) => {
        const bare = pathsIn({ ...given.room, solids: [] }, given.source, given.receiver);
        const found = facesOf(pathsIn(given.room, given.source, given.receiver));
        for (const path of bare.paths) {
          if (found.includes(path.hits[0].face)) continue;
          const [first, second] = legs(corners(path, given.source, given.receiver));
          // Seen from just beside the way, so that what runs along a side meets the solid too.
          const meets = [first, second].some(
            (leg) => leg && isNearSolid(given.room, leg[0], leg[1]),
          );
          expect(meets).toBe(true);
        }
      }),
      { numRuns: 100 },
    );
  });

  it('source and receiver change places: the same points and lengths', () => {
    const isSame = (one: ReflectionPath, other: ReflectionPath): boolean =>
      one.hits.length === other.hits.length &&
      Math.abs(one.lengthM - other.lengthM) < 1e-9 &&
      one.hits.every((hit, i) => {
        const there = other.hits[other.hits.length - 1 - i];
        return there !== undefined && distanceM(hit.point, there.point) < 1e-7;
      });
    fc.assert(
      fc.property(scene, (given) => {
        const back = { ...given, source: given.receiver, receiver: given.source };
        const [there, here] = [all(back), all(given)];
        expect(there.direct).toEqual(here.direct);
        expect(there.paths).toHaveLength(here.paths.length);
        for (const path of here.paths)
          expect(there.paths.filter((other) => isSame(path, other)).length).toBeGreaterThan(0);
      }),
      { numRuns: 150 },
    );
  });

  it('a mirrored room has mirrored paths: left and right change places', () => {
    const flip = (at: Point): Point => [Math.round((4 - at[0]) * 1e9) / 1e9, at[1], at[2]];
    const swap = (face: string): string =>
      face.replace(/left|right/, (side) => (side === 'left' ? 'right' : 'left'));
    fc.assert(
      fc.property(scene, (given) => {
        const solids = given.room.solids.map((solid) => {
          const [a, b] = [flip(solid.min), flip(solid.max)];
          return {
            ...solid,
            min: [b[0], a[1], a[2]] as const,
            max: [a[0], b[1], b[2]] as const,
          };
        });
        const other = pathsIn(
          { ...given.room, solids },
          flip(given.source),
          flip(given.receiver),
          1,
        );
        const same = pathsIn(given.room, given.source, given.receiver, 1);
        const told = ({ paths }: Reflections, name: (face: string) => string) =>
          paths.map((path) => `${name(path.hits[0].face)} ${path.lengthM.toFixed(6)}`).sort();
        expect(told(other, swap)).toEqual(told(same, (face) => face));
      }),
      { numRuns: 150 },
    );
  });

  it('a source very near a face has its image as near', () => {
    const near = only(
      pathsIn(roomWith(), [1e-12, 1, 1], RECEIVER).paths.filter(
        ({ hits }) => hits[0].face === 'left',
      ),
    );
    expect(near.delayMs).toBeLessThan(1e-6);
    expect(near.spreadingDb).toBeCloseTo(0, 9);
  });
});

/** True where a point of the way, or one beside it, lies in or at a solid. */
function isNearSolid({ solids }: Room, from: Point, to: Point): boolean {
  for (let i = 0; i <= 2000; i++) {
    const at = pointAt(from, to, i / 2000);
    const touches = solids.some(({ min, max }) =>
      [0, 1, 2].every((axis) => {
        const [x, low, high] = [at[axis] ?? 0, min[axis] ?? 0, max[axis] ?? 0];
        return x > low - 0.005 && x < high + 0.005;
      }),
    );
    if (touches) return true;
  }
  return false;
}
