/** The people in their seats: ears, eyes, what a seat takes of the floor, and the ways past the rows. */

import type { Point, Project, Row } from '../room/project';
import { rowCentreX, seatsOf } from '../room/seats';
import { TOUCH_M, type Box } from './box';
import { practice } from '../room/practice/practice';

/** What a seat covers behind and before the ears, m; it is as wide as the pitch. */
const SEAT_BEHIND_M = practice('seat-behind-ears');
const SEAT_BEFORE_M = practice('seat-before-ears');
/** A way past a row is one where it is at least this wide, m. */
const LEAST_AISLE_M = practice('walk-width');

export interface Person {
  readonly row: string;
  /** From 1, from the left hand of a person who faces the screen. */
  readonly seat: number;
  readonly ears: Point;
  readonly eyes: Point;
  /** The seat and the legs, from the row's floor to the ears. */
  readonly footprint: Box;
}

/** One for every seat, row by row in the order of the file. */
export function peopleOf(project: Project): readonly Person[] {
  const rows = new Map(project.seating.rows.map((row) => [row.id, row]));
  return seatsOf(project).flatMap(({ row: id, seat, position }): readonly Person[] => {
    const row = rows.get(id);
    if (!row) return [];
    const [x, y, z] = position;
    return [
      {
        row: id,
        seat,
        ears: position,
        eyes: [x, y, row.riserM + row.eyeHeightM],
        footprint: {
          min: [x - row.pitchM / 2, y - SEAT_BEFORE_M, row.riserM],
          max: [x + row.pitchM / 2, y + SEAT_BEHIND_M, z],
        },
      },
    ];
  });
}

/** The floor between an end of a row and the wall, where it is wide enough to walk. */
export interface Aisle {
  readonly row: string;
  readonly box: Box;
}

export function aislesOf({ room, seating }: Project): readonly Aisle[] {
  const { width } = room.size;
  return seating.rows.flatMap((row) =>
    besideRow(row, width)
      .filter(({ min, max }) => max[0] - min[0] >= LEAST_AISLE_M - TOUCH_M)
      .map((box) => ({ row: row.id, box })),
  );
}

/** From the left wall to the first seat, and from the last seat to the right wall. */
function besideRow(row: Row, widthM: number): readonly Box[] {
  const half = (row.seats * row.pitchM) / 2;
  const centre = rowCentreX(row, widthM);
  const [front, back] = [row.y - SEAT_BEFORE_M, row.y + SEAT_BEHIND_M];
  const [low, high] = [row.riserM, row.riserM + row.earHeightM];
  return [
    { min: [0, front, low], max: [centre - half, back, high] },
    { min: [centre + half, front, low], max: [widthM, back, high] },
  ];
}
