/** Rooms with fittings, sources and receivers to reflect in. */

import fc from 'fast-check';
import type { Point, Room, Solid } from '../../../../core/room/project';
import { isInTheOpen } from '../../../../core/room/space';
import { reflectingRoom, reflectionsBetween } from '../../../../core/reflections/image-sources';
import type { Reflections } from '../../../../core/reflections/image-sources';
import { given, roomOf, type Fields } from '../../support/rooms';

export const SPEED_MS = 343;

/** A 4 x 5 x 3 m shell with these solids. */
export const roomWith = (solids: readonly Fields[] = [], rest: Fields = {}): Room =>
  roomOf({ solids, ...rest }).room;

export const box = (id: string, min: Point, max: Point, kind = 'other'): Fields => ({
  ...{ id, kind, min, max },
  finish: 'gyp13-stud',
});

/** Paths in `room`, which must exist. */
export const pathsIn = (room: Room, source: Point, receiver: Point, order: 1 | 2 = 1) =>
  given(reflectionsBetween(reflectingRoom(room), source, receiver, SPEED_MS, { order }));

export const facesOf = ({ paths }: Reflections): readonly string[] =>
  paths.map((path) => path.hits.map((hit) => hit.face).join(' '));

export interface Scene {
  readonly room: Room;
  readonly source: Point;
  readonly receiver: Point;
}

/** Whole decimetres, so that solids meet, overlap and lie in line with sources often. */
const dm = (most: number): fc.Arbitrary<number> =>
  fc.integer({ min: 0, max: most }).map((n) => n / 10);

const place: fc.Arbitrary<Point> = fc.tuple(dm(40), dm(50), dm(30));

const solid: fc.Arbitrary<Pick<Solid, 'min' | 'max'>> = fc
  .tuple(place, fc.tuple(...[25, 30, 25].map((most) => fc.integer({ min: 1, max: most }))))
  .map(([min, size]) => ({
    min,
    max: [min[0] + (size[0] ?? 1) / 10, min[1] + (size[1] ?? 1) / 10, min[2] + (size[2] ?? 1) / 10],
  }));

/** A 4 x 5 x 3 m room with up to five solids; source and receiver in the open or on faces. */
export const scene: fc.Arbitrary<Scene> = fc
  .record({ solids: fc.array(solid, { maxLength: 5 }), source: place, receiver: place })
  .map(({ solids, source, receiver }): Scene => {
    const kind = 'other';
    const boxes = solids.map((sides, i) => ({ id: `s${i}`, kind, finish: 'gyp13-stud', ...sides }));
    return { room: { ...roomWith(), solids: boxes as Solid[] }, source, receiver };
  })
  .filter(({ room, source, receiver }) => isInTheOpen(source, room) && isInTheOpen(receiver, room));

export function pointAt(from: Point, to: Point, share: number): Point {
  return [
    from[0] + share * (to[0] - from[0]),
    from[1] + share * (to[1] - from[1]),
    from[2] + share * (to[2] - from[2]),
  ];
}

/** True where `at` lies more than a micrometre deep in a solid: a straightforward look, point by point. */
export const isDeepInside = (at: Point, { solids }: Room): boolean =>
  solids.some(({ min, max }) =>
    [0, 1, 2].every((axis) => {
      const [x, low, high] = [at[axis] ?? 0, min[axis] ?? 0, max[axis] ?? 0];
      return x > low + 1e-6 && x < high - 1e-6;
    }),
  );
