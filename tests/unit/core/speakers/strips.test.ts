import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { faceAxes, patchSide } from '../../../../core/room/faces';
import type { Point, Room } from '../../../../core/room/project';
import { directionFrom, directionVector } from '../../../../core/speakers/direction';
import { degreesOutside } from '../../../../core/speakers/judge';
import { LAYOUTS, layoutOf, type Channel } from '../../../../core/speakers/layouts';
import { stripsOf, type Strip } from '../../../../core/speakers/strips';
import { given, only, roomOf } from '../../support/rooms';

const EARS: Point = [2, 3, 1.1];
const plain = roomOf().room;

const channelOf = (layout: string, label: string): Channel =>
  given(given(layoutOf(layout)).channels.find((channel) => channel.label === label));

/** Even-odd rule in the face's own axes. */
function holds({ face, polygon }: Strip, at: Point): boolean {
  const [u, v] = faceAxes(patchSide(face));
  let inside = false;
  polygon.forEach((a, i) => {
    const b = given(polygon[(i + 1) % polygon.length]);
    if (a[v] > at[v] !== b[v] > at[v]) {
      const cross = a[u] + ((at[v] - a[v]) / (b[v] - a[v])) * (b[u] - a[u]);
      if (cross > at[u]) inside = !inside;
    }
  });
  return inside;
}

/** Metres from the place to the nearest edge of the polygon. */
function edgeM({ polygon }: Strip, at: Point): number {
  return Math.min(
    ...polygon.map((a, i) => {
      const b = given(polygon[(i + 1) % polygon.length]);
      const along = [b[0] - a[0], b[1] - a[1], b[2] - a[2]] as const;
      const square = along[0] ** 2 + along[1] ** 2 + along[2] ** 2;
      const off = [at[0] - a[0], at[1] - a[1], at[2] - a[2]] as const;
      const dot = along[0] * off[0] + along[1] * off[1] + along[2] * off[2];
      const t = square === 0 ? 0 : Math.min(1, Math.max(0, dot / square));
      return Math.hypot(...off.map((value, n) => value - t * given(along[n])));
    }),
  );
}

/** What a ray meets first, body by body: independent of the columns that strips are made of. */
function firstHit(
  room: Room,
  ears: Point,
  ray: Point,
): { readonly face: string; readonly at: Point } {
  const names = [
    ['left', 'right'],
    ['front', 'back'],
    ['floor', 'ceiling'],
  ] as const;
  let best = { face: '', reach: Infinity };
  const { width, length, height } = room.size;
  [width, length, height].forEach((far, axis) => {
    const step = given(ray[axis]);
    if (step === 0) return;
    const reach = ((step > 0 ? far : 0) - given(ears[axis])) / step;
    if (reach < best.reach) best = { face: given(names[axis])[step > 0 ? 1 : 0], reach };
  });
  for (const solid of room.solids) {
    let [near, far, face] = [-Infinity, Infinity, ''];
    for (const axis of [0, 1, 2] as const) {
      const step = ray[axis] === 0 ? 1e-15 : ray[axis];
      const a = (solid.min[axis] - ears[axis]) / step;
      const b = (solid.max[axis] - ears[axis]) / step;
      if (Math.min(a, b) > near) {
        near = Math.min(a, b);
        face = `${solid.id}:${names[axis][step > 0 ? 0 : 1]}`;
      }
      far = Math.min(far, Math.max(a, b));
    }
    if (near < far && near > 0 && near < best.reach) best = { face, reach: near };
  }
  const at = ears.map((value, n) => value + best.reach * given(ray[n])) as unknown as Point;
  return { face: best.face, at };
}

describe('the strip of a channel in a bare room', () => {
  it('of a level loudspeaker is a band as high as a tape measure can set', () => {
    const strip = only(stripsOf(plain, EARS, channelOf('0+5+0', 'M+000')));
    expect(strip.face).toBe('front');
    const [xs, zs] = [strip.polygon.map((at) => at[0]), strip.polygon.map((at) => at[2])];
    const half = 3 * Math.tan((0.5 * Math.PI) / 180);
    expect(Math.min(...xs)).toBeCloseTo(2 - half, 6);
    expect(Math.max(...xs)).toBeCloseTo(2 + half, 6);
    expect(Math.max(...zs)).toBeCloseTo(1.1 + half / Math.cos((0.5 * Math.PI) / 180), 6);
    for (const at of strip.polygon) expect(at[1]).toBeCloseTo(0, 9);
  });

  it('runs round the corner of two walls, and from the wall onto the ceiling', () => {
    // Left at 30 to 45 degrees: the corner is at 33.7 degrees, so front wall and left wall.
    const level = stripsOf(plain, EARS, channelOf('0+7+0', 'M+030'));
    expect(level.map(({ face }) => face).sort()).toEqual(['front', 'left']);
    const front = given(level.find(({ face }) => face === 'front'));
    const xs = front.polygon.map((at) => at[0]);
    expect(Math.min(...xs)).toBeCloseTo(0, 4);
    expect(Math.max(...xs)).toBeCloseTo(2 - 3 * Math.tan(Math.PI / 6), 6);
    // 30 to 55 degrees up: 1.9 m above the ears is the ceiling, 1.33 m away and more.
    const upper = stripsOf(plain, EARS, channelOf('4+7+0', 'U+045'));
    expect(new Set(upper.map(({ face }) => face))).toEqual(new Set(['left', 'ceiling']));
    const ceiling = upper
      .filter(({ face }) => face === 'ceiling')
      .flatMap(({ polygon }) => polygon);
    const away = ceiling.map((at) => Math.hypot(at[0] - 2, at[1] - 3));
    expect(Math.min(...away)).toBeCloseTo(1.9 / Math.tan((55 * Math.PI) / 180), 4);
  });

  it('lies before the faces by the depth of a cabinet', () => {
    const strips = stripsOf(plain, EARS, channelOf('0+5+0', 'M+110'), 0.12);
    for (const at of strips.flatMap(({ polygon }) => polygon)) {
      expect(Math.min(at[0], 5 - at[1])).toBeCloseTo(0.12, 6);
    }
  });

  it('is nowhere where the ears are not in the open', () => {
    expect(stripsOf(plain, [2, -1, 1.1], channelOf('0+5+0', 'M+000'))).toEqual([]);
    const block = { id: 'b', kind: 'other', min: [1, 2, 0], max: [3, 4, 3] };
    expect(stripsOf(roomOf({ solids: [block] }).room, EARS, channelOf('0+5+0', 'M+000'))).toEqual(
      [],
    );
  });
});

