/** The seat that angles are judged at, where the room names one that is not there. */

import { referenceSeat } from '../room/seats';
import type { FindingContext } from './context';
import type { Finding } from './finding';

export function referenceSeatFindings({ project }: FindingContext): readonly Finding[] {
  const wanted = project.seating.reference;
  const taken = referenceSeat(project);
  if (!taken || (taken.row === wanted.row && taken.seat === wanted.seat)) return [];
  return [
    {
      id: 'reference-gone',
      severity: 'warning',
      subject: 'seats',
      where: `row ${wanted.row}, seat ${wanted.seat}`,
      message: `The reference seat is not there; angles are judged at seat ${taken.seat} of row ${taken.row} instead.`,
      figureName: '',
      value: null,
      limit: null,
      unit: '',
      source: 'ITU-R BS.2051 judges angles at the listening position',
      remedies: [
        {
          text: `Make seat ${taken.seat} of row ${taken.row} the reference seat.`,
          edit: { kind: 'reference', row: taken.row, seat: taken.seat },
        },
      ],
      place: { kind: 'row', row: taken.row },
    },
  ];
}
