import { describe, expect, it } from 'vitest';
import { reflectionLossDb } from '../../core/reflections/level';
import { reflectingRoom, reflectionsBetween } from '../../core/reflections/image-sources';
import type { Point } from '../../core/room/project';
import { given, roomOf } from '../unit/support/rooms';

const SPEED_MS = 343;

describe('first-order images of a rectangular room', () => {
  // A shell of 6 x 5 x 2.4 m; images worked out by hand: 2w - x for a wall at x = w (textbook; Allen and
  // Berkley 1979, from memory).
  const { room } = roomOf({ size: { width: 6, length: 5, height: 2.4 } });
  const source: Point = [0.8, 1.2, 1.1];
  const listener: Point = [3.8, 2.5, 1.1];
  const found = given(reflectionsBetween(reflectingRoom(room), source, listener, SPEED_MS));

  it('the direct sound goes 3.2696 m', () => {
    expect(found.direct.lengthM).toBeCloseTo(3.2696, 4);
  });

  it.each([
    ['left', 4.7802, 4.404, -3.3],
    ['right', 7.5133, 12.372, -7.23],
    ['front', 4.7634, 4.355, -3.27],
    ['back', 6.9778, 10.811, -6.58],
    ['floor', 3.9408, 1.957, -1.62],
    ['ceiling', 4.1773, 2.647, -2.13],
  ])('%s: %f m, %f ms, %f dB off a hard wall', (face, lengthM, delayMs, levelDb) => {
    const path = given(found.paths.find(({ hits }) => hits[0].face === face));
    expect(path.lengthM).toBeCloseTo(lengthM, 4);
    expect(path.delayMs).toBeCloseTo(delayMs, 2);
    expect(path.spreadingDb).toBeCloseTo(levelDb, 2);
  });

  it('has 25 sources to the second order, the true one among them', () => {
    // (2N + 1)(2N^2 + 2N + 3)/3 lattice points: 25 for N = 2 (from memory, counted by hand).
    const second = given(
      reflectionsBetween(reflectingRoom(room), source, listener, SPEED_MS, { order: 2 }),
    );
    expect(second.paths.length + 1).toBe(25);
  });
});

describe('what a face returns', () => {
  it.each([
    [0, 0],
    [0.5, -3.01],
    [0.9, -10],
    [0.545, -3.42],
  ])('coefficient %f: %f dB (10 lg(1 - coefficient))', (coefficient, lossDb) => {
    expect(reflectionLossDb(coefficient)).toBeCloseTo(lossDb, 2);
  });

  it('is held at -20 dB where a table gives 1 or more', () => {
    expect(reflectionLossDb(1)).toBe(-20);
    expect(reflectionLossDb(1.2)).toBe(-20);
  });
});

describe('sound takes its time', () => {
  it('2.915 ms a metre at 343 m/s', () => {
    const { room } = roomOf();
    // Half a metre before the front wall: its path is 1 m longer than the direct one.
    const found = given(reflectionsBetween(reflectingRoom(room), [2, 0.5, 1], [2, 3, 1], SPEED_MS));
    const front = given(found.paths.find(({ hits }) => hits[0].face === 'front'));
    expect(front.delayMs).toBeCloseTo(2.915, 3);
  });
});
