/** What the finished size itself brings: head room, and whether the bay has it. */

import { LEAST_CEILING_M, withinBay } from '../proportions/bay';
import { farCorner } from '../room/point';
import type { Side } from '../room/project';
import { SIDES } from '../room/project';
import type { FindingContext } from './context';
import type { Finding } from './finding';

export function shellFindings({
  project,
  lengthText,
  measures,
}: FindingContext): readonly Finding[] {
  const raisedM = RAISED_M[measures.units];
  const findings: Finding[] = [];
  const { size } = project.room;
  if (size.height < LEAST_CEILING_M) {
    findings.push({
      id: 'ceiling-height',
      severity: 'warning',
      subject: 'shell',
      where: 'ceiling',
      message: `A ceiling at ${lengthText(size.height)} is lower than model building codes allow for a room to live in.`,
      figureName: 'ceiling height',
      value: size.height,
      limit: LEAST_CEILING_M,
      unit: 'm',
      source: 'IRC R305.1 (7 ft)',
      caution:
        'Head room and the way out are matters of safety. Your local code decides: ask your building office before you frame.',
      remedies: [
        {
          text: `Raise the ceiling to ${measures.length(raisedM)}.`,
          edit: { kind: 'size', size: { ...size, height: raisedM } },
        },
      ],
      place: { kind: 'side', side: 'height' },
    });
  }
  findings.push(...bayFindings(project, lengthText));
  return findings;
}

/** The least ceiling in whole figures, m: 2.14 m, or 7 ft. */
const RAISED_M = { metric: 2.14, imperial: LEAST_CEILING_M } as const;

/** A room that the bay does not allow: by the side that is furthest out. */
function bayFindings(
  project: FindingContext['project'],
  lengthText: FindingContext['lengthText'],
): readonly Finding[] {
  const { size, bay } = project.room;
  if (!bay) return [];
  const sides = SIDES.filter((side) => !bay.fixed.includes(side)).map((side) => {
    const limit = size[side] > bay.largest[side] ? bay.largest[side] : bay.least[side];
    const out = Math.max(size[side] - bay.largest[side], bay.least[side] - size[side]);
    return { side, limit, out };
  });
  const none = { side: 'width' as Side, limit: 0, out: 0 };
  const worst = sides.reduce((a, b) => (b.out > a.out ? b : a), none);
  if (worst.out < 0.0005) return [];
  const { side, limit, out } = worst;
  const fitted = withinBay(size, bay);
  return [
    {
      id: 'outside-bay',
      severity: 'fault',
      subject: 'shell',
      where: side,
      message: `The ${side} is ${lengthText(out)} ${size[side] > limit ? 'more than the bay has' : 'less than the bay is to be finished at'}.`,
      figureName: side,
      value: size[side],
      limit,
      unit: 'm',
      source: 'the bay, as entered',
      remedies: [
        {
          text: `Bring the room within the bay: ${farCorner(fitted).map(lengthText).join(' by ')}.`,
          edit: { kind: 'size', size: fitted },
        },
      ],
      place: { kind: 'side', side },
    },
  ];
}
