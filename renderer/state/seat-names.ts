/** What seats are called, and the key that tells them apart. */

import type { Project } from '../../core/room/project';
import { placeName, type ListeningPlace } from '../../core/room/seats';

type Named = Pick<ListeningPlace, 'row' | 'seat'>;

/** `row|seat`, or `row|middle` between two seats. */
export const seatKey = ({ row, seat }: Named): string => `${row}|${seat ?? 'middle'}`;

/** `row 1, seat 2 from the left`, or `middle of row 1`. */
export const seatOption = (project: Project, place: Named): string =>
  placeName(project, place) + (place.seat === null ? '' : ' from the left');

/** `row 1, seat 2`, or `middle of row 1`; rows counted from the screen as they stand in the file. */
export const seatName = placeName;
