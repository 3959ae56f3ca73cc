import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Point, Project } from '../../../../core/room/project';
import { referencePlace } from '../../../../core/room/seats';
import { directionFrom, directionVector } from '../../../../core/speakers/direction';
import { judgeSpeakers } from '../../../../core/speakers/judge';
import { LAYOUTS } from '../../../../core/speakers/layouts';
import { nominalElevation, nominalPlace } from '../../../../core/speakers/nominal-place';
import { given, roomOf } from '../../support/rooms';

const EARS: Point = [2, 3, 1.1];

const cm = (min: number, max: number) => fc.integer({ min, max }).map((n) => n / 100);
const point = fc.tuple(cm(0, 400), cm(0, 500), cm(0, 300));

/** The same angle, whichever way round the circle it is written. */
function expectAngle(found: number, expected: number, digits = 6): void {
  const apart = (((found - expected + 180) % 360) + 360) % 360;
  expect(apart - 180).toBeCloseTo(0, digits);
}

describe('directions from the ears', () => {
  it.each([
    ['ahead, to the screen', [2, 1, 1.1], 0, 0, 2],
    ['to the left', [1, 3, 1.1], 90, 0, 1],
    ['to the right', [3, 3, 1.1], -90, 0, 1],
    ['behind', [2, 4, 1.1], 180, 0, 1],
    ['left and ahead', [1, 2, 1.1], 45, 0, Math.SQRT2],
    ['right and behind', [3, 4, 1.1], -135, 0, Math.SQRT2],
    ['overhead', [2, 3, 2.1], 0, 90, 1],
    ['underfoot', [2, 3, 0.1], 0, -90, 1],
    ['up and ahead', [2, 2, 2.1], 0, 45, Math.SQRT2],
    ['at the ears', [2, 3, 1.1], 0, 0, 0],
  ] as const)('%s', (_, place, azimuth, elevation, distance) => {
    const found = directionFrom(EARS, place);
    expect(found.azimuthDeg).toBeCloseTo(azimuth, 9);
    expect(found.elevationDeg).toBeCloseTo(elevation, 9);
    expect(found.distanceM).toBeCloseTo(distance, 9);
  });

  it('straight behind is 180, never -180', () => {
    expect(directionFrom([0, 3, 1], [-0, 4, 1]).azimuthDeg).toBe(180);
  });

  it('of a place and of its mirror image differ in the sign of the azimuth alone', () => {
    fc.assert(
      fc.property(point, (place) => {
        const mirrored = directionFrom(EARS, [4 - place[0], place[1], place[2]]);
        const found = directionFrom(EARS, place);
        expectAngle(mirrored.azimuthDeg, -found.azimuthDeg);
        expect(mirrored.elevationDeg).toBeCloseTo(found.elevationDeg, 9);
        expect(mirrored.distanceM).toBeCloseTo(found.distanceM, 9);
      }),
    );
  });

  it('do not change when ears and place move together', () => {
    fc.assert(
      fc.property(point, point, (place, shift) => {
        const move = (at: Point): Point => [at[0] + shift[0], at[1] + shift[1], at[2] + shift[2]];
        // Straight above the ears the azimuth means nothing.
        fc.pre(Math.hypot(place[0] - EARS[0], place[1] - EARS[1]) > 0.001);
        const moved = directionFrom(move(EARS), move(place));
        const found = directionFrom(EARS, place);
        expectAngle(moved.azimuthDeg, found.azimuthDeg);
        expect(moved.elevationDeg).toBeCloseTo(found.elevationDeg, 6);
        expect(moved.distanceM).toBeCloseTo(found.distanceM, 9);
      }),
    );
  });

  it('lead back to the place', () => {
    fc.assert(
      fc.property(point, (place) => {
        const { azimuthDeg, elevationDeg, distanceM } = directionFrom(EARS, place);
        const ray = directionVector(azimuthDeg, elevationDeg);
        place.forEach((at, axis) => {
          expect((EARS[axis] ?? 0) + (ray[axis] ?? 0) * distanceM).toBeCloseTo(at, 9);
        });
      }),
    );
  });
});

