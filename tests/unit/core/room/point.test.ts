import { describe, expect, it } from 'vitest';
import { farCorner, mapPoint } from '../../../../core/room/point';

describe('places by axis', () => {
  it('changes each coordinate with its axis', () => {
    expect(mapPoint([1, 2, 3], (value, axis) => 10 * value + axis)).toEqual([10, 21, 32]);
  });

  it('puts the far corner of the shell at its size', () => {
    expect(farCorner({ width: 4, length: 6, height: 2.4 })).toEqual([4, 6, 2.4]);
  });
});
