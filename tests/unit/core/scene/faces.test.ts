import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { faceIdOf, faceText, oppositeOf, roleOf, solidOfFace } from '../../../../core/room/faces';
import { faceOf, type BuiltFace } from '../../../../core/room/built-face';
import { FACES, type Room } from '../../../../core/room/project';
import { freeSpace, isInTheOpen } from '../../../../core/room/space';
import { facesOf } from '../../../../core/scene/faces';
import { arbitraryProject } from '../../support/arbitrary-project';
import { given, roomOf } from '../../support/rooms';

describe('the name of a face', () => {
  it('is printed and read back', () => {
    for (const side of FACES)
      for (const solid of [null, 'duct', '-', 'a.b+c'])
        expect(faceIdOf(faceText({ solid, side }))).toEqual({ solid, side });
    expect(faceText({ solid: null, side: 'left' })).toBe('left');
    expect(faceText({ solid: 'duct', side: 'left' })).toBe('duct:left');
    for (const none of ['', 'top', 'duct:', ':left', 'duct:top', 'left:duct', 'Left'])
      expect(faceIdOf(none)).toBeNull();
    expect(solidOfFace('left')).toBeNull();
    expect(solidOfFace('duct:left')).toBe('duct');
  });

  it('says what it is to who stands in the room', () => {
    expect(['floor', 'ceiling', 'back'].map(roleOf)).toEqual(['floor', 'ceiling', 'wall']);
    expect(['r:ceiling', 'r:floor', 'r:back'].map(roleOf)).toEqual(['floor', 'ceiling', 'wall']);
    expect(FACES.map(oppositeOf)).toEqual(['back', 'front', 'right', 'left', 'ceiling', 'floor']);
  });
});

describe('one face', () => {
  const { room } = roomOf({
    solids: [{ id: 'duct', kind: 'soffit', min: [0, 1, 2.5], max: [0.6, 6, 3] }],
  });

  it('has a plane, an extent and a side that the room is on', () => {
    const plane = (name: string) => {
      const { axis, at, inward, rect } = given(faceOf(room, name));
      return { axis, at, inward, rect };
    };
    expect(plane('right')).toEqual({ axis: 0, at: 4, inward: -1, rect: [0, 0, 5, 3] });
    expect(plane('floor')).toEqual({ axis: 2, at: 0, inward: 1, rect: [0, 0, 4, 5] });
    expect(plane('duct:right')).toEqual({ axis: 0, at: 0.6, inward: 1, rect: [1, 2.5, 6, 3] });
    expect(faceOf(room, 'gone:left')).toBeNull();
    expect(faceOf(room, 'nowhere')).toBeNull();
  });

  it('is among those of the room only where it lies within the shell, and is cut to it', () => {
    const names = facesOf(room).map(({ name }) => name);
    expect(names).toEqual([...FACES, 'duct:front', 'duct:right', 'duct:floor']);
    expect(given(facesOf(room).find(({ name }) => name === 'duct:right')).rect).toEqual([
      1, 2.5, 5, 3,
    ]);
  });
});

/** Area of what of the face lies open: cut along every plane of the room, and each part looked at. */
function openAreaM2(room: Room, face: BuiltFace, all: readonly BuiltFace[]): number {
  const cuts = (axis: 0 | 1 | 2, low: number, high: number): readonly number[] =>
    [...new Set([low, high, ...room.solids.flatMap(({ min, max }) => [min[axis], max[axis]])])]
      .filter((at) => at >= low && at <= high)
      .sort((a, b) => a - b);
  const { axis, u, v, at, inward, rect } = face;
  const [us, vs] = [cuts(u, rect[0], rect[2]), cuts(v, rect[1], rect[3])];
  const earlier = all.slice(0, all.indexOf(face));
  let area = 0;
  for (let i = 1; i < us.length; i++)
    for (let j = 1; j < vs.length; j++) {
      const [u0, u1, v0, v1] = [us[i - 1] ?? 0, us[i] ?? 0, vs[j - 1] ?? 0, vs[j] ?? 0];
      const before: [number, number, number] = [0, 0, 0];
      before[axis] = at + inward * 1e-6;
      before[u] = (u0 + u1) / 2;
      before[v] = (v0 + v1) / 2;
      // Where solids overlap in one plane, the first of the list owns the place.
      const owned = earlier.some(
        (other) =>
          other.axis === axis &&
          other.inward === inward &&
          other.at === at &&
          (before[u] ?? 0) > other.rect[0] &&
          (before[u] ?? 0) < other.rect[2] &&
          (before[v] ?? 0) > other.rect[1] &&
          (before[v] ?? 0) < other.rect[3],
      );
      const covered = !isInTheOpen(before, room) || owned;
      const behind: [number, number, number] = [...before];
      behind[axis] = at - inward * 1e-6;
      const inOther = face.solid
        ? room.solids
            .slice(0, room.solids.indexOf(face.solid))
            .some(({ min, max }) => behind.every((p, n) => p > (min[n] ?? 0) && p < (max[n] ?? 0)))
        : false;
      if (!covered && !inOther) area += (u1 - u0) * (v1 - v0);
    }
  return area;
}

describe('the faces of a room', () => {
  it('cover exactly the surface of its free space, face by face', () => {
    fc.assert(
      fc.property(arbitraryProject, ({ room }) => {
        const faces = facesOf(room);
        expect(new Set(faces.map(({ name }) => name)).size).toBe(faces.length);
        const space = freeSpace(room);
        let sum = 0;
        for (const face of faces) {
          const area = space.surfaces
            .filter((surface) => surface.face === face.name)
            .reduce((all, { areaM2 }) => all + areaM2, 0);
          expect(openAreaM2(room, face, faces)).toBeCloseTo(area, 6);
          sum += area;
        }
        expect(sum).toBeCloseTo(space.surfaceM2, 6);
      }),
      { numRuns: 100 },
    );
  });
});