/** A room of any size with one seat somewhere in it, at least half a metre from every wall. */
const seatedRoom = fc
  .record({ width: cm(200, 900), length: cm(200, 1200), height: cm(200, 400) })
  .chain((size) =>
    fc.record({
      size: fc.constant(size),
      x: fc.integer({ min: 25, max: 75 }).map((p) => (size.width * p) / 100),
      y: fc.integer({ min: 25, max: 75 }).map((p) => (size.length * p) / 100),
      layout: fc.constantFrom(...LAYOUTS.map((layout) => layout.id)),
    }),
  )
  .map(({ size, x, y, layout }) =>
    roomOf(
      { size },
      {
        seating: { rows: [{ id: 'a', seats: 1, x, y, earHeightM: 1.1 }] },
        speakers: { layout },
      },
    ),
  );

describe('the nominal place of a channel', () => {
  it('lies under its nominal angle, inside the shell, 12 cm off the wall it is on', () => {
    fc.assert(
      fc.property(seatedRoom, (project) => {
        const { width, length, height } = project.room.size;
        const ears = given(referencePlace(project)).position;
        for (const channel of given(judgeSpeakers(project).layout).channels) {
          const place = given(nominalPlace(project, channel));
          const found = directionFrom(ears, place);
          // Places are kept to a hundredth of a millimetre, which is 0.01 degrees at 10 cm.
          expectAngle(found.azimuthDeg, channel.nominalAzimuth, 1);
          expect(found.elevationDeg).toBeCloseTo(nominalElevation(channel), 1);
          const off = [width, length, height].map((far, axis) =>
            Math.min(place[axis] ?? 0, far - (place[axis] ?? 0)),
          );
          expect(Math.min(...off)).toBeCloseTo(0.12, 4);
        }
      }),
      { numRuns: 60 },
    );
  });

  it('is in range', () => {
    fc.assert(
      fc.property(seatedRoom, (project) => {
        const { channels } = given(judgeSpeakers(project).layout);
        const placed = channels.map((channel) => ({
          channel: channel.label,
          position: given(nominalPlace(project, channel)),
        }));
        const judged = judgeSpeakers({ ...project, speakers: { ...project.speakers, placed } });
        expect(judged.missing).toEqual([]);
        expect(judged.speakers.filter((speaker) => !speaker.inRange)).toEqual([]);
      }),
      { numRuns: 60 },
    );
  });

  it('is level with the ears where the window allows it, else at its nearer edge', () => {
    const channel = given(LAYOUTS[0]?.channels[0]);
    expect(nominalElevation({ ...channel, elevation: [0, 15] })).toBe(0);
    expect(nominalElevation({ ...channel, elevation: [30, 55] })).toBe(30);
    expect(nominalElevation({ ...channel, elevation: [-30, -15] })).toBe(-15);
  });

  it('is nowhere without a seat, or with the seat outside the shell', () => {
    const channel = given(LAYOUTS[0]?.channels[0]);
    expect(nominalPlace(roomOf({}, { seating: { rows: [] } }), channel)).toBeNull();
    const outside = roomOf({}, { seating: { rows: [{ id: 'a', y: -1 }] } });
    expect(nominalPlace(outside, channel)).toBeNull();
  });
});

/** A 4 x 5 x 3 m room with ears at 2, 3, 1.1 and one loudspeaker. */
function withSpeaker(layout: string, channel: string, position: Point): Project {
  return roomOf(
    {},
    {
      seating: { rows: [{ id: 'a', seats: 1, y: 3, earHeightM: 1.1 }] },
      speakers: { layout, placed: [{ channel, position }] },
    },
  );
}

const judged = (layout: string, channel: string, position: Point) =>
  given(judgeSpeakers(withSpeaker(layout, channel, position)).speakers[0]);

