import { describe, expect, it } from 'vitest';
import { applyEdit, editName, type Edit } from '../../../../core/room/edits';
import { openRoom, saveRoom } from '../../../../core/room/open-room';
import { deepFreeze } from '../../support/freeze';
import { example, roomOf } from '../../support/rooms';

const basement = () => deepFreeze(example('basement-bay'));

/** One edit of each kind that changes the basement bay, with its name in the history. */
const CHANGES: readonly (readonly [string, Edit])[] = [
  ['room width', { kind: 'size', size: { width: 4, length: 6.4, height: 2.4 } }],
  ['room length', { kind: 'size', size: { width: 4.2, length: 6, height: 2.4 } }],
  ['room size', { kind: 'size', size: { width: 4, length: 6, height: 2.4 } }],
  ['back finish', { kind: 'finish', face: 'back', finish: 'panel-12-frame' }],
  ['place of M+110', { kind: 'speaker', channel: 'M+110', position: [0.12, 4.2, 1.1] }],
  [
    'two subwoofers',
    {
      kind: 'subwoofers',
      what: 'two subwoofers',
      subwoofers: [
        { id: 'sub-1', position: [2.1, 0.2, 0.2] },
        { id: 'sub-2', position: [2.1, 6.2, 0.2], delayMs: 3, levelDb: -3, inverted: true },
      ],
    },
  ],
  ['loudspeaker places', { kind: 'layout', layout: '0+5+0', placed: [] }],
  ['layout 0+7+0', { kind: 'layout', layout: '0+7+0', placed: [] }],
  ['seat row', { kind: 'row', id: 'row-1', change: { y: 3.4 } }],
  ['reference place', { kind: 'reference', reference: { row: 'row-2', seat: 1 } }],
  ['reference place', { kind: 'reference', reference: { row: 'row-1', middle: true } }],
  ['screen', { kind: 'screen', change: { widthM: 2.2 } }],
  ['screen', { kind: 'screen', change: { soundThrough: true } }],
  ['air', { kind: 'air', change: { temperatureC: 18 } }],
  ['decay target', { kind: 'target', target: { kind: 'custom', seconds: { '500': 0.3 } } }],
  ['room name', { kind: 'name', name: 'Den' }],
  [
    'new cloth on the back wall',
    {
      kind: 'several',
      what: 'new cloth on the back wall',
      edits: [
        {
          kind: 'own-finish',
          finish: { id: 'cloth-1', name: 'Cloth', absorption: { '500': 0.3 }, source: 'invented' },
        },
        { kind: 'finish', face: 'back', finish: 'cloth-1' },
      ],
    },
  ],
];

