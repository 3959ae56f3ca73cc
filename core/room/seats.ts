/** Where the heads are. */

import type { Point, Project, Reference, Row } from './project';

/** A place where a head may be: a seat, or the middle of a row between two of them. */
export interface ListeningPlace {
  readonly row: string;
  /** From 1, from the left hand of a person who faces the screen; null between two seats. */
  readonly seat: number | null;
  /** Ears, m. */
  readonly position: Point;
}

export interface Seat extends ListeningPlace {
  readonly seat: number;
}

/** Centre of `row` along x in metres. */
export function rowCentreX(row: Row, widthM: number): number {
  return row.x ?? widthM / 2;
}

/** Ears of every seat, row by row in the order of the file. */
export function seatsOf(project: Project): readonly Seat[] {
  const { width } = project.room.size;
  return project.seating.rows.flatMap((row) =>
    Array.from({ length: row.seats }, (_, i) => ({
      row: row.id,
      seat: i + 1,
      position: earsAt(row, i + 1, width),
    })),
  );
}

/** Ears at `seat` of `row`, which may lie between two seats. */
const earsAt = (row: Row, seat: number, widthM: number): Point => [
  rowCentreX(row, widthM) + (seat - (row.seats + 1) / 2) * row.pitchM,
  row.y,
  row.riserM + row.earHeightM,
];

/** The middle of `row` as the file names it: its middle seat, or between the two middle ones. */
export function middleOf(row: Row | undefined): Reference {
  if (!row) return { row: '', seat: 1 };
  return row.seats % 2 === 0
    ? { row: row.id, middle: true }
    : { row: row.id, seat: (row.seats + 1) / 2 };
}

/** The ears of a place that the file names; null where it names what is not there. */
export function listeningPlaceOf(project: Project, named: Reference): ListeningPlace | null {
  const row = project.seating.rows.find(({ id }) => id === named.row);
  if (!row) return null;
  const seat = 'seat' in named ? named.seat : (row.seats + 1) / 2;
  if (seat < 1 || seat > row.seats) return null;
  return {
    row: row.id,
    seat: Number.isInteger(seat) ? seat : null,
    position: earsAt(row, seat, project.room.size.width),
  };
}

/** Where angles are judged: the named place, else the middle of the first row; null without a row. */
export function referencePlace(project: Project): ListeningPlace | null {
  const { reference, rows } = project.seating;
  return listeningPlaceOf(project, reference) ?? listeningPlaceOf(project, middleOf(rows[0]));
}

/** How the file names the place. */
export const referenceTo = ({ row, seat }: Pick<ListeningPlace, 'row' | 'seat'>): Reference =>
  seat === null ? { row, middle: true } : { row, seat };

/** True where both are the same seat, or the middle of the same row. */
export const isSamePlace = (
  a: Pick<ListeningPlace, 'row' | 'seat'>,
  b: Pick<ListeningPlace, 'row' | 'seat'>,
): boolean => a.row === b.row && a.seat === b.seat;

/** What can be the reference place: every seat, and the middle of a row between two of them. */
export function possiblePlaces(project: Project): readonly ListeningPlace[] {
  const { width } = project.room.size;
  const seats = seatsOf(project);
  return project.seating.rows.flatMap((row): readonly ListeningPlace[] => {
    const own = seats.filter((seat) => seat.row === row.id);
    if (row.seats % 2 !== 0) return own;
    const position = earsAt(row, (row.seats + 1) / 2, width);
    const half = row.seats / 2;
    return [...own.slice(0, half), { row: row.id, seat: null, position }, ...own.slice(half)];
  });
}

/** All seats, with the reference place between its neighbours where that is none of them. */
export function listeningPlaces(project: Project): readonly ListeningPlace[] {
  const reference = referencePlace(project);
  return possiblePlaces(project).filter(
    (place) => place.seat !== null || (reference !== null && isSamePlace(place, reference)),
  );
}

/** `row 1, seat 2`, or `middle of row 1`; rows counted from the screen as they stand in the file. */
export function placeName(
  project: Project,
  { row, seat }: Pick<ListeningPlace, 'row' | 'seat'>,
): string {
  const name = `row ${project.seating.rows.findIndex(({ id }) => id === row) + 1}`;
  return seat === null ? `middle of ${name}` : `${name}, seat ${seat}`;
}
