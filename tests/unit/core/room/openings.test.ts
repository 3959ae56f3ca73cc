import { faceOf } from '../../../../core/room/built-face';
import { describe, expect, it } from 'vitest';
import { hingeOf, leafOf, sweepBefore } from '../../../../core/room/openings';
import type { Patch } from '../../../../core/room/project';
import { outsideShellM } from '../../../../core/room/space';
import { given, roomOf } from '../../support/rooms';

const { room } = roomOf({
  solids: [{ id: 'closet', kind: 'closet', min: [3, 4, 0], max: [4, 5, 3] }],
});

describe('the leaf of a door', () => {
  it.each([
    ['left', [1, 0, 1.8, 2], [0, 1, 0], [0.8, 1.8, 2]],
    ['back', [1, 0, 1.8, 2], [1, 4.2, 0], [1.8, 5, 2]],
    ['closet:left', [4.1, 0, 4.9, 2], [2.2, 4.1, 0], [3, 4.9, 2]],
  ] as const)('in %s sweeps into the room', (face, rect, min, max) => {
    const sweep = given(sweepBefore(given(faceOf(room, face)), rect));
    for (const axis of [0, 1, 2] as const) {
      expect(sweep.min[axis]).toBeCloseTo(min[axis], 12);
      expect(sweep.max[axis]).toBeCloseTo(max[axis], 12);
    }
  });

  it('of a hatch in the ceiling sweeps over nothing', () => {
    expect(sweepBefore(given(faceOf(room, 'ceiling')), [1, 1, 2, 2])).toBeNull();
  });

  it('has no place on a solid that is not there', () => {
    expect(faceOf(room, 'gone:left')).toBeNull();
  });
});

describe('a door', () => {
  const door = (face: string, rect: Patch['rect'], more: Partial<Patch> = {}): Patch => ({
    id: 'door-1',
    kind: 'door',
    face,
    rect,
    finish: 'door-solid',
    ...more,
  });

  // The left hand of who stands in the room and faces the wall: 4 m wide, 5 m long.
  it.each([
    ['front', 0, 'left', [1, 0], [1, 0.8]],
    ['front', 0, 'right', [1.8, 0], [1.8, 0.8]],
    ['back', 0, 'left', [1.8, 5], [1.8, 4.2]],
    ['left', 1, 'left', [0, 1.8], [0.8, 1.8]],
    ['right', 1, 'left', [4, 1], [3.2, 1]],
    ['closet:left', 1, 'left', [3, 1], [2.2, 1]],
  ] as const)('in %s has its hinges where it says', (face, _, hinge, at, open) => {
    const leaf = given(leafOf(room, door(face, [1, 0, 1.8, 2], { hinge })));
    for (const axis of [0, 1] as const) {
      expect(leaf.hinge[axis]).toBeCloseTo(at[axis], 12);
      expect(leaf.open[axis]).toBeCloseTo(open[axis], 12);
    }
  });

  it('opens into the room and against the nearer end of its wall where nothing is said', () => {
    expect(hingeOf(room, door('front', [1, 0, 1.8, 2]))).toBe('left');
    expect(hingeOf(room, door('back', [1, 0, 1.8, 2]))).toBe('right');
    expect(hingeOf(room, door('left', [4, 0, 4.8, 2]))).toBe('left');
    expect(leafOf(room, door('front', [1, 0, 1.8, 2]))?.sweep).not.toBeNull();
  });

  it('that opens out of the room sweeps over nothing in it, one that slides has no leaf', () => {
    const out = given(leafOf(room, door('front', [1, 0, 1.8, 2], { swing: 'out' })));
    expect(out.sweep).toBeNull();
    expect(out.open[1]).toBeCloseTo(-0.8, 12);
    expect(leafOf(room, door('front', [1, 0, 1.8, 2], { swing: 'slides' }))).toBeNull();
  });
});

describe('how far a thing is outside the shell', () => {
  it('is by the axis along which it is farthest out, and negative within', () => {
    expect(outsideShellM(room.size, [-0.25, 6, 1])).toBe(1);
    expect(outsideShellM(room.size, [0.5, 2, 1])).toBe(-0.5);
    expect(outsideShellM(room.size, [0.5, 1, 1], [4.5, 2, 2])).toBe(0.5);
    expect(outsideShellM(room.size, [0.5, 1, 1], [4.5, 2, 2], [1, 2])).toBe(-1);
  });
});
