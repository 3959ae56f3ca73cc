import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fittingsRefusal, partsOfSpace } from '../../../../core/room/connected';
import { applyEdit } from '../../../../core/room/edits';
import { fittingFrom, fittingPresets, LEAST_EXTENT_M } from '../../../../core/room/fitting-presets';
import { movedSolid, stretchedSolid } from '../../../../core/room/move-solid';
import { openRoom, saveRoom } from '../../../../core/room/open-room';
import type { Point, Solid } from '../../../../core/room/project';
import { restOnPlane } from '../../../../core/room/rest-on-planes';
import { freeSpace } from '../../../../core/room/space';
import { given, only, roomOf } from '../../support/rooms';

const box = (id: string, min: Point, max: Point): Solid => ({
  id,
  kind: 'other',
  min,
  max,
  finish: 'gyp13-stud',
});
const roomWith = (...solids: readonly Solid[]) => roomOf({ solids }).room;

describe('a free space', () => {
  it('is one part without fittings, and with a soffit', () => {
    expect(partsOfSpace(roomWith())).toBe(1);
    expect(partsOfSpace(roomWith(box('s', [0, 0, 2.7], [0.6, 5, 3])))).toBe(1);
  });

  it('is two parts behind a wall from side to side, one where the wall leaves a gap', () => {
    expect(partsOfSpace(roomWith(box('w', [0, 2, 0], [4, 2.1, 3])))).toBe(2);
    expect(partsOfSpace(roomWith(box('w', [0, 2, 0], [3.9, 2.1, 3])))).toBe(1);
  });

  it('does not hang together by an edge', () => {
    const room = roomWith(box('a', [0, 0, 0], [2, 2.5, 3]), box('b', [2, 2.5, 0], [4, 5, 3]));
    expect(partsOfSpace(room)).toBe(2);
  });

  it('is refused in words where nothing is left, or where it is cut in two', () => {
    expect(fittingsRefusal(roomWith(box('f', [0, 0, 0], [4, 5, 3])))).toMatch(
      /fill the whole room/,
    );
    expect(fittingsRefusal(roomWith(box('w', [0, 2, 0], [4, 2.1, 3])))).toMatch(/in two/);
    expect(fittingsRefusal(roomWith())).toBeNull();
  });
});

describe('a ready fitting', () => {
  it.each(
    (['metric', 'imperial'] as const).flatMap((units) =>
      fittingPresets(units).map((preset) => [preset.title, units, preset] as const),
    ),
  )(
    '%s in %s figures lies in the shell, leaves a room, and opens again from its file',
    (_, _units, preset) => {
      const project = roomOf();
      const solid = fittingFrom(preset, project);
      const next = applyEdit(project, { kind: 'solids', solids: [solid], what: 'add' });
      expect(fittingsRefusal(next.room)).toBeNull();
      const whole = freeSpace(project.room).volumeM3;
      const taken = solid.max.reduce(
        (product, high, axis) => product * (high - given(solid.min[axis])),
        1,
      );
      expect(freeSpace(next.room).volumeM3).toBeCloseTo(whole - taken, 9);
      expect(openRoom(saveRoom(next))).toEqual({ ok: true, project: next });
    },
  );

  it('gets an id of its own each time', () => {
    const project = roomOf();
    const closet = given(fittingPresets('metric').find(({ kind }) => kind === 'closet'));
    const first = fittingFrom(closet, project);
    const next = applyEdit(project, { kind: 'solids', solids: [first], what: 'add' });
    expect([first.id, fittingFrom(closet, next).id]).toEqual(['closet-1', 'closet-2']);
  });
});

describe('a plane that is dragged', () => {
  const room = roomWith(box('s', [1, 1, 0], [2, 2, 1]));

  it('comes to rest on a wall or on another fitting within 4 cm, else on the step', () => {
    expect(restOnPlane(0.03, 0, room, 'me', 0.005)).toBe(0);
    expect(restOnPlane(3.97, 0, room, 'me', 0.005)).toBe(4);
    expect(restOnPlane(1.98, 0, room, 'me', 0.005)).toBe(2);
    expect(restOnPlane(1.5031, 0, room, 'me', 0.005)).toBe(1.505);
    expect(restOnPlane(-7, 0, room, 'me', 0.005)).toBe(0);
  });

  it('does not stick to itself', () => {
    expect(restOnPlane(1.98, 0, room, 's', 0.005)).toBe(1.98);
  });
});

describe('a fitting that is moved or stretched', () => {
  it('keeps its size when it is moved, wherever it is dragged, and stays in the shell', () => {
    const metre = fc.double({ min: -9, max: 9, noNaN: true });
    fc.assert(
      fc.property(metre, metre, metre, (x, y, z) => {
        const solid = box('s', [1, 1, 0.5], [1.7, 2.2, 1.1]);
        const moved = movedSolid(solid, [x, y, z], roomWith(solid), 0.005);
        for (const axis of [0, 1, 2] as const) {
          expect(moved.max[axis] - moved.min[axis]).toBeCloseTo(
            solid.max[axis] - solid.min[axis],
            4,
          );
          expect(moved.min[axis]).toBeGreaterThanOrEqual(0);
          expect(moved.max[axis]).toBeLessThanOrEqual([4, 5, 3][axis] ?? 0);
        }
      }),
    );
  });

  it('never loses its body when a face is pulled through the other', () => {
    const solid = box('s', [1, 1, 0], [2, 2, 1]);
    const room = roomWith(solid);
    expect(stretchedSolid(solid, 0, 1, -3, room, 0.005).max[0]).toBeCloseTo(1 + LEAST_EXTENT_M, 9);
    expect(stretchedSolid(solid, 0, -1, 9, room, 0.005).min[0]).toBeCloseTo(2 - LEAST_EXTENT_M, 9);
    expect(stretchedSolid(solid, 2, 1, 2.99, room, 0.005).max[2]).toBe(3);
  });
});

describe('a fitting that is removed', () => {
  it('takes the patches on it along, and leaves those on the shell', () => {
    const patch = (id: string, face: string) => ({
      id,
      face,
      rect: [1, 0, 2, 1],
      finish: 'door-solid',
    });
    const project = roomOf({
      solids: [box('s', [1, 1, 0], [2, 2, 1])],
      patches: [patch('a', 's:front'), patch('b', 'front')],
    });
    const next = applyEdit(project, { kind: 'solids', solids: [], what: 'remove s' });
    expect(only(next.room.patches).id).toBe('b');
    expect(openRoom(saveRoom(next)).ok).toBe(true);
  });
});
