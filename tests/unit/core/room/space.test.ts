import { describe, expect, it } from 'vitest';
import type { Room } from '../../../../core/room/project';
import { freeSpace } from '../../../../core/room/space';
import { roomOf, type Fields } from '../../support/rooms';

type Corner = readonly [number, number, number];

/** A 4 x 5 x 3 m shell with these solids and patches: 60 m3 and 94 m2 where it is bare. */
function room(solids: readonly Fields[] = [], patches: readonly Fields[] = []): Room {
  return roomOf({ solids, patches }).room;
}

const box = (id: string, min: Corner, max: Corner): Fields => ({ id, kind: 'other', min, max });

const patch = (id: string, face: string, rect: readonly number[], finish = 'door-solid') => ({
  id,
  face,
  rect,
  finish,
});

/** Areas by face, finishes taken together, to a hundredth of a square millimetre. */
function areas(of: Room): Record<string, number> {
  const sums: Record<string, number> = {};
  for (const { face, areaM2 } of freeSpace(of).surfaces) sums[face] = (sums[face] ?? 0) + areaM2;
  return Object.fromEntries(
    Object.entries(sums).map(([face, sum]) => [face, Math.round(sum * 1e8) / 1e8]),
  );
}

const areaOf = (of: Room, face: string, finish: string): number =>
  freeSpace(of)
    .surfaces.filter((surface) => surface.face === face && surface.finish === finish)
    .reduce((sum, surface) => sum + surface.areaM2, 0);

const BARE = { left: 15, right: 15, front: 12, back: 12, floor: 20, ceiling: 20 };

describe('a bare shell', () => {
  it('of 4 x 5 x 3 m has 60 m3 and 94 m2', () => {
    const space = freeSpace(room());
    expect(space.volumeM3).toBeCloseTo(60, 9);
    expect(space.surfaceM2).toBeCloseTo(94, 9);
    expect(areas(room())).toEqual(BARE);
  });

  it('carries the finish of each face', () => {
    expect(areaOf(room(), 'floor', 'floor-concrete')).toBeCloseTo(20, 9);
    expect(areaOf(room(), 'ceiling', 'gyp13-stud')).toBeCloseTo(20, 9);
  });
});

describe('a solid', () => {
  const soffit = box('duct', [0, 0, 2.5], [1, 5, 3]);

  it('along a wall takes its volume, and covers what it touches', () => {
    expect(freeSpace(room([soffit])).volumeM3).toBeCloseTo(57.5, 9);
    expect(areas(room([soffit]))).toEqual({
      left: 12.5,
      right: 15,
      front: 11.5,
      back: 11.5,
      floor: 20,
      ceiling: 15,
      'duct:floor': 5,
      'duct:right': 2.5,
    });
  });

  it('has its own finish on its exposed sides', () => {
    const panel = { ...soffit, finish: 'panel-12-frame' };
    expect(areaOf(room([panel]), 'duct:floor', 'panel-12-frame')).toBeCloseTo(5, 9);
  });

  it('that floats in the room shows all six sides', () => {
    const cube = box('cube', [1, 1, 1], [2, 2, 2]);
    const space = freeSpace(room([cube]));
    expect(space.volumeM3).toBeCloseTo(59, 9);
    expect(areas(room([cube]))).toEqual({
      ...BARE,
      'cube:left': 1,
      'cube:right': 1,
      'cube:front': 1,
      'cube:back': 1,
      'cube:floor': 1,
      'cube:ceiling': 1,
    });
  });

  it('that overlaps another is counted once', () => {
    const space = freeSpace(
      room([box('a', [0, 0, 0], [1, 1, 1]), box('b', [0.5, 0, 0], [1.5, 1, 1])]),
    );
    expect(space.volumeM3).toBeCloseTo(58.5, 9);
    // A block of 1.5 x 1 x 1 m in the front left corner shows as much as it covers.
    expect(space.surfaceM2).toBeCloseTo(94, 9);
  });

  it('that stands inside another changes nothing', () => {
    const outer = box('a', [1, 1, 0], [3, 3, 1]);
    const inner = box('b', [1.5, 1.5, 0.2], [2, 2, 0.8]);
    expect(freeSpace(room([outer, inner])).volumeM3).toBeCloseTo(56, 9);
    expect(areas(room([outer, inner]))).toEqual({
      ...BARE,
      floor: 16,
      'a:ceiling': 4,
      'a:left': 2,
      'a:right': 2,
      'a:front': 2,
      'a:back': 2,
    });
  });

  it('that sticks out of the shell counts only inside', () => {
    const corner = room([box('a', [3, 4, -1], [5, 6, 1])]);
    expect(freeSpace(corner).volumeM3).toBeCloseTo(59, 9);
    expect(areas(corner)).toEqual({
      ...BARE,
      right: 14,
      back: 11,
      floor: 19,
      'a:left': 1,
      'a:front': 1,
      'a:ceiling': 1,
    });
  });

  it('that stands outside the shell counts nowhere', () => {
    const outside = room([box('a', [5, 1, 0], [6, 2, 1])]);
    expect(freeSpace(outside).volumeM3).toBeCloseTo(60, 9);
    expect(areas(outside)).toEqual(BARE);
  });

  it('that touches another hides the side between them', () => {
    const bar = room([box('a', [1, 1, 0], [2, 2, 1]), box('b', [2, 1, 0], [3, 2, 1])]);
    const space = freeSpace(bar);
    expect(space.volumeM3).toBeCloseTo(58, 9);
    // Two long sides of 2 m2 and two ends of 1 m2; the top takes the place of the floor.
    expect(space.surfaceM2).toBeCloseTo(100, 9);
    expect(areas(bar)['a:right']).toBeUndefined();
    expect(areas(bar)['b:left']).toBeUndefined();
  });

  it('that reaches the ceiling exactly leaves no slit above it', () => {
    const column = room([box('a', [1, 1, 0], [2, 2, 3])]);
    expect(freeSpace(column).volumeM3).toBeCloseTo(57, 9);
    expect(areas(column)).toEqual({
      ...BARE,
      floor: 19,
      ceiling: 19,
      'a:left': 3,
      'a:right': 3,
      'a:front': 3,
      'a:back': 3,
    });
  });

  it('that fills the shell leaves nothing', () => {
    expect(freeSpace(room([box('a', [0, 0, 0], [4, 5, 3])]))).toEqual({
      volumeM3: 0,
      surfaceM2: 0,
      surfaces: [],
    });
  });
});

