import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Point } from '../../../../core/room/project';
import { hiddenShare, PERSON_M, seatViews } from '../../../../core/seating/hidden-share';
import { sightLines } from '../../../../core/seating/sight-line';
import { roomOf } from '../../support/rooms';

const picture = { leftX: 1, rightX: 3.4, bottomZ: 0.6, topZ: 1.95 };

/** Share by rays from the eye to a grid of points of the picture. */
function byRays(eye: Point, others: readonly Point[], count = 200): number {
  let hidden = 0;
  for (let i = 0; i < count; i++)
    for (let j = 0; j < count; j++) {
      const x = picture.leftX + ((i + 0.5) / count) * (picture.rightX - picture.leftX);
      const z = picture.bottomZ + ((j + 0.5) / count) * (picture.topZ - picture.bottomZ);
      const meets = others.some(([ox, oy, oz]) => {
        if (oy <= 0 || oy >= eye[1]) return false;
        const share = (eye[1] - oy) / eye[1];
        const [dx, dz] = [eye[0] + (x - eye[0]) * share - ox, eye[2] + (z - eye[2]) * share - oz];
        return (
          (Math.abs(dx) < PERSON_M.headBreadth / 2 && dz < PERSON_M.crownOverEye) ||
          (Math.abs(dx) < PERSON_M.shoulderBreadth / 2 && dz < -PERSON_M.shouldersUnderEye)
        );
      });
      if (meets) hidden++;
    }
  return hidden / count ** 2;
}

describe('what heads hide of the picture', () => {
  const m = (min: number, max: number) => fc.integer({ min, max }).map((n) => n / 100);
  const person = fc.tuple(m(50, 390), m(100, 400), m(90, 180));

  it('is what rays to the picture find', () => {
    fc.assert(
      fc.property(
        fc.tuple(m(50, 390), m(420, 700), m(100, 200)),
        fc.array(person, { maxLength: 4 }),
        (eye, others) => {
          const share = hiddenShare(eye, others, picture);
          expect(Math.abs(share - byRays(eye, others))).toBeLessThan(0.012);
        },
      ),
      { numRuns: 30 },
    );
  });

  it('falls as the row behind rises, and rises with the row in front', () => {
    fc.assert(
      fc.property(
        fc.tuple(m(50, 390), m(420, 700), m(100, 200)),
        fc.array(person, { maxLength: 4 }),
        m(0, 60),
        (eye, others, by) => {
          const now = hiddenShare(eye, others, picture);
          const higher = hiddenShare([eye[0], eye[1], eye[2] + by], others, picture);
          const raised = others.map(([x, y, z]): Point => [x, y, z + by]);
          expect(higher).toBeLessThanOrEqual(now + 1e-9);
          expect(hiddenShare(eye, raised, picture)).toBeGreaterThanOrEqual(now - 1e-9);
        },
      ),
    );
  });

  it('is nothing of a person beside, behind, or beyond the picture', () => {
    expect(hiddenShare([2.2, 3, 1.2], [[2.2, 3, 1.2]], picture)).toBe(0);
    expect(hiddenShare([2.2, 3, 1.2], [[2.2, 4, 1.2]], picture)).toBe(0);
    expect(hiddenShare([2.2, 3, 1.2], [[2.2, -1, 1.2]], picture)).toBe(0);
  });
});

describe('a room of two rows', () => {
  const home = (riserM: number) =>
    roomOf(
      { size: { width: 4.4, length: 6, height: 2.6 } },
      {
        screen: { widthM: 2.4, aspect: [16, 9], bottomM: 0.6 },
        seating: {
          rows: [
            { id: 'back', seats: 3, y: 4.8, pitchM: 0.7, riserM, eyeHeightM: 1.2 },
            { id: 'front', seats: 2, y: 3, pitchM: 0.7, eyeHeightM: 1.2 },
          ],
        },
      },
    );

  it('tells the C-value of the back row alone, whatever the order of the file', () => {
    const [back, front] = sightLines(home(0.552));
    expect(back?.over).toBe('front');
    expect(back?.clearanceM).toBeCloseTo(0.12, 9);
    expect(front).toEqual({ row: 'front', over: null, clearanceM: null });
  });

  it('hides nothing from anyone once the line of sight clears the crowns', () => {
    expect(Math.max(...seatViews(home(0)).map(({ hiddenShare: share }) => share))).toBeGreaterThan(
      0.02,
    );
    for (const { hiddenShare: share } of seatViews(home(0.552))) expect(share).toBeLessThan(1e-9);
  });
});
