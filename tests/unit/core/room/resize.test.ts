import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { applyEdit } from '../../../../core/room/edits';
import type { Project, ShellSize } from '../../../../core/room/project';
import { given, roomOf, type Fields } from '../../support/rooms';

/** A 4 x 5 x 3 m room with `fields`, resized. */
function resized(to: Partial<ShellSize>, room: Fields, rest: Fields): Project {
  const project = roomOf(room, rest);
  return applyEdit(project, { kind: 'size', size: { ...project.room.size, ...to } });
}

const speakersAfter = (to: Partial<ShellSize>, ...positions: readonly number[][]) =>
  resized(
    to,
    {},
    {
      speakers: {
        placed: positions.map((position, i) => ({ channel: `c${i}`, position })),
      },
    },
  ).speakers.placed.map((speaker) => speaker.position);

const solidAfter = (to: Partial<ShellSize>, min: readonly number[], max: readonly number[]) => {
  const [solid] = resized(to, { solids: [{ id: 's', kind: 'other', min, max }] }, {}).room.solids;
  return [given(solid).min, given(solid).max];
};

describe('when the right wall moves out by a metre', () => {
  it('a loudspeaker on it goes along, one on the left wall stays', () => {
    expect(speakersAfter({ width: 5 }, [3.88, 2, 1.1], [0.12, 2, 1.1])).toEqual([
      [4.88, 2, 1.1],
      [0.12, 2, 1.1],
    ]);
  });

  it('the middle of the room stays the middle', () => {
    expect(speakersAfter({ width: 5 }, [2, 0.12, 1.1])).toEqual([[2.5, 0.12, 1.1]]);
  });

  it('a solid on it goes along, one from wall to wall stretches', () => {
    expect(solidAfter({ width: 5 }, [3, 0, 0], [4, 1, 1])).toEqual([
      [4, 0, 0],
      [5, 1, 1],
    ]);
    expect(solidAfter({ width: 5 }, [0, 0, 0], [4, 1, 0.2])).toEqual([
      [0, 0, 0],
      [5, 1, 0.2],
    ]);
    expect(solidAfter({ width: 5 }, [0, 0, 0], [1, 1, 1])).toEqual([
      [0, 0, 0],
      [1, 1, 1],
    ]);
    expect(solidAfter({ width: 5 }, [1.5, 2, 0], [2.5, 3, 3])).toEqual([
      [2, 2, 0],
      [3, 3, 3],
    ]);
  });

  it('the row and the screen keep their places relative to the middle', () => {
    const project = resized(
      { width: 5 },
      {},
      {
        seating: {
          rows: [
            { id: 'a', y: 3, x: 2.2 },
            { id: 'b', y: 4 },
          ],
        },
        screen: { widthM: 2, centreX: 1.8 },
      },
    );
    expect(project.seating.rows.map((row) => row.x)).toEqual([2.7, undefined]);
    expect(project.screen.centreX).toBe(2.3);
  });
});

describe('when the back wall moves', () => {
  it('what hangs on it goes along, the rest keeps its distance from the screen wall', () => {
    expect(speakersAfter({ length: 6.5 }, [2, 4.88, 1.1], [2, 0.12, 1.1], [0.12, 3, 1.1])).toEqual([
      [2, 6.38, 1.1],
      [2, 0.12, 1.1],
      [0.12, 3, 1.1],
    ]);
    expect(solidAfter({ length: 4 }, [0, 4, 0], [1, 5, 3])).toEqual([
      [0, 3, 0],
      [1, 4, 3],
    ]);
  });

  it('rows in the room stay, a row against it goes along', () => {
    const project = resized(
      { length: 6 },
      {},
      {
        seating: {
          rows: [
            { id: 'a', y: 3 },
            { id: 'b', y: 4.7 },
          ],
        },
      },
    );
    expect(project.seating.rows.map((row) => row.y)).toEqual([3, 5.7]);
  });
});

