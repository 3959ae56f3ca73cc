import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { anotherPlace } from '../../../../core/bass/another';
import { obstacleOf } from '../../../../core/bass/obstacles';
import { LEAST_STEP_M, subwooferPlaces } from '../../../../core/bass/places';
import { carried } from '../../../../core/scene/stand';
import type { Point, Project } from '../../../../core/room/project';
import { seatsOf } from '../../../../core/room/seats';
import { arbitraryProject } from '../../support/arbitrary-project';
import { example, roomOf } from '../../support/rooms';

/** 4 x 5 x 3 m with one seat in the middle and a small picture high up. */
const EMPTY = {
  seating: { rows: [{ id: 'a', seats: 1, y: 2.5 }] },
  screen: { widthM: 1, bottomM: 1 },
};

const inRoom = (solids: readonly unknown[] = [], patches: readonly unknown[] = [], rest = EMPTY) =>
  subwooferPlaces(roomOf({ solids, patches }, rest), { stepM: 0.6 });

const BOX: Point = [0.4, 0.4, 0.4];

const whyAt = (project: Project, x: number, y: number) => obstacleOf(project, [x, y, 0.2], BOX);

describe('places along the walls', () => {
  it('go around the room from the front left corner, each corner once, midpoints among them', () => {
    const { allowed, forbidden } = inRoom();
    expect(forbidden).toEqual([]);
    const front = allowed.filter(([, y]) => y === 0.2).map(([x]) => x);
    // 3.6 m from corner to corner: three whole steps each way from the middle end on the corners.
    expect(front).toEqual([0.2, 0.8, 1.4, 2, 2.6, 3.2, 3.8]);
    // 4.6 m: three steps of 0.6 m each way, then 0.5 m to the corner.
    const right = allowed.filter(([x]) => x === 3.8).map(([, y]) => y);
    expect(right).toEqual([0.2, 0.7, 1.3, 1.9, 2.5, 3.1, 3.7, 4.3, 4.8]);
    expect(allowed.slice(0, 8)).toEqual([...front.map((x) => [x, 0.2, 0.2]), [3.8, 0.7, 0.2]]);
    expect(allowed).toHaveLength(2 * 7 + 2 * 7);
    expect(new Set(allowed.map(String)).size).toBe(allowed.length);
  });

  it('leave out the last step where the corner is nearer than half of it', () => {
    const { allowed } = subwooferPlaces(roomOf({}, EMPTY), { stepM: 0.85 });
    // 0.95, 0.1 from the corner at 0.2 after two steps of 0.85: left out.
    expect(allowed.filter(([, y]) => y === 0.2).map(([x]) => x)).toEqual([0.2, 1.15, 2, 2.85, 3.8]);
  });

  it('stand half a box off wall and floor and to the millimetre', () => {
    const project = roomOf({ size: { width: 4.0291, length: 5.0333, height: 2.4 } }, EMPTY);
    const { allowed } = subwooferPlaces(project, { stepM: 0.37, boxM: [0.35, 0.35, 0.35] });
    expect(allowed[0]).toEqual([0.175, 0.175, 0.175]);
    for (const at of allowed.flat())
      expect(Math.abs(at * 1000 - Math.round(at * 1000))).toBeLessThan(1e-9);
  });

  it('are none where the box does not fit, and do not run away with a step of nothing', () => {
    const low = roomOf({ size: { width: 4, length: 5, height: 1 } }, EMPTY);
    expect(subwooferPlaces(low, { stepM: 0.5, boxM: [1.1, 1.1, 1.1] })).toEqual({
      allowed: [],
      forbidden: [],
    });
    const none = subwooferPlaces(roomOf({}, EMPTY), { stepM: 0 });
    expect(none).toEqual(subwooferPlaces(roomOf({}, EMPTY), { stepM: LEAST_STEP_M }));
  });

  it('are mirrored in a mirrored room', () => {
    const solid = { id: 'c', kind: 'closet', finish: 'gyp13-stud' };
    const door = { face: 'back', finish: 'door-solid' };
    const here = inRoom(
      [{ ...solid, min: [0, 3.5, 0], max: [1, 5, 3] }],
      [{ ...door, id: 'door-1', rect: [2.9, 0, 3.7, 2] }],
    );
    const there = inRoom(
      [{ ...solid, min: [3, 3.5, 0], max: [4, 5, 3] }],
      [{ ...door, id: 'door-1', rect: [0.3, 0, 1.1, 2] }],
    );
    const mirrored = here.allowed.map(([x, y, z]) =>
      [4 - x, y, z].map((at) => at.toFixed(3)).join(),
    );
    expect(mirrored.sort()).toEqual(
      there.allowed.map((place) => place.map((at) => at.toFixed(3)).join()).sort(),
    );
    expect(here.forbidden.length).toBeGreaterThan(3);
  });
});

