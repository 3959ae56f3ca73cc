import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { applyEdit } from '../../../../core/room/edits';
import { openRoom, saveRoom } from '../../../../core/room/open-room';
import type { Mount, PlacedSpeaker, Point, Project } from '../../../../core/room/project';
import { defaultMount, speakerBox, USUAL_BOX_M } from '../../../../core/speakers/box';
import { arbitraryProject } from '../../support/arbitrary-project';
import { faultsOf, fileOf, given, roomOf, type Fields } from '../../support/rooms';

/** A 4 x 5 x 3 m room with ears at 2, 3, 1.1 and a picture of 2.4 x 1.35 m from 0.7 m up. */
const room = (placed: readonly Fields[] = [], shell: Fields = {}): Project =>
  roomOf(shell, {
    seating: { rows: [{ id: 'a', seats: 1, y: 3, earHeightM: 1.1 }] },
    speakers: { placed },
  });

const boxOf = (speaker: PlacedSpeaker, shell: Fields = {}) => speakerBox(room([], shell), speaker);

const at = (position: Point, mount?: Mount, boxM?: Point): PlacedSpeaker => ({
  channel: 'M+110',
  position,
  ...(mount ? { mount } : {}),
  ...(boxM ? { boxM } : {}),
});

const soffit = { id: 'duct', kind: 'soffit', min: [0, 0, 2.5], max: [0.6, 5, 3] };
const stage = { id: 'stage', kind: 'stage', min: [0, 0, 0], max: [4, 1, 0.3] };

describe('the mount that follows from the place', () => {
  it.each([
    ['12 cm off the left wall', [0.12, 3.7, 1.1], 'on-wall'],
    ['on the left wall', [0, 3.7, 1.1], 'in-wall'],
    ['before the picture', [2, 0.12, 1.1], 'on-wall'],
    ['on the front wall beside the picture', [0.4, 0.12, 1.1], 'on-wall'],
    ['under the ceiling', [2, 2, 2.9], 'ceiling'],
    ['in the middle of the floor', [1, 1, 1.1], 'stand'],
    ['low in the room', [1, 1, 0.1], 'stand'],
    ['on the side of the duct', [0.7, 2, 2.7], 'soffit'],
    ['under the duct', [0.45, 2, 2.4], 'soffit'],
  ] as const)('%s', (_, position, mount) => {
    expect(defaultMount(room([], { solids: [soffit] }), position)).toBe(mount);
  });
});

