/** Where the heads are. */

import type { Point, Project, Row, Seating } from './project';

export interface Seat {
  readonly row: string;
  /** From 1, from the left hand of a person who faces the screen. */
  readonly seat: number;
  /** Ears, m. */
  readonly position: Point;
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
      position: [
        rowCentreX(row, width) + (i - (row.seats - 1) / 2) * row.pitchM,
        row.y,
        row.riserM + row.earHeightM,
      ] as const,
    })),
  );
}

/** The middle seat of the first row (the left one of two middle seats). */
export function middleSeat(rows: readonly Row[]): Seating['reference'] {
  const first = rows[0];
  return { row: first?.id ?? '', seat: first ? Math.ceil(first.seats / 2) : 1 };
}

/** The seat that angles are judged at: the named one, else the middle seat of the first row. */
export function referenceSeat(project: Project): Seat | null {
  const seats = seatsOf(project);
  const find = (place: Seating['reference']): Seat | undefined =>
    seats.find((seat) => seat.row === place.row && seat.seat === place.seat);
  return find(project.seating.reference) ?? find(middleSeat(project.seating.rows)) ?? null;
}