describe('a place is forbidden', () => {
  it('in a fitting, with the whole box, but not beside it or under what hangs above it', () => {
    const solids = (min: readonly number[], max: readonly number[]) =>
      roomOf({ solids: [{ id: 's', kind: 'other', min, max }] }, EMPTY);
    expect(whyAt(solids([0, 0, 0], [4, 0.5, 0.2]), 2, 0.2)).toEqual({ kind: 'fitting', id: 's' });
    // Its centre is free, its side is not.
    expect(whyAt(solids([1, 0, 0], [2, 0.5, 3]), 2.1, 0.2)).toEqual({ kind: 'fitting', id: 's' });
    expect(whyAt(solids([1, 0, 0], [2, 0.5, 3]), 2.2, 0.2)).toBeNull();
    expect(whyAt(solids([0, 0, 0.4], [4, 1, 3]), 2, 0.2)).toBeNull();
    expect(whyAt(solids([0, 0, 0.39], [4, 1, 3]), 2, 0.2)).toEqual({ kind: 'fitting', id: 's' });
  });

  it('outside the shell', () => {
    const project = roomOf({}, EMPTY);
    expect(whyAt(project, 0.1, 1)).toEqual({ kind: 'outside' });
    expect(whyAt(project, 2, 4.9)).toEqual({ kind: 'outside' });
    expect(whyAt(project, 5, 1)).toEqual({ kind: 'outside' });
    expect(obstacleOf(project, [2, 4.8, 2.9], BOX)).toEqual({ kind: 'outside' });
  });

  // An opening of 0.8 m from 1 to 1.8 m along its wall: the leaf swings 0.8 m into the room.
  it.each([
    ['front', [1.6, 0.7], [2.05, 0.9], [1.4, 1.05], [1.9, 0.9]],
    ['back', [1.6, 4.3], [2.05, 4.1], [1.4, 3.95], [1.9, 4.1]],
    ['left', [0.7, 1.6], [0.9, 2.05], [1.05, 1.4], [0.9, 1.9]],
    ['right', [3.3, 1.6], [3.1, 2.05], [2.95, 1.4], [3.1, 1.9]],
  ] as const)('where a door in the %s wall swings', (face, within, beside, beyond, corner) => {
    const patch = { id: 'door-1', face, rect: [1, 0, 1.8, 2], finish: 'door-solid' };
    const free = { ...EMPTY, seating: { rows: [] } };
    const project = roomOf({ patches: [patch] }, free);
    expect(whyAt(project, within[0], within[1])).toEqual({ kind: 'door', id: 'door-1' });
    expect(whyAt(project, beside[0], beside[1])).toBeNull();
    // Farther from the hinges than the leaf is wide.
    expect(whyAt(project, corner[0], corner[1])).toBeNull();
    expect(whyAt(project, beyond[0], beyond[1])).toBeNull();
    const outward = roomOf({ patches: [{ ...patch, swing: 'out' }] }, free);
    expect(whyAt(outward, corner[0], corner[1])).toBeNull();
    // Whichever way it opens, who comes through it needs a step.
    const step: Readonly<Record<string, readonly [number, number]>> = {
      front: [1.4, 0.5],
      back: [1.4, 4.5],
      left: [0.5, 1.4],
      right: [3.5, 1.4],
    };
    const [x, y] = step[face] ?? [0, 0];
    expect(whyAt(outward, x, y)).toEqual({ kind: 'door', id: 'door-1' });
    expect(
      whyAt(roomOf({ patches: [{ ...patch, id: 'panel-1' }] }, free), within[0], within[1]),
    ).toBeNull();
  });

  it('before the door of a closet, but not for a hatch in the ceiling', () => {
    const solids = [{ id: 'c', kind: 'closet', min: [3, 3.5, 0], max: [4, 5, 3] }];
    const door = { id: 'door-c', face: 'c:left', rect: [4, 0, 4.7, 2], finish: 'door-solid' };
    const project = roomOf({ solids, patches: [door] }, EMPTY);
    expect(whyAt(project, 2.4, 4.8)).toEqual({ kind: 'door', id: 'door-c' });
    expect(whyAt(project, 2, 4.8)).toBeNull();
    const hatch = { ...door, face: 'ceiling', rect: [0, 0, 1, 1] };
    expect(whyAt(roomOf({ patches: [hatch] }, EMPTY), 0.2, 0.2)).toBeNull();
  });

  it('before the picture where the box rises above its lower edge', () => {
    const project = (bottomM: number) => roomOf({}, { ...EMPTY, screen: { widthM: 2, bottomM } });
    expect(whyAt(project(0.3), 2, 0.2)).toEqual({ kind: 'picture' });
    expect(whyAt(project(0.3), 3.1, 0.2)).toEqual({ kind: 'picture' });
    expect(whyAt(project(0.3), 3.2, 0.2)).toBeNull();
    expect(whyAt(project(0.3), 2, 4.8)).toBeNull();
    expect(whyAt(project(0.4), 2, 0.2)).toBeNull();
  });

  it('in a seat or by its ears', () => {
    const project = roomOf(
      {},
      { ...EMPTY, seating: { rows: [{ id: 'a', seats: 2, y: 4.3, pitchM: 0.7 }] } },
    );
    // Ears at 1.65 and 2.35 m; from 0.6 m before to 0.3 m behind them.
    expect(whyAt(project, 1.65, 4.8)).toBeNull();
    expect(whyAt(project, 1.65, 4.78)).toEqual({ kind: 'seat', row: 'a', seat: 1 });
    expect(whyAt(project, 2.6, 3.6)).toEqual({ kind: 'seat', row: 'a', seat: 2 });
    expect(whyAt(project, 2.95, 4.3)).toBeNull();
    expect(whyAt(project, 2.85, 4.3)).toEqual({ kind: 'seat', row: 'a', seat: 2 });
    // A narrow seat: the ears count.
    const narrow = roomOf(
      {},
      { ...EMPTY, seating: { rows: [{ id: 'n', seats: 1, y: 4, pitchM: 0.4 }] } },
    );
    expect(whyAt(narrow, 2.45, 4)).toEqual({ kind: 'seat', row: 'n', seat: 1 });
    expect(whyAt(narrow, 2.5, 4)).toBeNull();
  });

  it('never comes out as allowed, in any room', () => {
    fc.assert(
      fc.property(arbitraryProject, fc.integer({ min: 10, max: 100 }), (project, step) => {
        const { allowed, forbidden } = subwooferPlaces(project, { stepM: step / 100 });
        for (const place of allowed) {
          expect(obstacleOf(project, place, BOX)).toBeNull();
          const [x, y, z] = place;
          for (const { min, max } of project.room.solids) {
            const inside = [x, y, z].map((at, n) =>
              Math.min(at + 0.2 - (min[n] ?? 0), (max[n] ?? 0) - at + 0.2),
            );
            expect(Math.min(...inside)).toBeLessThan(0.002);
          }
          for (const { position } of seatsOf(project)) {
            const [dx, dy] = [Math.abs(x - position[0]), Math.abs(y - position[1])];
            expect(Math.hypot(Math.max(dx - 0.2, 0), Math.max(dy - 0.2, 0))).toBeGreaterThan(0.29);
          }
        }
        const all = [...allowed, ...forbidden.map(({ position }) => position)];
        expect(new Set(all.map(String)).size).toBe(all.length);
      }),
      { numRuns: 200 },
    );
  });

  it('by a loudspeaker, its stand and a window, and not under a window', () => {
    const speakers = { layout: '0+5+0', placed: [{ channel: 'M+030', position: [1, 1, 1.1] }] };
    const patch = { face: 'back', finish: 'glass-4', rect: [1, 0.3, 2, 1.5] };
    const project = roomOf({ patches: [{ ...patch, id: 'window-1' }] }, { ...EMPTY, speakers });
    expect(whyAt(project, 1.2, 1)).toEqual({ kind: 'speaker', channel: 'M+030' });
    expect(whyAt(project, 1.4, 1)).toBeNull();
    expect(whyAt(project, 1.5, 4.8)).toEqual({ kind: 'window', id: 'window-1' });
    expect(whyAt(project, 2.3, 4.8)).toBeNull();
    const high = { ...patch, rect: [1, 0.4, 2, 1.5] };
    expect(whyAt(roomOf({ patches: [{ ...high, id: 'window-1' }] }, EMPTY), 1.5, 4.8)).toBeNull();
  });

  it('by a loudspeaker that rests because the layout lacks it: no', () => {
    const speakers = { layout: '0+5+0', placed: [{ channel: 'M+090', position: [1, 1, 1.1] }] };
    expect(whyAt(roomOf({}, { ...EMPTY, speakers }), 1.2, 1)).toBeNull();
  });

  it('where it would leave less than 0.6 m to walk past a row, and had been more', () => {
    // Seats from 1 to 3 m: 1 m to either wall.
    const beside = (pitchM: number) =>
      roomOf({}, { ...EMPTY, seating: { rows: [{ id: 'a', seats: 2, y: 2.5, pitchM }] } });
    expect(whyAt(beside(1), 0.2, 2.5)).toBeNull();
    expect(whyAt(beside(1), 0.25, 2.5)).toEqual({ kind: 'walkway', row: 'a' });
    expect(whyAt(beside(1), 3.75, 2.5)).toEqual({ kind: 'walkway', row: 'a' });
    expect(whyAt(beside(1), 0.25, 1.6)).toBeNull();
    expect(whyAt(beside(1.1), 0.2, 2.5)).toEqual({ kind: 'walkway', row: 'a' });
    // 0.5 m is no way to begin with.
    expect(whyAt(beside(1.5), 0.2, 2.5)).toBeNull();
  });

  it('over the edge of a stage, and not on it', () => {
    const solids = [{ id: 's', kind: 'stage', min: [0, 0, 0], max: [4, 1, 0.2] }];
    const project = roomOf({ solids }, EMPTY);
    const at = (y: number, z: number) => obstacleOf(project, [2, y, z], BOX);
    expect(at(0.8, 0.4)).toBeNull();
    expect(at(0.9, 0.4)).toEqual({ kind: 'fitting', id: 's' });
    expect(at(1.1, 0.2)).toEqual({ kind: 'fitting', id: 's' });
    expect(at(1.2, 0.2)).toBeNull();
  });

  it('of the example: its door, its closet, the edges of its stage and riser, and the way past its rows', () => {
    const { forbidden } = subwooferPlaces(example('under-the-ducts'), { stepM: 0.3 });
    const reasons = new Set(forbidden.map(({ why }) => ('id' in why ? why.id : why.kind)));
    expect([...reasons].sort()).toEqual([
      'closet-back',
      'door',
      'riser-back',
      'stage-front',
      'walkway',
    ]);
  });
});

