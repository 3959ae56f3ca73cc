import { describe, expect, it } from 'vitest';
import { namedModes, spaceOf } from '../../../../core/analysis/named-modes';
import { roomField } from '../../../../core/analysis/room-field';
import { seatResponses } from '../../../../core/analysis/seat-response';
import { searchPlaces } from '../../../../core/analysis/subwoofer-search';
import { modeFrequencyHz } from '../../../../core/modes/shell-modes';
import { finish } from '../../../../core/quantity/slices';
import { levelDb, pathResponse } from '../../../../core/response/path';
import type { Project } from '../../../../core/room/project';
import { seatsOf } from '../../../../core/room/seats';
import { example, given } from '../../support/rooms';

const bay = example('basement-bay');

const withSubwoofers = (subwoofers: Project['speakers']['subwoofers']): Project => ({
  ...bay,
  speakers: { ...bay.speakers, subwoofers },
});

describe('the field of a room', () => {
  it('carries the names of its own modes: orders of the shell, none of the room as built', () => {
    const project = example('under-the-ducts');
    const shell = roomField(project, null);
    const speedMS = spaceOf(project).speedMS;
    const orders = given(shell.orders);
    expect(orders).toHaveLength(shell.field.frequenciesHz.length);
    orders.forEach((order, n) => {
      const hz = modeFrequencyHz(order, project.room.size, speedMS);
      expect(shell.field.frequenciesHz[n]).toBeCloseTo(hz, 9);
    });
    const outcome = finish(namedModes(spaceOf(project), { limitHz: 100 }));
    if (!outcome.ok) throw new Error('refused');
    expect(roomField(project, outcome.built.shape).orders).toBeNull();
  });
});

describe('the response at the seats', () => {
  it('is the sum over modes of each path, with the damping of the finishes', () => {
    const found = finish(seatResponses(bay, null));
    // To 2000 Hz the plain sum needs no tail.
    const { field, damping } = roomField(bay, null, 2000);
    const seat = given(seatsOf(bay)[4]);
    const source = given(bay.speakers.subwoofers[0]).position;
    const hz = found.frequenciesHz;
    const levels = levelDb(given(pathResponse(field, source, seat.position, hz, damping)));
    given(found.seats[4]?.levelDb).forEach((level, f) => {
      if ((levels[f] ?? NaN) > -12) expect(Math.abs(level - (levels[f] ?? NaN))).toBeLessThan(0.35);
    });
    expect(found.of).toBe('shell');
    expect(found.defaulted).toBe(0);
    expect(found.spread?.meanSpatialVarianceDb2).toBeGreaterThan(0);
  });

  it('is told for the middle of a row as well where that is judged, and not counted as a seat', () => {
    const [row] = bay.seating.rows;
    const rows = [{ ...given(row), seats: 2 }];
    const inMiddle: Project = {
      ...bay,
      seating: { ...bay.seating, rows, reference: { row: given(row).id, middle: true } },
    };
    const atSeat: Project = {
      ...inMiddle,
      seating: { ...inMiddle.seating, reference: { row: given(row).id, seat: 1 } },
    };
    const found = finish(seatResponses(inMiddle, null));
    const before = finish(seatResponses(atSeat, null));
    expect(found.seats.map(({ seat }) => seat)).toEqual([1, null, 2]);
    expect(found.spread).toEqual(before.spread);
    const middle = given(found.seats[1]?.levelDb);
    const alone = { ...bay, seating: { ...bay.seating, rows: [{ ...given(row), seats: 1 }] } };
    expect(middle).toEqual(finish(seatResponses(alone, null)).seats[0]?.levelDb);
  });

  it('of the room as built is another than that of its plain shell', () => {
    const project = example('under-the-ducts');
    const outcome = finish(namedModes(spaceOf(project), { keepFactor: true }));
    if (!outcome.ok) throw new Error('refused');
    const built = finish(seatResponses(project, outcome.built.shape));
    const shell = finish(seatResponses(project, null));
    expect(built.of).toBe('built');
    const [a, b] = [built, shell].map(({ seats }) => given(seats[1]?.levelDb));
    const apart = given(a).map((level, f) => Math.abs(level - (b?.[f] ?? NaN)));
    expect(Math.max(...apart)).toBeGreaterThan(3);
  });

  it('leaves out subwoofers outside the room, and names them', () => {
    const [inside] = bay.speakers.subwoofers;
    const outside = { id: 'lost', position: [-1, 0.4, 0.2] as const };
    const found = finish(seatResponses(withSubwoofers([given(inside), outside]), null));
    expect(found.left).toEqual(['lost']);
    expect(found).toEqual({ ...finish(seatResponses(bay, null)), left: ['lost'] });
  });

  it('is nothing without subwoofers or without seats', () => {
    const none = finish(seatResponses(withSubwoofers([]), null));
    expect(none.spread).toBeNull();
    expect(none.seats.every((seat) => seat.levelDb === null)).toBe(true);
    const nobody = { ...bay, seating: { ...bay.seating, rows: [] } };
    expect(finish(seatResponses(nobody, null)).seats).toEqual([]);
  });
});

describe('the search for subwoofer places of a project', () => {
  const options = {
    count: 2,
    stepM: 0.8,
    boxM: [0.4, 0.4, 0.4],
    drives: false,
    bandHz: [20, 100],
  } as const;

  it('betters what stands there, on places that are allowed', () => {
    const { search, places, of } = finish(searchPlaces(bay, null, options));
    const { sets, present, provenGapDb2 } = given(search);
    expect(of).toBe('shell');
    expect(provenGapDb2).toBe(0);
    expect(sets[0]?.measures.costDb2).toBeLessThan(given(present).costDb2);
    for (const { subwoofers } of sets)
      for (const { place } of subwoofers) expect(place).toBeLessThan(places.allowed.length);
  });

  it('has nothing to say where nobody sits or no box fits', () => {
    const nobody = { ...bay, seating: { ...bay.seating, rows: [] } };
    expect(finish(searchPlaces(nobody, null, options)).search).toBeNull();
    expect(finish(searchPlaces(bay, null, { ...options, boxM: [3, 3, 3] })).search).toBeNull();
  });
});