describe('the box of a loudspeaker', () => {
  it('on a wall reaches from its baffle back to the wall', () => {
    const { cabinet, inRoom, looks, axis, sunkM } = boxOf(at([0.12, 3, 1.1]));
    expect([axis, looks, sunkM]).toEqual([0, 1, 0]);
    expect(inRoom).toEqual(cabinet);
    expect(cabinet.min.map((v) => +v.toFixed(6))).toEqual([0, 2.9, 0.925]);
    expect(cabinet.max.map((v) => +v.toFixed(6))).toEqual([0.12, 3.1, 1.275]);
  });

  it('with a stated depth says how far it would go into the wall', () => {
    const box = boxOf(at([3.88, 3, 1.1], 'on-wall', [0.2, 0.3, 0.25]));
    expect(box.sunkM).toBeCloseTo(0.13, 9);
    expect(box.inRoom?.max[0]).toBe(4);
    expect(box.cabinet.max[0]).toBeCloseTo(4.13, 9);
  });

  it('in a wall, or flush in a ceiling, takes nothing of the room', () => {
    expect(boxOf(at([0, 3, 1.1], 'in-wall')).inRoom).toBeNull();
    expect(boxOf(at([2, 3, 3], 'ceiling')).inRoom).toBeNull();
    expect(boxOf(at([2, 0, 1.1], 'behind-screen')).inRoom).toBeNull();
  });

  it('on a stand counts the floor below it, or what it stands on', () => {
    expect(boxOf(at([1, 1.5, 1.1])).inRoom?.min[2]).toBe(0);
    const raised = boxOf(at([1, 0.6, 1.1]), { solids: [stage] });
    expect(raised.inRoom?.min[2]).toBe(0.3);
    // It looks along the longer way to the seat: to the back of the room.
    expect([raised.axis, raised.looks]).toEqual([1, 1]);
  });

  it('on a stand at 45 degrees looks along the room, on either side of the seat', () => {
    // Differences of these figures are not quite alike in binary.
    const left = boxOf(at([1.2, 2.2, 1.1]));
    const right = boxOf(at([2.8, 2.2, 1.1]));
    expect([left.axis, left.looks]).toEqual([1, 1]);
    expect([right.axis, right.looks]).toEqual([1, 1]);
  });

  it('of a size that nobody stated is cut to the shell, a stated one is not', () => {
    expect(boxOf(at([0.12, 3, 0.1], 'on-wall')).cabinet.min[2]).toBe(0);
    expect(boxOf(at([0.12, 3, 0.1], 'on-wall', USUAL_BOX_M)).cabinet.min[2]).toBeCloseTo(-0.075, 9);
  });

  it('mirrored is the mirrored box', () => {
    const mirrored = ([x, y, z]: Point): Point => [4 - x, y, z];
    const place = fc.tuple(
      fc.integer({ min: 1, max: 399 }).map((n) => n / 100),
      fc.integer({ min: 1, max: 499 }).map((n) => n / 100),
      fc.integer({ min: 1, max: 299 }).map((n) => n / 100),
    );
    fc.assert(
      fc.property(place, (position) => {
        // Half way between two walls either may carry it.
        fc.pre(Math.abs(position[0] - 2) > 0.02);
        const there = boxOf(at(position));
        const here = boxOf(at(mirrored(position)));
        fc.pre(there.axis === here.axis);
        expect(here.mount).toBe(there.mount);
        expect(here.cabinet.min[0]).toBeCloseTo(4 - there.cabinet.max[0], 9);
        expect(here.cabinet.max[2]).toBeCloseTo(there.cabinet.max[2], 9);
      }),
    );
  });

  it('has no corner that is not a number, whatever the room', () => {
    fc.assert(
      fc.property(arbitraryProject, (project) => {
        for (const speaker of project.speakers.placed) {
          const { cabinet, inRoom } = speakerBox(project, speaker);
          for (const box of [cabinet, inRoom ?? cabinet]) {
            box.min.forEach((low, axis) => expect(low).toBeLessThanOrEqual(given(box.max[axis])));
          }
        }
      }),
      { numRuns: 200 },
    );
  });
});

describe('how a loudspeaker is held', () => {
  const placed = { channel: 'M+110', position: [0.12, 3.7, 1.1] };

  it('can be changed and taken back, and the room opens again', () => {
    const project = room([placed]);
    const held = applyEdit(project, {
      kind: 'mounting',
      channel: 'M+110',
      change: {
        mount: 'in-wall',
        pinned: true,
        boxM: [0.2, 0.3, 0.1],
        aim: { azimuthDeg: 90, elevationDeg: 0 },
      },
    });
    expect(held.speakers.placed[0]).toMatchObject({ mount: 'in-wall', pinned: true });
    expect(openRoom(saveRoom(held))).toEqual({ ok: true, project: held });
    const change = { mount: null, pinned: null, boxM: null, aim: null };
    expect(applyEdit(held, { kind: 'mounting', channel: 'M+110', change })).toEqual(project);
  });

  it.each([
    [{ mount: 'glued' }, 'mount', 'one of on-wall'],
    [{ pinned: 'yes' }, 'pinned', 'true or false'],
    [{ boxM: [0, 1, 1] }, 'boxM[0]', 'a length in metres from 0.02 to 3'],
    [{ aim: { azimuthDeg: 500 } }, 'aim', '"azimuthDeg"'],
  ] as const)('%j is refused with its place', (fields, path, expected) => {
    const faults = faultsOf(fileOf({}, { speakers: { placed: [{ ...placed, ...fields }] } }));
    expect(faults[0]?.path).toBe(`speakers.placed[0].${path}`);
    expect(faults[0]?.sentence).toContain(expected);
  });
});
