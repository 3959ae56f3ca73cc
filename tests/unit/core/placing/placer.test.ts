import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { analyze } from '../../../../core/analysis/analyze';
import { candidatesFor } from '../../../../core/placing/candidates';
import { twinOf } from '../../../../core/placing/choose';
import {
  placeSpeakers,
  type PlacerOptions,
  type PlacerResult,
} from '../../../../core/placing/placer';
import { placingContext, STUD_PITCHES_M } from '../../../../core/placing/placing-context';
import { finish } from '../../../../core/quantity/slices';
import { applyEdit } from '../../../../core/room/edits';
import { openRoom, saveRoom } from '../../../../core/room/open-room';
import type { Point, Project } from '../../../../core/room/project';
import { screenRect } from '../../../../core/room/screen';
import { LAYOUTS, layoutOf } from '../../../../core/speakers/layouts';
import { arbitraryProject } from '../../support/arbitrary-project';
import { example, EXAMPLES, given, only, roomOf, type Fields } from '../../support/rooms';

const placing = (project: Project, options: PlacerOptions = {}): PlacerResult =>
  finish(placeSpeakers(project, options));

/** 4.4 x 6.4 x 2.6 m with two rows of four, a duct along the left wall and a door at the back right. */
const home = (
  layout: string,
  placed: readonly Fields[] = [],
  solids: readonly Fields[] = [],
): Project =>
  roomOf(
    {
      size: { width: 4.4, length: 6.4, height: 2.6 },
      solids: [
        { id: 'duct', kind: 'soffit', min: [0, 0, 2.3], max: [0.6, 6.4, 2.6] },
        { id: 'riser', kind: 'riser', min: [0, 4.4, 0], max: [4.4, 6.4, 0.3] },
        ...solids,
      ],
      patches: [{ id: 'door-1', face: 'right', rect: [5.4, 0, 6.21, 2.03], finish: 'door-solid' }],
    },
    {
      seating: {
        rows: [
          { id: '1', seats: 4, y: 3.6, pitchM: 0.7 },
          { id: '2', seats: 4, y: 5.2, pitchM: 0.7, riserM: 0.3 },
        ],
        reference: { row: '1', seat: 2 },
      },
      speakers: { layout, placed },
    },
  );

/** The room with a picture that lets sound through. */
const through = (project: Project): Project => ({
  ...project,
  screen: { ...project.screen, soundThrough: true },
});

const withLayout = (project: Project, layout: string): Project => ({
  ...project,
  speakers: { ...project.speakers, layout, placed: [] },
});

const placeOf = (result: PlacerResult, channel: string) =>
  given(result.placed.find((speaker) => speaker.channel === channel));

