import { describe, expect, it } from 'vitest';
import { labelRequest, RANKS, type ToPage } from '../../../../core/drawing/label-requests';

const picture = { width: 400, height: 300 };
const size = { width: 40, height: 20 };
/** The room's x to the right and z up, 100 px to the metre. */
const toPage: ToPage = ([x, , z]) => ({ x: 100 * x, y: 300 - 100 * z });

describe('what is asked of the placing of labels', () => {
  it('is the place itself, by what the label may do', () => {
    const wish = { at: [1, 0, 1] as const };
    expect(labelRequest(wish, toPage, size, picture)).toEqual({
      at: { x: 100, y: 200 },
      size,
      rank: RANKS.fixed,
    });
    expect(labelRequest({ ...wish, mayShift: true }, toPage, size, picture).rank).toBe(RANKS.tag);
    const yielding = labelRequest({ ...wish, yields: true }, toPage, size, picture);
    expect(yielding).toMatchObject({ rank: RANKS.yields, yields: true });
    expect(labelRequest({ ...wish, yields: true, rank: 1 }, toPage, size, picture).rank).toBe(1);
  });

  it('is beside the place, on the far side of what it keeps away from', () => {
    const right = labelRequest({ at: [1, 0, 1], awayFrom: [0, 0, 1] }, toPage, size, picture);
    expect(right.at).toEqual({ x: 133, y: 200 });
    expect(right.outward).toEqual({ x: 1, y: 0 });
    const up = labelRequest({ at: [1, 0, 1], awayFrom: [1, 0, 0] }, toPage, size, picture);
    expect(up.at?.y).toBeCloseTo(177, 9);
    // Slantwise, as soon as it is clear of the place in one of the two directions.
    const slant = labelRequest({ at: [1, 0, 1], awayFrom: [0, 0, 0] }, toPage, size, picture);
    expect(slant.at?.x).toBeCloseTo(123, 9);
    expect(slant.at?.y).toBeCloseTo(177, 9);
    // Nothing to keep away from where both are in one place.
    const same = labelRequest({ at: [1, 0, 1], awayFrom: [1, 5, 1] }, toPage, size, picture);
    expect(same.at).toEqual({ x: 100, y: 200 });
  });

  it('stays at its place where it only moves outward', () => {
    const grip = labelRequest({ at: [1, 0, 1], outwardFrom: [2, 0, 1] }, toPage, size, picture);
    expect(grip.at).toEqual({ x: 100, y: 200 });
    expect(grip.outward).toEqual({ x: -1, y: 0 });
  });

  it('is nothing where the place is behind the eye or far outside the picture', () => {
    expect(labelRequest({ at: [1, 0, 1] }, () => null, size, picture).at).toBe(null);
    expect(labelRequest({ at: [-0.5, 0, 1] }, toPage, size, picture).at).toBe(null);
    expect(labelRequest({ at: [-0.3, 0, 1] }, toPage, size, picture).at).not.toBe(null);
  });
});
