import { describe, expect, it } from 'vitest';
import { finish } from '../../../../core/quantity/slices';
import { smallEigen } from '../../../../core/room-modes/small-eigen';
import { symmetricEigen } from '../../../../core/room-modes/symmetric';

const SIZE = 9;

/** Full and symmetric, the same every time. */
function matrix(): Float64Array {
  const entries = new Float64Array(SIZE * SIZE);
  for (let i = 0; i < SIZE; i++)
    for (let j = 0; j < SIZE; j++)
      entries[i * SIZE + j] = Math.cos(i * j + i + j) + (i === j ? i : 0);
  return entries;
}

describe('eigen of a small symmetric matrix', () => {
  const a = matrix();
  const { values, rows } = smallEigen(a, SIZE);

  it('gives vectors that the matrix only scales, each of length one', () => {
    for (let n = 0; n < SIZE; n++) {
      let length = 0;
      for (let i = 0; i < SIZE; i++) {
        let product = 0;
        for (let j = 0; j < SIZE; j++)
          product += (a[i * SIZE + j] ?? NaN) * (rows[j * SIZE + n] ?? NaN);
        const entry = rows[i * SIZE + n] ?? NaN;
        expect(product).toBeCloseTo((values[n] ?? NaN) * entry, 10);
        length += entry ** 2;
      }
      expect(length).toBeCloseTo(1, 12);
    }
  });

  it('gives the values of the kernel for large ones, rising', () => {
    const large = finish(symmetricEigen(a, SIZE, SIZE, 0)).values.toSorted();
    values.forEach((value, n) => expect(value).toBeCloseTo(large[n] ?? NaN, 10));
    expect([...values]).toEqual([...values].sort((one, other) => one - other));
  });

  it('refuses another shape', () => {
    expect(() => smallEigen(a, SIZE - 1)).toThrow('81 values instead of 64');
  });
});