describe('the places that are chosen', () => {
  const rooms: readonly (readonly [string, Project])[] = [
    ['home', home('0+5+0')],
    ...EXAMPLES.map((name) => [name, example(name)] as const),
  ];

  it.each(
    rooms.flatMap(([name, project]) => LAYOUTS.map(({ id }) => [name, id, project] as const)),
  )('in %s for %s are in range, and nothing is in their way', (_, layout, room) => {
    const project = withLayout(room, layout);
    const result = placing(project);
    const done = applyEdit(project, result.edit);
    const { speakers, findings } = analyze(done);
    const beside = result.trades.filter(({ kind }) => kind === 'beside');
    expect(speakers.filter((speaker) => !speaker.inRange).map(({ channel }) => channel)).toEqual(
      beside.map(({ channel }) => channel),
    );
    expect(speakers.length + result.unplaced.length).toBe(given(layoutOf(layout)).channels.length);
    const about = findings.filter(({ id }) => id.startsWith('speaker-'));
    // A picture that lets no sound through leaves the centre a trade-off, never a fault.
    expect(about.map(({ id, severity }) => [id, severity])).toEqual(
      beside.map(({ channel }) => [`speaker-range:${channel}`, 'note']),
    );
    expect(openRoom(saveRoom(done))).toEqual({ ok: true, project: done });
  });

  it('mirror each other in a room that does', () => {
    const project = roomOf(
      {},
      {
        seating: { rows: [{ id: 'a', seats: 3, y: 3 }], reference: { row: 'a', seat: 2 } },
        speakers: { layout: '4+7+0' },
        screen: { soundThrough: true },
      },
    );
    const result = placing(project);
    expect(result.unplaced).toEqual([]);
    for (const { channel, position, mount } of result.placed) {
      const twin = twinOf(channel);
      if (twin === null) continue;
      const other = placeOf(result, twin);
      expect(other.mount).toBe(mount);
      expect(other.position[0]).toBeCloseTo(4 - position[0], 4);
      expect(other.position[1]).toBeCloseTo(position[1], 4);
    }
    expect(result.trades.filter(({ kind }) => kind === 'uneven')).toEqual([]);
  });

  it('mirror each other about the middle of a row of four, with the centre on the axis', () => {
    for (const { id } of LAYOUTS) {
      const project = roomOf(
        { size: { width: 4.2, length: 6.5, height: 2.42 } },
        { seating: { rows: [{ id: 'a', seats: 4, y: 3.9 }] }, speakers: { layout: id } },
      );
      expect(project.seating.reference).toEqual({ row: 'a', middle: true });
      const result = placing(project);
      expect(result.unplaced).toEqual([]);
      for (const { channel, position } of result.placed) {
        const twin = placeOf(result, twinOf(channel) ?? channel);
        expect(twin.position[0]).toBeCloseTo(4.2 - position[0], 4);
        expect(twin.position.slice(1)).toEqual(position.slice(1));
      }
      expect(placeOf(result, 'M+000').position[0]).toBeCloseTo(2.1, 6);
    }
  });

  it('go behind the screen where it lets sound through, and say what that needs', () => {
    const result = placing(through(home('0+5+0')));
    expect(placeOf(result, 'M+000').mount).toBe('behind-screen');
    expect(result.trades.find(({ kind }) => kind === 'screen')?.text).toMatch(
      /Centre plays through the picture: .* lets sound through/,
    );
  });

  it('go below or above it otherwise, clear of it, and say by how many degrees', () => {
    const room = home('0+5+0');
    const result = placing(room);
    expect(result.unplaced).toEqual([]);
    const centre = given(result.chosen.find(({ channel }) => channel === 'M+000'));
    expect([centre.mount, centre.beside]).toEqual(['on-wall', 'below']);
    const { bottomZ } = screenRect(room);
    expect(given(centre.box.inRoom).max[2]).toBeLessThan(bottomZ);
    expect(given(centre.box.inRoom).max[2]).toBeGreaterThan(bottomZ - 0.1);
    const trade = given(result.trades.find(({ kind }) => kind === 'beside'));
    expect(trade.value).toBeCloseTo(-centre.direction.elevationDeg, 9);
    expect(trade.text).toContain(`${trade.value.toFixed(1)} degrees below the ears`);
  });

  it('do the other seats no more harm than any other place for a single channel', () => {
    const project = through(home('0+5+0'));
    const site = given(placingContext(project, {}));
    const centre = given(site.layout.channels.find(({ label }) => label === 'M+000'));
    const { list } = candidatesFor(site, centre, undefined);
    const found = placing(project).chosen;
    const chosen = given(found.find(({ channel }) => channel === 'M+000'));
    for (const { harm } of list) expect(chosen.harm.cost).toBeLessThanOrEqual(harm.cost + 1e-3);
  });

  it('say what they cost in words and figures', () => {
    const { trades } = placing(home('0+5+0'));
    const outside = trades.filter(({ kind }) => kind === 'outside');
    expect(outside[0]?.text).toMatch(/^Row \d hears [A-Z].* up to \d+ degrees outside its window/);
    for (const { text, value } of outside) expect(text).toContain(` ${value.toFixed(0)} degrees`);
  });
});

describe('what is pinned', () => {
  const pinned = { channel: 'M+090', position: [0.12, 3.4, 1.1], pinned: true, 'x-note': 'kept' };

  it('stays, and its twin goes to meet it', () => {
    const result = placing(home('0+7+0', [pinned, { channel: 'M-090', position: [4.3, 6, 1] }]));
    expect(result.placed[0]).toEqual(pinned);
    expect(result.chosen.map(({ channel }) => channel)).not.toContain('M+090');
    const twin = given(result.chosen.find(({ channel }) => channel === 'M-090'));
    // Pinned at 85 degrees or so ahead of the ears: left to itself the twin goes farther back.
    const alone = given(placing(home('0+7+0')).chosen.find(({ channel }) => channel === 'M-090'));
    expect(Math.abs(twin.direction.azimuthDeg)).toBeLessThan(Math.abs(alone.direction.azimuthDeg));
  });

  it('and whatever a file holds is never moved nor lost', () => {
    fc.assert(
      fc.property(arbitraryProject, (project) => {
        const result = placing(project);
        const before = project.speakers.placed;
        expect(result.placed.slice(0, before.length).map(({ channel }) => channel)).toEqual(
          before.map(({ channel }) => channel),
        );
        before.forEach((speaker, i) => {
          if (speaker.pinned === true) expect(result.placed[i]).toBe(speaker);
        });
        const done = applyEdit(project, result.edit);
        expect(openRoom(saveRoom(done))).toEqual({ ok: true, project: done });
      }),
      { numRuns: 60 },
    );
  });
});

