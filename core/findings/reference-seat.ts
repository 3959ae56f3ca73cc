/** The place that angles are judged at, where the room names one that is not there. */

import { placeName, listeningPlaceOf, referencePlace, referenceTo } from '../room/seats';
import type { FindingContext } from './context';
import type { Finding } from './finding';

export function referenceSeatFindings({ project }: FindingContext): readonly Finding[] {
  const wanted = project.seating.reference;
  const taken = referencePlace(project);
  if (!taken || listeningPlaceOf(project, wanted)) return [];
  const name = placeName(project, taken);
  return [
    {
      id: 'reference-gone',
      severity: 'warning',
      subject: 'seats',
      where: 'seat' in wanted ? `row ${wanted.row}, seat ${wanted.seat}` : `row ${wanted.row}`,
      message: `The reference place is not there; angles are judged at ${name} instead.`,
      figureName: '',
      value: null,
      limit: null,
      unit: '',
      source: 'ITU-R BS.2051 judges angles at the listening position',
      remedies: [
        {
          text: `Make ${name} the reference place.`,
          edit: { kind: 'reference', reference: referenceTo(taken) },
        },
      ],
      place: { kind: 'row', row: taken.row },
    },
  ];
}
