import fc from 'fast-check';
import { PerspectiveCamera, Vector3 } from 'three';
import { describe, expect, it } from 'vitest';
import { onPaper } from '../../../core/drawing/on-paper';
import { FLAT_VIEWS } from '../../../core/drawing/views';
import type { Point, ShellSize } from '../../../core/room/project';
import { toScene } from '../../../renderer/drawing/axes';
import { placeLabels, type LabelRequest, type PagePoint } from '../../../core/drawing/place-labels';
import { toPicture, wholeRoom } from '../../../renderer/drawing/flat/flat-eye';
import { eyeOf, roomPose } from '../../../renderer/drawing/poses';

const PICTURES = [
  { width: 640, height: 420 },
  { width: 420, height: 260 },
] as const;
const VIEWS = ['room', 'plan', 'section', 'front'] as const;

/** Where places of a room appear in a picture of a view. */
function projected(
  places: readonly Point[],
  room: ShellSize,
  view: (typeof VIEWS)[number],
  picture: (typeof PICTURES)[number],
): readonly PagePoint[] {
  if (view !== 'room') {
    const eye = wholeRoom(FLAT_VIEWS[view], room, picture);
    return places.map((place) => toPicture(eye, onPaper(FLAT_VIEWS[view], place), picture));
  }
  const pose = roomPose(room, picture.width / picture.height);
  const camera = new PerspectiveCamera(pose.fovDeg, picture.width / picture.height, 0.1, 500);
  camera.position.copy(eyeOf(pose));
  camera.lookAt(pose.target);
  camera.updateMatrixWorld();
  return places.map((place) => {
    const { x, y } = new Vector3(...toScene(place)).project(camera);
    return { x: ((x + 1) / 2) * picture.width, y: ((1 - y) / 2) * picture.height };
  });
}

const share = fc.double({ min: 0, max: 1, noNaN: true });
const things = fc.array(
  fc.record({
    at: fc.tuple(share, share, share),
    width: fc.integer({ min: 24, max: 110 }),
    height: fc.constantFrom(24, 26),
    rank: fc.nat({ max: 3 }),
  }),
  { minLength: 1, maxLength: 26 },
);

describe('the labels of a room', () => {
  it('never lie over each other, lie within the picture, and are all there', () => {
    fc.assert(
      fc.property(
        fc.record({
          width: fc.double({ min: 2.5, max: 9, noNaN: true }),
          length: fc.double({ min: 2.5, max: 12, noNaN: true }),
          height: fc.double({ min: 2, max: 4, noNaN: true }),
        }),
        fc.constantFrom(...VIEWS),
        fc.constantFrom(...PICTURES),
        things,
        (room, view, picture, labels) => {
          // Things along one line of sight are the worst: many rooms have their rows and boxes so.
          const places = labels.map(({ at }): Point => [
            at[0] * room.width,
            Math.round(at[1] * 3) * (room.length / 3),
            Math.round(at[2]) * room.height,
          ]);
          const on = projected(places, room, view, picture);
          const requests = labels.map(({ width, height, rank }, n): LabelRequest => ({
            at: on[n] ?? null,
            size: { width, height },
            rank,
          }));
          const placed = placeLabels(requests, picture);
          placed.forEach((a, n) => {
            const of = requests[n];
            if (!a || !of) throw new Error(`label ${n} is not shown`);
            expect(a.x - of.size.width / 2).toBeGreaterThanOrEqual(0);
            expect(a.y - of.size.height / 2).toBeGreaterThanOrEqual(0);
            expect(a.x + of.size.width / 2).toBeLessThanOrEqual(picture.width);
            expect(a.y + of.size.height / 2).toBeLessThanOrEqual(picture.height);
            placed.slice(0, n).forEach((b, m) => {
              const other = requests[m];
              if (!b || !other) return;
              const apart =
                Math.abs(a.x - b.x) >= (of.size.width + other.size.width) / 2 ||
                Math.abs(a.y - b.y) >= (of.size.height + other.size.height) / 2;
              expect(apart, `labels ${m} and ${n}`).toBe(true);
            });
          });
        },
      ),
    );
  });

  const picture = { width: 400, height: 300 };
  const label = (x: number, y: number, more: Partial<LabelRequest> = {}): LabelRequest => ({
    at: { x, y },
    size: { width: 40, height: 24 },
    rank: 1,
    ...more,
  });

  it('stand at their places where those are free', () => {
    expect(placeLabels([label(100, 100), label(200, 100)], picture)).toEqual([
      { x: 100, y: 100 },
      { x: 200, y: 100 },
    ]);
  });

  it('move outward where that is said, and leave their place to the lower rank', () => {
    const [first, second] = placeLabels(
      [label(100, 100, { outward: { x: 1, y: 0 } }), label(105, 100, { rank: 0 })],
      picture,
    );
    expect(second).toEqual({ x: 105, y: 100 });
    expect(first?.y).toBe(100);
    expect(first?.x).toBeGreaterThan(145);
  });

  it('give way where they only name what is seen', () => {
    expect(
      placeLabels([label(100, 100), label(110, 100, { yields: true, rank: 4 })], picture)[1],
    ).toBe(null);
  });
});
