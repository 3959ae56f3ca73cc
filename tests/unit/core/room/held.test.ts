import { describe, expect, it } from 'vitest';
import { applyEdit, type Edit } from '../../../../core/room/edits';
import { movedSolid } from '../../../../core/room/move-solid';
import { openRoom, saveRoom } from '../../../../core/room/open-room';
import type { Project } from '../../../../core/room/project';
import { given, only, roomOf, type Fields } from '../../support/rooms';

const resized = (project: Project, to: Partial<Project['room']['size']>): Project =>
  applyEdit(project, { kind: 'size', size: { ...project.room.size, ...to } });

const opensAgain = (project: Project): void =>
  expect(openRoom(saveRoom(project))).toEqual({ ok: true, project });

const wide = (rest: Fields, room: Fields = {}): Project =>
  roomOf({ size: { width: 30, length: 8, height: 3 }, ...room }, rest);

describe('a room made narrow by far opens again', () => {
  it('with a subwoofer by the left wall', () => {
    const room = wide({ speakers: { subwoofers: [{ id: 's', position: [1, 1, 0.2] }] } });
    const after = resized(room, { width: 4 });
    expect(only(after.speakers.subwoofers).position[0]).toBe(-10);
    opensAgain(after);
  });

  it('with loudspeakers, rows, screen, projector, fittings and panels that stand outside', () => {
    const room = wide(
      {
        speakers: { placed: [{ channel: 'M+030', position: [2, 1, 1] }] },
        seating: { rows: [{ id: 'a', y: 3, x: 2 }] },
        screen: { widthM: 2, centreX: 2 },
        projector: {
          position: [2, 4, 2],
          throwRatio: [1, 2],
          verticalOffsetPercent: [0, 0],
          horizontalOffsetPercent: [0, 0],
          lumens: 1000,
        },
      },
      {
        solids: [{ id: 'b', kind: 'other', min: [0.7, 1, 0], max: [1.7, 2, 1] }],
        patches: [{ id: 'p', face: 'back', rect: [0.7, 0, 1.7, 1], finish: 'panel-12-frame' }],
      },
    );
    const after = resized(room, { width: 1 });
    expect(only(after.room.solids)).toMatchObject({ min: [-10, 1, 0], max: [-9, 2, 1] });
    opensAgain(after);
  });
});

describe('what is thinner than the grain of lengths', () => {
  const thin = roomOf({
    solids: [{ id: 's', kind: 'other', min: [1, 1, 1], max: [1.000004, 2, 2] }],
    patches: [{ id: 'p', face: 'back', rect: [1, 1, 1.000004, 2], finish: 'panel-12-frame' }],
  });

  it('keeps a body when the room is resized', () => {
    const after = resized(thin, { length: 7 });
    const { min, max } = only(after.room.solids);
    expect(max[0]).toBeGreaterThan(min[0]);
    opensAgain(after);
  });

  it('keeps a body when it is moved', () => {
    const solid = movedSolid(only(thin.room.solids), [0.5, 0, 0], thin.room, 0.005);
    opensAgain(applyEdit(thin, { kind: 'solids', solids: [solid], what: 'move' }));
  });
});

describe('an edit that says more than a file takes', () => {
  const room = wide({
    speakers: {
      placed: [{ channel: 'M+000', position: [2, 1, 1] }],
      subwoofers: [{ id: 's', position: [1, 1, 0.2] }],
    },
    seating: { rows: [{ id: 'a', y: 3 }] },
  });
  it.each<readonly [string, Edit]>([
    ['a wall too far', { kind: 'size', size: { width: 300, length: 0, height: 3 } }],
    ['a loudspeaker far out', { kind: 'speaker', channel: 'M+000', position: [1e6, -1e6, 3] }],
    ['a huge box', { kind: 'mounting', channel: 'M+000', change: { boxM: [9, 0, 0.3] } }],
    ['a subwoofer far out', { kind: 'subwoofer', id: 's', position: [0, 99, 0] }],
    [
      'a subwoofer too loud and too late',
      {
        kind: 'subwoofers',
        subwoofers: [{ id: 's', position: [1, 1, 0.2], delayMs: 99, levelDb: 99 }],
        what: 'drive',
      },
    ],
    ['a row far out', { kind: 'row', id: 'a', change: { y: 900, riserM: -1, earHeightM: 9 } }],
    ['a screen of no width', { kind: 'screen', change: { widthM: 0, bottomM: -1, gain: 99 } }],
    [
      'the air of another planet',
      { kind: 'air', change: { temperatureC: 400, humidityPercent: 0 } },
    ],
    [
      'a box that is longer than the reach of places',
      {
        kind: 'solids',
        solids: [{ id: 'b', kind: 'other', min: [0, 5, 1], max: [70, 5, 2], finish: 'gyp13-stud' }],
        what: 'box',
      },
    ],
  ])('%s is held within what it takes', (_, edit) => {
    const after = applyEdit(room, edit);
    expect(after).not.toEqual(room);
    opensAgain(after);
  });

  it('leaves what is within untouched, object for object', () => {
    const after = applyEdit(room, { kind: 'name', name: 'Den' });
    expect(after.room).toBe(room.room);
    expect(after.speakers).toBe(room.speakers);
    expect(given(after.seating.rows[0])).toBe(room.seating.rows[0]);
  });
});
