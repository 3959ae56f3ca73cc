import { describe, expect, it } from 'vitest';
import { screenRect } from '../../../../core/room/screen';
import {
  listeningPlaces,
  placeName,
  possiblePlaces,
  referencePlace,
  seatsOf,
} from '../../../../core/room/seats';
import { roomOf } from '../../support/rooms';

const rows = [
  { id: 'front', seats: 3, y: 3, pitchM: 0.8, earHeightM: 1.1 },
  { id: 'back', seats: 2, y: 4.2, x: 1.5, pitchM: 0.7, riserM: 0.3, earHeightM: 1.1 },
];

describe('seats', () => {
  it('count from the left, centred on the room or on the row’s own x, ears above its riser', () => {
    const seats = seatsOf(roomOf({}, { seating: { rows } }));
    expect(seats.map(({ row, seat }) => [row, seat])).toEqual([
      ['front', 1],
      ['front', 2],
      ['front', 3],
      ['back', 1],
      ['back', 2],
    ]);
    const places = [
      [1.2, 3, 1.1],
      [2, 3, 1.1],
      [2.8, 3, 1.1],
      [1.15, 4.2, 1.4],
      [1.85, 4.2, 1.4],
    ];
    seats.forEach(({ position }, i) => {
      position.forEach((at, axis) => expect(at).toBeCloseTo(places[i]?.[axis] ?? NaN, 9));
    });
  });

  it('are judged at the named one', () => {
    const project = roomOf({}, { seating: { rows, reference: { row: 'back', seat: 2 } } });
    expect(referencePlace(project)).toMatchObject({ row: 'back', seat: 2 });
  });

  it('are judged at the middle of the first row where the named one has gone', () => {
    const project = roomOf({}, { seating: { rows } });
    const lost = { ...project, seating: { ...project.seating, reference: { row: 'x', seat: 9 } } };
    expect(referencePlace(lost)).toMatchObject({ row: 'front', seat: 2 });
  });

  it('are judged in the middle of a row of an even number, where no seat is', () => {
    const project = roomOf({}, { seating: { rows, reference: { row: 'back', middle: true } } });
    const place = referencePlace(project);
    expect(place).toMatchObject({ row: 'back', seat: null });
    [1.5, 4.2, 1.4].forEach((at, n) => expect(place?.position[n]).toBeCloseTo(at, 9));
    expect(listeningPlaces(project).map(({ row, seat }) => [row, seat])).toEqual([
      ['front', 1],
      ['front', 2],
      ['front', 3],
      ['back', 1],
      ['back', null],
      ['back', 2],
    ]);
  });

  it('have their middle in the middle seat of a row of an odd number', () => {
    const project = roomOf({}, { seating: { rows, reference: { row: 'front', middle: true } } });
    expect(referencePlace(project)).toEqual(seatsOf(project)[1]);
    expect(listeningPlaces(project)).toEqual(seatsOf(project));
  });

  it('are called by row and number, and the middle between two by its row', () => {
    const project = roomOf({}, { seating: { rows } });
    expect(possiblePlaces(project).map((place) => placeName(project, place))).toEqual([
      'row 1, seat 1',
      'row 1, seat 2',
      'row 1, seat 3',
      'row 2, seat 1',
      'middle of row 2',
      'row 2, seat 2',
    ]);
  });

  it('are judged nowhere where there are none', () => {
    expect(referencePlace(roomOf({}, { seating: { rows: [] } }))).toBeNull();
  });
});

describe('the picture', () => {
  it('of 1.6 m at 16:9 is 0.9 m high and centred on the wall', () => {
    const rect = screenRect(roomOf({}, { screen: { widthM: 1.6, bottomM: 0.7 } }));
    expect(rect.leftX).toBeCloseTo(1.2, 9);
    expect(rect.rightX).toBeCloseTo(2.8, 9);
    expect(rect.bottomZ).toBe(0.7);
    expect(rect.topZ).toBeCloseTo(1.6, 9);
  });

  it('of 2.4:1 hangs where its centre is given', () => {
    const screen = { widthM: 2.4, aspect: [2.4, 1], bottomM: 0.5, centreX: 1.7 };
    const rect = screenRect(roomOf({}, { screen }));
    expect(rect.leftX).toBeCloseTo(0.5, 9);
    expect(rect.topZ).toBeCloseTo(1.5, 9);
  });

  it('10 ft wide at 16:9 is 5 ft 7 1/2 in high', () => {
    // Common practice.
    const rect = screenRect(
      roomOf(
        { size: { width: 4, length: 5, height: 3 } },
        { screen: { widthM: 3.048, bottomM: 0 } },
      ),
    );
    expect(rect.topZ).toBeCloseTo(1.7145, 9);
  });
});