describe('when the ceiling moves', () => {
  it('what hangs under it goes along, what stands on the floor stays', () => {
    expect(speakersAfter({ height: 2.4 }, [1, 1, 2.9], [1, 1, 1.1])).toEqual([
      [1, 1, 2.3],
      [1, 1, 1.1],
    ]);
    expect(solidAfter({ height: 2.4 }, [0, 0, 2.5], [1, 5, 3])).toEqual([
      [0, 0, 1.9],
      [1, 5, 2.4],
    ]);
    expect(solidAfter({ height: 2.4 }, [1, 1, 0], [2, 2, 0.3])).toEqual([
      [1, 1, 0],
      [2, 2, 0.3],
    ]);
  });

  it('the projector and a subwoofer move by the same rules', () => {
    const project = resized(
      { height: 2.5, length: 6 },
      {},
      {
        projector: {
          position: [2, 4.8, 2.8],
          throwRatio: [1, 2],
          verticalOffsetPercent: [0, 0],
          horizontalOffsetPercent: [0, 0],
          lumens: 2000,
        },
        speakers: { subwoofers: [{ id: 's', position: [0.3, 0.3, 0.2] }] },
      },
    );
    expect(project.projector?.position).toEqual([2, 5.8, 2.3]);
    expect(project.speakers.subwoofers[0]?.position).toEqual([0.3, 0.3, 0.2]);
  });
});

describe('a pair', () => {
  it('stays a mirrored pair, wherever it stands and however the width changes', () => {
    const cm = (min: number, max: number) => fc.integer({ min, max }).map((n) => n / 100);
    fc.assert(
      fc.property(cm(150, 900), cm(150, 900), cm(0, 74), (before, after, left) => {
        const project = roomOf(
          { size: { width: before, length: 5, height: 3 } },
          {
            speakers: {
              placed: [
                { channel: 'M+030', position: [left, 1, 1] },
                { channel: 'M-030', position: [Number((before - left).toFixed(2)), 1, 1] },
              ],
            },
          },
        );
        const { placed } = applyEdit(project, {
          kind: 'size',
          size: { width: after, length: 5, height: 3 },
        }).speakers;
        const [l, r] = placed.map((speaker) => speaker.position[0]);
        expect(given(l) + given(r)).toBeCloseTo(after, 4);
      }),
      // Half a metre from the wall in a 4.1 m room: where 4.1 - 0.5 falls below 3.6 in binary.
      { examples: [[4.1, 5, 0.5]] },
    );
  });
});

describe('a room that goes back to its old size', () => {
  it('is as it was, where everything hangs on a wall or stands in the middle', () => {
    const project = roomOf(
      { solids: [{ id: 's', kind: 'soffit', min: [3, 0, 2.5], max: [4, 5, 3] }] },
      {
        speakers: {
          placed: [
            { channel: 'M+030', position: [0.12, 0.2, 1.1] },
            { channel: 'M-030', position: [3.88, 0.2, 1.1] },
            { channel: 'M+000', position: [2, 0.12, 1.1] },
          ],
        },
      },
    );
    const bigger = applyEdit(project, {
      kind: 'size',
      size: { width: 4.6, length: 5.9, height: 3.2 },
    });
    expect(applyEdit(bigger, { kind: 'size', size: project.room.size })).toEqual(project);
  });
});

describe('a patch', () => {
  const rectAfter = (to: Partial<ShellSize>, face: string, rect: readonly number[]) =>
    resized(to, { patches: [{ id: 'p', face, rect, finish: 'door-solid' }] }, {}).room.patches[0]
      ?.rect;

  it('stretches with the wall that it covers from end to end', () => {
    expect(rectAfter({ length: 6 }, 'left', [0, 0, 5, 1])).toEqual([0, 0, 6, 1]);
  });

  it('goes along with the corner that it stands in', () => {
    expect(rectAfter({ length: 6 }, 'right', [4, 0, 5, 2])).toEqual([5, 0, 6, 2]);
  });

  it('stays in the middle of the screen wall', () => {
    expect(rectAfter({ width: 5 }, 'front', [1, 1, 3, 2])).toEqual([1.5, 1, 3.5, 2]);
  });
});

describe('a room that is made very small and large again', () => {
  it('has what hung on its walls on them again, and nothing far outside', () => {
    const there = roomOf(
      { size: { width: 4.2, length: 6.4, height: 2.4 } },
      {
        seating: {
          rows: [
            { id: 'a', seats: 1, y: 3.6 },
            { id: 'b', seats: 1, y: 5.2 },
          ],
        },
        speakers: {
          placed: [
            { channel: 'M+030', position: [0.425, 0.7, 1.1] },
            { channel: 'M-030', position: [3.775, 0.7, 1.1] },
          ],
          subwoofers: [{ id: 'sub', position: [0.5, 0.4, 0.25] }],
        },
      },
    );
    const small = applyEdit(there, { kind: 'size', size: { width: 1, length: 3, height: 2.4 } });
    const back = applyEdit(small, { kind: 'size', size: there.room.size });
    expect(back.speakers).toEqual(there.speakers);
    expect(back.seating.rows.map((row) => row.y)).toEqual([3.6, 5.2]);
  });
});