describe('an edit', () => {
  it.each(CHANGES)('"%s" changes a copy and leaves the project as it was', (_, edit) => {
    const before = basement();
    const after = applyEdit(before, edit);
    expect(after).not.toEqual(before);
    expect(before).toEqual(example('basement-bay'));
    expect(openRoom(saveRoom(after)).ok).toBe(true);
  });

  it.each(CHANGES)('"%s" is called so in the history', (name, edit) => {
    expect(editName(edit, basement())).toBe(name);
  });

  it.each(CHANGES)(
    '"%s" done twice changes nothing more: the same project comes back',
    (_, edit) => {
      const once = deepFreeze(applyEdit(basement(), edit));
      expect(applyEdit(once, edit)).toBe(once);
    },
  );

  it('touches only its own part', () => {
    const before = basement();
    const after = applyEdit(before, { kind: 'row', id: 'row-1', change: { y: 3.4 } });
    expect(after.seating.rows).toEqual([
      { id: 'row-1', seats: 3, y: 3.4, pitchM: 0.75, riserM: 0, earHeightM: 1.1, eyeHeightM: 1.2 },
      before.seating.rows[1],
    ]);
    expect(after.room).toBe(before.room);
    expect(after.speakers).toBe(before.speakers);
  });

  it('places a loudspeaker that was missing at the end of the list', () => {
    const edit: Edit = { kind: 'speaker', channel: 'M+000', position: [2, 0.1, 1.1] };
    expect(applyEdit(roomOf(), edit).speakers.placed).toEqual([
      { channel: 'M+000', position: [2, 0.1, 1.1] },
    ]);
  });

  it('keeps fields that the program does not know on what it moves', () => {
    const project = roomOf(
      {},
      { speakers: { placed: [{ channel: 'M+000', position: [2, 1, 1], model: 'X' }] } },
    );
    const edit: Edit = { kind: 'speaker', channel: 'M+000', position: [2, 0.1, 1.1] };
    expect(applyEdit(project, edit).speakers.placed[0]).toEqual({
      channel: 'M+000',
      position: [2, 0.1, 1.1],
      model: 'X',
    });
  });

  it('that takes seats out of the reference row leaves a room that opens again', () => {
    const project = roomOf(
      {},
      { seating: { rows: [{ id: 'a', y: 3, seats: 4 }], reference: { row: 'a', seat: 4 } } },
    );
    const after = applyEdit(project, { kind: 'row', id: 'a', change: { seats: 2 } });
    expect(openRoom(saveRoom(after)).ok).toBe(true);
  });

  it.each([
    [3, { seat: 2 }, 4, { middle: true }],
    [3, { seat: 2 }, 5, { seat: 3 }],
    [3, { seat: 1 }, 4, { seat: 1 }],
    [4, { middle: true }, 3, { middle: true }],
    [4, { seat: 4 }, 2, { seat: 2 }],
  ])(
    'to another number of seats keeps the middle the middle: of %i %j, of %i %j',
    (seats, from, next, to) => {
      const rows = [{ id: 'a', y: 3, seats }];
      const project = roomOf({}, { seating: { rows, reference: { row: 'a', ...from } } });
      const after = applyEdit(project, { kind: 'row', id: 'a', change: { seats: next } });
      expect(after.seating.reference).toEqual({ row: 'a', ...to });
      expect(openRoom(saveRoom(after)).ok).toBe(true);
    },
  );

  it('of the reference from a seat to a middle keeps fields that the program does not know', () => {
    const rows = [{ id: 'a', y: 3, seats: 4 }];
    const reference = { row: 'a', seat: 1, note: 'mine' };
    const project = roomOf({}, { seating: { rows, reference } });
    const middle: Edit = { kind: 'reference', reference: { row: 'a', middle: true } };
    const after = applyEdit(project, middle);
    expect(after.seating.reference).toEqual({ row: 'a', middle: true, note: 'mine' });
    const back = applyEdit(after, { kind: 'reference', reference: { row: 'a', seat: 1 } });
    expect(back).toEqual(project);
  });
});

describe('a loudspeaker that is turned', () => {
  it.each([
    [181, 0, -179, 0],
    [-180.1, 0, 179.9, 0],
    [180, 0, 180, 0],
    [540, 95, 180, 90],
  ])(
    'to %f and %f degrees is held at %f and %f, and opens again',
    (turn, tilt, azimuth, elevation) => {
      const aim = { azimuthDeg: turn, elevationDeg: tilt };
      const turned = applyEdit(basement(), { kind: 'mounting', channel: 'M+000', change: { aim } });
      const found = turned.speakers.placed.find(({ channel }) => channel === 'M+000')?.aim;
      expect(found && 'azimuthDeg' in found ? found.azimuthDeg : NaN).toBeCloseTo(azimuth, 9);
      expect(found && 'azimuthDeg' in found ? found.elevationDeg : NaN).toBe(elevation);
      expect(openRoom(saveRoom(turned)).ok).toBe(true);
    },
  );
});

describe('several edits as one', () => {
  it('build on each other: a finish is there before a wall asks for it', () => {
    const finish = { id: 'cloth-1', name: 'Cloth', absorption: { '500': 0.3 }, source: 'invented' };
    const after = applyEdit(basement(), {
      kind: 'several',
      what: 'cloth',
      edits: [
        { kind: 'own-finish', finish },
        { kind: 'finish', face: 'back', finish: 'cloth-1' },
        { kind: 'finish', face: 'left', finish: 'cloth-1' },
      ],
    });
    expect(after.finishesCustom).toContainEqual(finish);
    expect(after.room.finishes).toMatchObject({ back: 'cloth-1', left: 'cloth-1' });
    const opened = openRoom(saveRoom(after));
    expect(opened.ok && opened.project).toEqual(after);
  });

  it('that undo each other leave the very project', () => {
    const before = basement();
    const there: Edit = { kind: 'name', name: 'Den' };
    const back: Edit = { kind: 'name', name: before.name };
    expect(applyEdit(before, { kind: 'several', what: 'nothing', edits: [there, back] })).toBe(
      before,
    );
  });
});