describe('the verdict on a loudspeaker', () => {
  it('allows half a degree around its window, and no more', () => {
    const centre = (offDeg: number): Point => [2 - 2 * Math.tan((offDeg * Math.PI) / 180), 1, 1.1];
    expect(judged('0+5+0', 'M+000', centre(0.49)).inRange).toBe(true);
    const off = judged('0+5+0', 'M+000', centre(0.51));
    expect(off.inRange).toBe(false);
    // Past the allowance the whole way to the window counts.
    expect(off.azimuthOffDeg).toBeCloseTo(0.51, 6);
  });

  it('goes round the nearer way behind the listener', () => {
    // At -170 degrees a left back loudspeaker (120 to 150) is 40 degrees too far round.
    const angle = (-170 * Math.PI) / 180;
    const behind: Point = [2 - Math.sin(angle), 3 - Math.cos(angle), 1.1];
    expect(judged('0+7+0', 'M+135', behind).azimuthOffDeg).toBeCloseTo(40, 6);
  });

  it('tells elevation apart from azimuth', () => {
    const high = judged('0+5+0', 'M+110', directionPlace(110, 30));
    expect(high.azimuthOffDeg).toBe(0);
    expect(high.elevationOffDeg).toBeCloseTo(15, 6);
    expect(judged('0+5+0', 'M+110', directionPlace(110, 10)).inRange).toBe(true);
  });

  it('on a channel that no layout has is never "in range"', () => {
    expect(judged('0+5+0', 'X+030', [2, 1, 1.1]).inRange).toBe(false);
  });

  it('says which channels are missing', () => {
    const result = judgeSpeakers(withSpeaker('0+5+0', 'M+000', [2, 1, 1.1]));
    expect(result.missing.map((channel) => channel.label)).toEqual([
      'M+030',
      'M-030',
      'M+110',
      'M-110',
    ]);
  });

  it('is not given where there are no seats or no such layout', () => {
    expect(judgeSpeakers(roomOf({}, { seating: { rows: [] } })).speakers).toEqual([]);
    expect(judgeSpeakers(roomOf({}, { speakers: { layout: '9+9+9' } })).layout).toBeNull();
  });
});

/** Place 1 m from the ears of `withSpeaker` at this angle. */
function directionPlace(azimuthDeg: number, elevationDeg: number): Point {
  const ray = directionVector(azimuthDeg, elevationDeg);
  return [EARS[0] + ray[0], EARS[1] + ray[1], EARS[2] + ray[2]];
}

describe('delays and levels', () => {
  const rooms = fc.uniqueArray(point, { minLength: 1, maxLength: 5 }).map((places) =>
    roomOf(
      {},
      {
        seating: { rows: [{ id: 'a', seats: 1, y: 3, earHeightM: 1.1 }] },
        speakers: { placed: places.map((position, i) => ({ channel: `c${i}`, position })) },
      },
    ),
  );

  it('are 0 for the farthest, and bring all others to its time', () => {
    fc.assert(
      fc.property(rooms, (project) => {
        const { speakers } = judgeSpeakers(project);
        const farthest = speakers.reduce((a, b) => (b.distanceM > a.distanceM ? b : a));
        expect(farthest.delayMs).toBe(0);
        expect(farthest.levelDb).toBeCloseTo(0, 12);
        // Air of 20 C: 343.2 m/s.
        const arrivals = speakers.map((s) => s.delayMs + (s.distanceM / 343.2) * 1000);
        for (const arrival of arrivals) expect(arrival).toBeCloseTo(arrivals[0] ?? 0, 9);
      }),
    );
  });

  it('are never negative delays nor raised levels', () => {
    fc.assert(
      fc.property(rooms, (project) => {
        for (const speaker of judgeSpeakers(project).speakers) {
          expect(speaker.delayMs).toBeGreaterThanOrEqual(0);
          expect(speaker.levelDb).toBeLessThanOrEqual(0);
        }
      }),
    );
  });

  it('stay finite for a loudspeaker at the ears themselves', () => {
    const speaker = judged('0+5+0', 'M+000', EARS);
    expect([speaker.delayMs, speaker.levelDb, speaker.distanceM]).toEqual([0, 0, 0]);
  });
});
