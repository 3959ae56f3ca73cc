import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { isSamePlace, referencePlace } from '../../../../core/room/seats';
import type { Aim, Point, Project } from '../../../../core/room/project';
import { aimVector, coverage } from '../../../../core/speakers/aim';
import { atSeats } from '../../../../core/speakers/at-seats';
import { judgeSpeakers } from '../../../../core/speakers/judge';
import { arbitraryProject } from '../../support/arbitrary-project';
import { given, notFinite, only, roomOf, type Fields } from '../../support/rooms';

/** A 4 x 5 x 3 m room; ears of three seats at 1.2, 2 and 2.8, 3, 1.1; the middle one is the reference. */
const room = (placed: readonly Fields[], layout = '0+5+0'): Project =>
  roomOf(
    {},
    {
      seating: {
        rows: [{ id: 'a', seats: 3, y: 3, earHeightM: 1.1, pitchM: 0.8 }],
        reference: { row: 'a', seat: 2 },
      },
      speakers: { layout, placed },
    },
  );

const LEFT = { channel: 'M+110', position: [0, 3, 1.1] };

describe('the table of channels and seats', () => {
  it('compares every seat with the reference seat', () => {
    // Ears 1.2, 2.0 and 2.8 m from the loudspeaker; a metre is worth 2.914 ms in air of 20 C.
    const { cells } = atSeats(room([LEFT]));
    expect(cells.map(({ seat }) => seat)).toEqual([1, 2, 3]);
    const [near, here, far] = cells.map(({ arrivalMs, levelDb }) => [arrivalMs, levelDb]);
    expect(here).toEqual([0, 0]);
    expect(near?.[0]).toBeCloseTo(-0.8 * 2.914, 3);
    expect(far?.[0]).toBeCloseTo(0.8 * 2.914, 3);
    // Inverse distance law: 20 lg (2 / 1.2) = 4.437 dB, 20 lg (2 / 2.8) = -2.923 dB.
    expect(near?.[1]).toBeCloseTo(4.437, 3);
    expect(far?.[1]).toBeCloseTo(-2.923, 3);
  });

  it('says how far outside its window each seat hears a channel', () => {
    // The centre is 3 m ahead of the middle seat: 14.9 degrees to the side for its neighbours.
    const { cells, channels, seats } = atSeats(room([{ channel: 'M+000', position: [2, 0, 1.1] }]));
    expect(cells.map((cell) => +cell.outsideDeg.toFixed(2))).toEqual([14.93, 0, 14.93]);
    expect(only(channels).worstOutsideDeg).toBeCloseTo(14.93, 2);
    expect(seats.map((seat) => seat.channelsOutside)).toEqual([1, 0, 1]);
  });

  it('spreads nothing at the reference seat, and the channels apart at the others', () => {
    const { seats, channels } = atSeats(room([LEFT, { channel: 'M-110', position: [4, 3, 1.1] }]));
    expect(seats[1]).toEqual({ row: 'a', seat: 2, arrivalMs: 0, levelDb: 0, channelsOutside: 2 });
    expect(seats[0]?.arrivalMs).toBeCloseTo(1.6 * 2.914, 2);
    expect(seats[0]?.levelDb).toBeCloseTo(4.437 + 2.923, 3);
    expect(channels[0]?.levelDb[1]).toBeCloseTo(4.437, 3);
    expect(channels[0]?.arrivalMs[0]).toBeCloseTo(-0.8 * 2.914, 3);
  });

  it('agrees with the verdict at the reference seat, and has finite figures, in any room', () => {
    fc.assert(
      fc.property(arbitraryProject, (project) => {
        const table = atSeats(project);
        expect(notFinite(table)).toEqual([]);
        const reference = referencePlace(project);
        if (!reference) return;
        const here = table.cells.filter((cell) => isSamePlace(cell, reference));
        const judged = judgeSpeakers(project).speakers;
        expect(here.map((cell) => cell.azimuthDeg)).toEqual(judged.map((one) => one.azimuthDeg));
        for (const cell of here) expect([cell.arrivalMs, Math.abs(cell.levelDb)]).toEqual([0, 0]);
      }),
      { numRuns: 150 },
    );
  });
});

describe('where a loudspeaker looks', () => {
  const aimed = (position: Point, aim?: Aim): ReturnType<typeof coverage> => {
    const project = room([{ channel: 'M+000', position, ...(aim ? { aim } : {}) }]);
    return coverage(project, given(project.speakers.placed[0]));
  };

  it('is the reference seat where nothing is said', () => {
    const [left, middle, right] = aimed([2, 0, 1.1]);
    expect(middle?.offAxisDeg).toBeCloseTo(0, 5);
    // Seat 1 sits on the left of who faces the screen: on the right of the loudspeaker.
    expect(left?.horizontalDeg).toBeCloseTo(-14.93, 2);
    expect(right?.horizontalDeg).toBeCloseTo(14.93, 2);
    expect(left?.verticalDeg).toBeCloseTo(0, 9);
  });

  it('is a seat that is named, or the reference seat where that one is gone', () => {
    expect(aimed([2, 0, 1.1], { seat: { row: 'a', seat: 1 } })[0]?.offAxisDeg).toBeCloseTo(0, 5);
    expect(aimed([2, 0, 1.1], { seat: { row: 'z', seat: 9 } })[1]?.offAxisDeg).toBeCloseTo(0, 5);
  });

  it('of a loudspeaker in a wall is straight out of it, unless the file says otherwise', () => {
    const inWall = { channel: 'M+110', position: [0, 4, 1.1] as const, mount: 'in-wall' as const };
    const project = room([inWall]);
    expect(aimVector(project, inWall)).toEqual([1, 0, 0]);
    const aim = { azimuthDeg: 180, elevationDeg: 0 };
    expect(aimVector(project, { ...inWall, aim })[1]).toBeCloseTo(1, 9);
  });

  it('is a direction of the room: 180 degrees from the screen to the seats, -90 straight down', () => {
    const along = aimed([2, 0, 2.1], { azimuthDeg: 180, elevationDeg: 0 });
    expect(along[1]?.horizontalDeg).toBeCloseTo(0, 9);
    expect(along[1]?.verticalDeg).toBeCloseTo(-18.43, 2);
    const down = aimed([2, 3, 3], { azimuthDeg: 0, elevationDeg: -90 });
    expect(down[1]?.offAxisDeg).toBeCloseTo(0, 5);
    expect(down[0]?.offAxisDeg).toBeCloseTo(22.83, 2);
  });

  it('is a unit vector, and angles have their limits, in any room', () => {
    fc.assert(
      fc.property(arbitraryProject, (project) => {
        for (const speaker of project.speakers.placed) {
          expect(Math.hypot(...aimVector(project, speaker))).toBeCloseTo(1, 9);
          for (const off of coverage(project, speaker)) {
            expect(Math.abs(off.horizontalDeg)).toBeLessThanOrEqual(180);
            expect(Math.abs(off.verticalDeg)).toBeLessThanOrEqual(90);
            // cos(off) = cos(horizontal) cos(vertical)
            const cos = (deg: number): number => Math.cos((deg * Math.PI) / 180);
            expect(cos(off.horizontalDeg) * cos(off.verticalDeg)).toBeCloseTo(
              cos(off.offAxisDeg),
              6,
            );
          }
        }
      }),
      { numRuns: 150 },
    );
  });
});