describe('the strip of a channel in a furnished room', () => {
  it('goes over the column that hides the wall', () => {
    const column = { id: 'c', kind: 'column', min: [1.9, 1, 0], max: [2.1, 1.2, 3] };
    const strips = stripsOf(roomOf({ solids: [column] }).room, EARS, channelOf('0+5+0', 'M+000'));
    expect(strips.map(({ face }) => face)).toEqual(['c:back']);
  });

  const cm = (min: number, max: number) => fc.integer({ min, max }).map((n) => n / 100);
  const solid = fc
    .tuple(cm(0, 350), cm(0, 450), cm(0, 260), cm(10, 150), cm(10, 150), cm(10, 300))
    .map(([x, y, z, dx, dy, dz]) => ({
      min: [x, y, z],
      max: [Math.min(4, x + dx), Math.min(5, y + dy), Math.min(3, z + dz)],
    }));
  const channels = LAYOUTS.flatMap((layout) => layout.channels);

  it('holds a place that is seen from the ears when, and only when, it is in the window', () => {
    fc.assert(
      fc.property(
        fc.array(solid, { maxLength: 4 }),
        fc.constantFrom(...channels),
        fc.tuple(cm(20, 380), cm(20, 480), cm(60, 160)),
        fc.array(fc.tuple(fc.integer({ min: -40, max: 140 }), fc.integer({ min: -40, max: 140 })), {
          minLength: 20,
          maxLength: 20,
        }),
        (boxes, channel, ears, rays) => {
          const solids = boxes.map((box, i) => ({ id: `s${i}`, kind: 'other', ...box }));
          const { room } = roomOf({ solids });
          const strips = stripsOf(room, ears, channel);
          const inSolid = room.solids.some(({ min, max }) =>
            ears.every((at, n) => at > given(min[n]) - 0.01 && at < given(max[n]) + 0.01),
          );
          fc.pre(!inSolid);
          for (const [a, b] of rays) {
            // Rays in the window and around it: 0 to 100 percent of it lies within.
            const spread = (share: number, [low, high]: readonly [number, number]): number => {
              const [from, to] = low === high ? [low - 0.5, high + 0.5] : [low, high];
              return from + ((to - from) * share) / 100;
            };
            const direction = {
              azimuthDeg: spread(a, channel.azimuth),
              elevationDeg: spread(b, channel.elevation),
            };
            const hit = firstHit(
              room,
              ears,
              directionVector(direction.azimuthDeg, direction.elevationDeg),
            );
            const onFace = strips.filter(({ face }) => face === hit.face);
            // Within 4 mm of an edge the chords of the polygon may say otherwise.
            if (onFace.some((strip) => edgeM(strip, hit.at) < 0.004)) continue;
            const inWindow = a >= 0 && a <= 100 && b >= 0 && b <= 100;
            if (a === 0 || a === 100 || b === 0 || b === 100) continue;
            expect([hit.face, onFace.some((strip) => holds(strip, hit.at))]).toEqual([
              hit.face,
              inWindow,
            ]);
            if (inWindow) expect(degreesOutside(directionFrom(ears, hit.at), channel)).toBe(0);
          }
        },
      ),
      { numRuns: 400 },
    );
  });

  it('takes less than 5 ms for all channels of the largest layout', () => {
    const solids = [
      { id: 'duct', kind: 'soffit', min: [0, 0, 2.6], max: [0.6, 5, 3] },
      { id: 'riser', kind: 'riser', min: [0, 3.5, 0], max: [4, 5, 0.3] },
      { id: 'column', kind: 'column', min: [3, 1, 0], max: [3.25, 1.25, 3] },
    ];
    const { room } = roomOf({ solids });
    const { channels: all } = given(layoutOf('4+7+0'));
    const once = (): number => {
      const start = performance.now();
      for (const channel of all) stripsOf(room, EARS, channel);
      return performance.now() - start;
    };
    const times = Array.from({ length: 40 }, once).sort((a, b) => a - b);
    expect(times[0]).toBeLessThan(5);
  });
});
