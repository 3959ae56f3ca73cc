import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { onPaper } from '../../../core/drawing/on-paper';
import { FLAT_VIEWS } from '../../../core/drawing/views';
import { toRoom } from '../../../renderer/drawing/axes';
import {
  fromPicture,
  keyMoved,
  NO_SHIFT,
  pulled,
  shifted,
  toPicture,
  wholeRoom,
  zoomedAt,
} from '../../../renderer/drawing/flat/flat-eye';
import { rayInto } from '../../../renderer/drawing/flat/flat-stage';
import { alongAxis, onPlane } from '../../../renderer/drawing/stage';

const SIZE = { width: 4.2, length: 6.4, height: 2.4 };
const PICTURE = { width: 900, height: 500 };
const views = fc.constantFrom(FLAT_VIEWS.plan, FLAT_VIEWS.section, FLAT_VIEWS.front);
const px = (most: number) => fc.double({ min: 0, max: most, noNaN: true });

describe('the eye over a plan or section', () => {
  it('shows the whole room with its dimension lines', () => {
    for (const view of [FLAT_VIEWS.plan, FLAT_VIEWS.section, FLAT_VIEWS.front]) {
      const eye = wholeRoom(view, SIZE, PICTURE);
      for (const corner of [[-0.4, -0.4, -0.4] as const, [4.6, 6.8, 2.5] as const]) {
        const { x, y } = toPicture(eye, onPaper(view, corner), PICTURE);
        expect(x).toBeGreaterThan(0);
        expect(x).toBeLessThan(PICTURE.width);
        expect(y).toBeGreaterThan(0);
        expect(y).toBeLessThan(PICTURE.height);
      }
    }
  });

  it('keeps what is under the pointer where it is while it zooms, and what is pulled under the hand', () => {
    fc.assert(
      fc.property(
        views,
        px(900),
        px(500),
        fc.double({ min: 0.5, max: 3, noNaN: true }),
        (view, x, y, factor) => {
          const whole = wholeRoom(view, SIZE, PICTURE);
          const place = fromPicture(whole, { x, y }, PICTURE);
          const zoomed = zoomedAt(whole, NO_SHIFT, factor, { x, y }, PICTURE);
          const after = toPicture(shifted(whole, zoomed), place, PICTURE);
          expect(after.x).toBeCloseTo(x, 6);
          expect(after.y).toBeCloseTo(y, 6);
          const moved = toPicture(shifted(whole, pulled(whole, zoomed, 30, -20)), place, PICTURE);
          expect(moved.x).toBeCloseTo(x + 30, 6);
          expect(moved.y).toBeCloseTo(y - 20, 6);
        },
      ),
    );
  });

  it('goes the way of the arrow keys and comes back, and zooms no farther than its limits', () => {
    const whole = wholeRoom(FLAT_VIEWS.plan, SIZE, PICTURE);
    const key = { right: 0, up: 0, slides: false, nearer: 0 };
    const right = keyMoved(whole, NO_SHIFT, { ...key, right: 1 }, PICTURE);
    expect(right.by[0]).toBeGreaterThan(0.05);
    const up = keyMoved(whole, NO_SHIFT, { ...key, up: 1 }, PICTURE);
    expect(up.by[1]).toBeGreaterThan(0.05);
    const back = keyMoved(whole, right, { ...key, right: -1 }, PICTURE);
    expect(back.by[0]).toBeCloseTo(0, 9);
    let shift = NO_SHIFT;
    for (let n = 0; n < 60; n++) shift = keyMoved(whole, shift, { ...key, nearer: 1 }, PICTURE);
    expect(shift.zoom).toBe(16);
  });
});

describe('the ray under the hand on a plan or section', () => {
  it('meets the plane of a thing at the place that was pointed at, and its own axis nowhere', () => {
    fc.assert(
      fc.property(views, px(900), px(500), (view, x, y) => {
        const eye = wholeRoom(view, SIZE, PICTURE);
        const paper = fromPicture(eye, { x, y }, PICTURE);
        const ray = rayInto(view, paper);
        const thing = [1.5, 2.5, 0.7] as const;
        const hit = onPlane(ray, thing, view.looks.axis);
        if (!hit) throw new Error('the ray misses');
        expect(onPaper(view, hit)[0]).toBeCloseTo(paper[0], 9);
        expect(onPaper(view, hit)[1]).toBeCloseTo(paper[1], 9);
        expect(hit[view.looks.axis]).toBeCloseTo(thing[view.looks.axis], 9);
        expect(alongAxis(ray, thing, view.right.axis)).toBeCloseTo(hit[view.right.axis], 9);
        expect(alongAxis(ray, thing, view.looks.axis)).toBe(null);
        // It comes from the eye's side.
        const from = toRoom(ray.origin)[view.looks.axis] * view.looks.sign;
        expect(from).toBeLessThan(-100);
      }),
    );
  });
});