describe('the room mirrored', () => {
  const cm = (min: number, max: number) => fc.integer({ min, max }).map((n) => n / 100);
  const room = fc.record({
    width: cm(320, 600),
    length: cm(450, 800),
    y: cm(200, 320),
    seat: fc.integer({ min: 1, max: 3 }),
    layout: fc.constantFrom(...LAYOUTS.map(({ id }) => id)),
    column: fc.record({ x: cm(0, 100), y: cm(0, 400), w: cm(20, 60) }),
  });

  it('has left and right swapped', () => {
    fc.assert(
      fc.property(room, ({ width, length, y, seat, layout, column }) => {
        const made = (mirrored: boolean): PlacerResult => {
          const { x, y: at, w } = column;
          const [x0, x1] = mirrored ? [width - x - w, width - x] : [x, x + w];
          return placing(
            roomOf(
              {
                size: { width, length, height: 2.6 },
                solids: [{ id: 'c', kind: 'column', min: [x0, at, 0], max: [x1, at + w, 2.6] }],
              },
              {
                seating: {
                  rows: [{ id: 'a', seats: 3, y, pitchM: 0.7 }],
                  reference: { row: 'a', seat: mirrored ? 4 - seat : seat },
                },
                speakers: { layout },
              },
            ),
          );
        };
        const [here, there] = [made(false), made(true)];
        const cost = (result: PlacerResult): number =>
          result.chosen.reduce((sum, { harm }) => sum + harm.cost, 0);
        expect(cost(there)).toBeCloseTo(cost(here), 1);
        for (const { channel, position, mount } of here.chosen) {
          const twin = placeOf(there, twinOf(channel) ?? channel);
          expect(twin.mount).toBe(mount);
          expect(twin.position[0]).toBeCloseTo(width - position[0], 3);
          expect(twin.position[1]).toBeCloseTo(position[1], 3);
          expect(twin.position[2]).toBeCloseTo(position[2], 3);
        }
      }),
      {
        numRuns: 25,
        // A stand at 45 degrees, whose box turned one way on the left and another on the right.
        examples: [
          [
            {
              width: 4.26,
              length: 4.5,
              y: 3.05,
              seat: 2,
              layout: '0+7+0',
              column: { x: 0.42, y: 1.1, w: 0.59 },
            },
          ],
        ],
      },
    );
  });
});

describe('a grid of studs', () => {
  it.each(Object.entries(STUD_PITCHES_M))('(%s) carries what hangs on a wall', (_, studPitchM) => {
    const result = placing(through(home('0+7+0')), {
      studPitchM,
      mounts: ['on-wall', 'behind-screen'],
    });
    const hung = result.chosen.filter(({ mount }) => mount === 'on-wall');
    expect(hung.filter(({ onStud }) => onStud).length).toBeGreaterThanOrEqual(4);
    for (const { position, face, onStud } of hung) {
      const along = face === 'left' || face === 'right' ? position[1] : position[0];
      const off = Math.abs(along / studPitchM - Math.round(along / studPitchM));
      if (onStud) expect(off).toBeLessThan(1e-3);
    }
    const off = hung.filter(({ onStud }) => !onStud).map(({ channel }) => channel);
    const told = result.trades.filter(({ kind }) => kind === 'stud').map(({ channel }) => channel);
    expect(told).toEqual(off);
  });

  it('lets what is built in go between two studs', () => {
    const result = placing(home('0+7+0'), { studPitchM: 0.4, mounts: ['in-wall'] });
    for (const { position, face, onStud } of result.chosen) {
      const along = (face === 'left' || face === 'right' ? position[1] : position[0]) / 0.4;
      if (onStud) expect(Math.abs(along - Math.floor(along) - 0.5)).toBeLessThan(1e-3);
    }
  });
});

