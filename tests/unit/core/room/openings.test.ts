import { describe, expect, it } from 'vitest';
import { planeOf, sweepBefore } from '../../../../core/room/openings';
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
    const sweep = given(sweepBefore(given(planeOf(room, face)), rect));
    for (const axis of [0, 1, 2] as const) {
      expect(sweep.min[axis]).toBeCloseTo(min[axis], 12);
      expect(sweep.max[axis]).toBeCloseTo(max[axis], 12);
    }
  });

  it('of a hatch in the ceiling sweeps over nothing', () => {
    expect(sweepBefore(given(planeOf(room, 'ceiling')), [1, 1, 2, 2])).toBeNull();
  });

  it('has no place on a solid that is not there', () => {
    expect(planeOf(room, 'gone:left')).toBeNull();
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
