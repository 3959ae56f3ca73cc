/** What seats are called, and the key that tells them apart. */

import type { Project } from '../../core/room/project';
import type { Seat } from '../../core/room/seats';

/** `row|seat`. */
export const seatKey = ({ row, seat }: Pick<Seat, 'row' | 'seat'>): string => `${row}|${seat}`;

/** `row 1, seat 2`, rows counted from the screen as they stand in the file. */
export const seatName = (project: Project, { row, seat }: Pick<Seat, 'row' | 'seat'>): string =>
  `row ${project.seating.rows.findIndex((known) => known.id === row) + 1}, seat ${seat}`;