describe('a patch', () => {
  it('takes its area from its face', () => {
    const of = room([], [patch('door', 'left', [1, 0, 2, 2])]);
    expect(areaOf(of, 'left', 'door-solid')).toBeCloseTo(2, 9);
    expect(areaOf(of, 'left', 'gyp13-stud')).toBeCloseTo(13, 9);
    expect(freeSpace(of).surfaceM2).toBeCloseTo(94, 9);
  });

  it.each([
    ['left', [4, 0, 5, 1]],
    ['right', [4, 0, 5, 1]],
    ['front', [3, 0, 4, 1]],
    ['back', [3, 0, 4, 1]],
    ['floor', [3, 4, 4, 5]],
    ['ceiling', [3, 4, 4, 5]],
  ])('on the %s is measured along x, y, z in this order', (face, rect) => {
    // Each lies in the far corner of its face; with the axes swapped it would stick out or shrink.
    expect(areaOf(room([], [patch('p', face, rect)]), face, 'door-solid')).toBeCloseTo(1, 9);
  });

  it('counts only where it lies on its face', () => {
    const of = room([], [patch('p', 'left', [4, 2, 6, 9])]);
    expect(areaOf(of, 'left', 'door-solid')).toBeCloseTo(1, 9);
    expect(areaOf(of, 'left', 'gyp13-stud')).toBeCloseTo(14, 9);
  });

  it('that comes later in the list lies on top', () => {
    const of = room(
      [],
      [
        patch('under', 'floor', [0, 0, 2, 2], 'carpet-heavy-pad'),
        patch('over', 'floor', [1, 0, 3, 2], 'platform-wood'),
      ],
    );
    expect(areaOf(of, 'floor', 'carpet-heavy-pad')).toBeCloseTo(2, 9);
    expect(areaOf(of, 'floor', 'platform-wood')).toBeCloseTo(4, 9);
    expect(areaOf(of, 'floor', 'floor-concrete')).toBeCloseTo(14, 9);
  });

  it('may hang on a side of a solid', () => {
    const of = room(
      [box('duct', [0, 0, 2.5], [1, 5, 3])],
      [patch('foam', 'duct:floor', [0, 1, 1, 3])],
    );
    expect(areaOf(of, 'duct:floor', 'door-solid')).toBeCloseTo(2, 9);
    expect(areaOf(of, 'duct:floor', 'gyp13-stud')).toBeCloseTo(3, 9);
  });

  it('has no area where a solid covers it', () => {
    const of = room([box('duct', [0, 0, 2.5], [1, 5, 3])], [patch('half', 'left', [0, 2, 5, 3])]);
    expect(areaOf(of, 'left', 'door-solid')).toBeCloseTo(2.5, 9);
    expect(areaOf(of, 'left', 'gyp13-stud')).toBeCloseTo(10, 9);
  });
});
