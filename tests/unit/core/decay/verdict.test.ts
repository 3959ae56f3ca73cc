import { describe, expect, it } from 'vitest';
import { verdictOf } from '../../../../core/decay/verdict';

const corridor = { lowS: 0.2, highS: 0.3 };

describe('a verdict by two methods', () => {
  it.each([
    [0.4, 0.6, 0.1, 0.4],
    [0.1, 0.15, -0.05, 0.15],
    [0.25, 0.6, 0, 0.25],
    [0.1, 0.25, 0, 0.25],
    [0.1, 0.5, 0, 0.1],
  ])('of %f and %f s lies %f s outside, nearest %f s', (one, other, outsideS, nearestS) => {
    const verdict = verdictOf(corridor, [one, other]);
    expect(verdict.outsideS).toBeCloseTo(outsideS, 9);
    expect(verdict.nearestS).toBe(nearestS);
  });

  it('is none without a corridor or a time', () => {
    expect(verdictOf({ lowS: null, highS: null }, [9]).outsideS).toBe(0);
    expect(verdictOf(corridor, [null, null])).toEqual({ outsideS: 0, nearestS: null });
  });
});