describe('one more subwoofer', () => {
  it('goes to the first corner that is clear, on what stands there, and then along the walls', () => {
    const empty = roomOf({}, EMPTY);
    expect(anotherPlace(empty)).toEqual([0.2, 0.2, 0.2]);
    const solids = [
      { id: 'c', kind: 'closet', min: [0, 0, 0], max: [0.5, 0.5, 3] },
      { id: 's', kind: 'stage', min: [1, 0, 0], max: [4, 1, 0.2] },
    ];
    expect(anotherPlace(roomOf({ solids }, EMPTY))).toEqual([3.8, 0.2, 0.4]);
    let project = empty;
    for (let n = 1; n <= 12; n++) {
      const position = anotherPlace(project);
      const { subwoofers } = project.speakers;
      expect(obstacleOf(project, position, BOX, subwoofers)).toBeNull();
      const more = [...subwoofers, { id: `sub-${n}`, position }];
      project = { ...project, speakers: { ...project.speakers, subwoofers: more } };
    }
  });
});

describe('places on what one can stand on, and along what stands on the floor', () => {
  it('stand on stages and risers, one on the other too', () => {
    const solids = [
      { id: 's', kind: 'stage', min: [0, 0, 0], max: [4, 1, 0.2] },
      { id: 'b', kind: 'riser', min: [0, 0, 0.2], max: [1, 1, 0.35] },
    ];
    const { allowed } = inRoom(solids);
    const front = allowed.filter(([, y]) => y === 0.2).map(([x, , z]) => [x, z]);
    expect(front).toEqual([
      [0.2, 0.55],
      [0.8, 0.55],
      [1.4, 0.4],
      [2, 0.4],
      [2.6, 0.4],
      [3.2, 0.4],
      [3.8, 0.4],
    ]);
    expect(allowed.filter(([, y]) => y > 1).every(([, , z]) => z === 0.2)).toBe(true);
  });

  it('are on the stage of the example, where its own subwoofer stands', () => {
    const { allowed } = subwooferPlaces(example('under-the-ducts'), { stepM: 0.3 });
    const front = allowed.filter(([, y]) => y === 0.2);
    expect(front.length).toBeGreaterThan(5);
    expect(front.every(([, , z]) => Math.abs(z - 0.4) < 1e-9)).toBe(true);
  });

  it('go along a closet, whose sides are walls, and not along a soffit', () => {
    const closet = { id: 'c', kind: 'closet', min: [0, 3.5, 0], max: [1, 5, 3] };
    const { allowed } = inRoom([closet]);
    // Before its front, and beside it to the corner with the back wall.
    expect(allowed.some(([x, y]) => x === 0.5 && y === 3.3)).toBe(true);
    expect(allowed.some(([x, y]) => x === 1.2 && y === 4.8)).toBe(true);
    const soffit = { ...closet, kind: 'soffit', min: [1.5, 2, 2], max: [2.5, 3, 3] };
    expect(inRoom([soffit]).allowed).toEqual(inRoom().allowed);
  });

  it('are the same when the room is carried along: a subwoofer climbs a stage and comes down again', () => {
    const solids = [{ id: 's', kind: 'stage', min: [0, 0, 0], max: [4, 1, 0.2] }];
    const project = roomOf({ solids }, EMPTY);
    const up = carried(project, [2, 3, 0.25], [2, 0.5, 0.25]);
    expect(up).toEqual([2, 0.5, 0.45]);
    expect(carried(project, up, [1, 4, 0.45])).toEqual([1, 4, 0.25]);
  });
});