describe('a channel that finds no place', () => {
  it('for the picture is told so, and that one which lets sound through would help', () => {
    // From 0.2 m above the floor to 0.1 m under the ceiling: no room for a box below or above it.
    const screen = { widthM: 4, aspect: [4, 2.3], bottomM: 0.2 };
    const room = roomOf(
      { size: { width: 4.4, length: 6.4, height: 2.6 } },
      { screen, speakers: { layout: '0+5+0' } },
    );
    const centre = given(placing(room).unplaced.find(({ channel }) => channel === 'M+000'));
    expect(centre.reason).toContain('the picture is in the way');
    const help = given(centre.helps.find(({ edit }) => edit?.kind === 'screen'));
    const done = placing(applyEdit(room, given(help.edit)));
    expect(placeOf(done, 'M+000').mount).toBe('behind-screen');
  });

  it('for a window is told what is in the way, and a row that is moved gives it one', () => {
    // 85 to 110 degrees meet the left wall 2.53 to 3.43 m from the screen wall: all of it a window.
    const room = roomOf(
      {
        size: { width: 4, length: 6, height: 2.6 },
        patches: [
          { id: 'window-left', face: 'left', rect: [2.3, 0.4, 3.6, 2.2], finish: 'glass-window' },
        ],
      },
      {
        seating: { rows: [{ id: 'a', seats: 1, y: 2.7, earHeightM: 1.1 }] },
        speakers: { layout: '0+7+0' },
        screen: { soundThrough: true },
      },
    );
    const result = placing(room, { mounts: ['on-wall', 'in-wall', 'behind-screen'] });
    const side = only(result.unplaced);
    expect(side.channel).toBe('M+090');
    expect(side.reason).toContain('window-left');
    const [help] = side.helps.filter(({ edit }) => edit?.kind === 'row');
    expect(help?.text).toMatch(/Move row 1 by 0\.\d+ m towards the (back|screen)/);
    const moved = applyEdit(room, given(help?.edit));
    expect(placing(moved, { mounts: ['on-wall', 'in-wall', 'behind-screen'] }).unplaced).toEqual(
      [],
    );
    // 5.1 wants its surrounds farther back, past the window.
    expect(result.otherLayouts).toContain('0+5+0');
  });

  it('for want of a seat or a known layout changes nothing', () => {
    const none = roomOf({}, { seating: { rows: [] }, speakers: { layout: '4+7+0' } });
    expect(applyEdit(none, placing(none).edit)).toBe(none);
    const odd = roomOf({}, { speakers: { layout: '9+9+9' } });
    expect(applyEdit(odd, placing(odd).edit)).toBe(odd);
  });
});

describe('the placer', () => {
  it('gives the same places twice, and yields its progress', () => {
    const project = home('4+7+0');
    expect(placing(project)).toEqual(placing(project));
    const shares: number[] = [];
    const slices = placeSpeakers(project);
    for (let step = slices.next(); !step.done; step = slices.next()) shares.push(step.value);
    expect(shares).toEqual([...shares].sort((a, b) => a - b));
    expect(shares.at(-1)).toBeLessThanOrEqual(1);
  });

  it('takes less than 300 ms for the largest layout and eight seats', () => {
    const project = home('4+7+0');
    const once = (): number => {
      const start = performance.now();
      placing(project);
      return performance.now() - start;
    };
    const times = Array.from({ length: 8 }, once).sort((a, b) => a - b);
    expect(times[0]).toBeLessThan(300);
  });
});

describe('everything moved together in a larger room', () => {
  it('keeps its angles', () => {
    const project = applyEdit(home('4+7+0'), placing(home('4+7+0')).edit);
    const by: Point = [0.4, 0.7, 0.1];
    const move = (at: Point): Point => [at[0] + by[0], at[1] + by[1], at[2] + by[2]];
    const { width, length, height } = project.room.size;
    const moved: Project = {
      ...project,
      room: {
        ...project.room,
        size: { width: width + 1, length: length + 1, height: height + 0.5 },
        solids: project.room.solids.map((solid) => ({
          ...solid,
          min: move(solid.min),
          max: move(solid.max),
        })),
      },
      seating: {
        ...project.seating,
        rows: project.seating.rows.map((row) => ({
          ...row,
          x: (row.x ?? width / 2) + by[0],
          y: row.y + by[1],
          riserM: row.riserM + by[2],
        })),
      },
      speakers: {
        ...project.speakers,
        placed: project.speakers.placed.map((speaker) => ({
          ...speaker,
          position: move(speaker.position),
        })),
      },
    };
    const [before, after] = [analyze(project).speakers, analyze(moved).speakers];
    after.forEach((speaker, i) => {
      expect(speaker.azimuthDeg).toBeCloseTo(given(before[i]).azimuthDeg, 6);
      expect(speaker.elevationDeg).toBeCloseTo(given(before[i]).elevationDeg, 6);
      expect(speaker.delayMs).toBeCloseTo(given(before[i]).delayMs, 6);
    });
  });
});
