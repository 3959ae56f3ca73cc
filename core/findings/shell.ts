/** What the finished size itself brings: head room and what is not in the modes yet. */

import { withinBay } from '../proportions/bay';
import type { ShellSize } from '../room/project';
import type { FindingContext } from './context';
import type { Finding } from './finding';

/** Least ceiling height of a habitable room, m: 7 ft (IRC R305.1). */
export const LEAST_CEILING_M = 2.134;

export function shellFindings({ project, space, lengthText }: FindingContext): readonly Finding[] {
  const findings: Finding[] = [];
  const { size, solids } = project.room;
  if (space.volumeM3 <= 0) {
    findings.push({
      id: 'no-free-space',
      severity: 'fault',
      subject: 'fittings',
      where: 'fittings',
      message: 'The fittings fill the whole shell: no room is left.',
      value: 0,
      limit: null,
      unit: 'm',
      source: 'geometry',
      remedies: [{ text: 'Take the box that fills the shell out of the room file.' }],
    });
  }
  if (size.height < LEAST_CEILING_M) {
    findings.push({
      id: 'ceiling-height',
      severity: 'warning',
      subject: 'shell',
      where: 'ceiling',
      message: `A ceiling at ${lengthText(size.height)} is lower than model building codes allow for a room to live in.`,
      value: size.height,
      limit: LEAST_CEILING_M,
      unit: 'm',
      source: 'IRC R305.1 (7 ft)',
      caution:
        'Head room and the way out are matters of safety. Your local code decides: ask your building office before you frame.',
      remedies: [
        {
          text: `Raise the ceiling to ${lengthText(2.135)}.`,
          edit: { kind: 'size', size: { ...size, height: 2.135 } },
        },
      ],
      place: { kind: 'side', side: 'height' },
    });
  }
  findings.push(...bayFindings(project, lengthText));
  if (solids.length > 0) {
    findings.push({
      id: 'solids-not-in-modes',
      severity: 'note',
      subject: 'fittings',
      where: `${solids.length} ${solids.length === 1 ? 'fitting' : 'fittings'}`,
      message:
        'The modes are those of the plain shell: soffits, risers and closets count in volume, area and decay, but do not shift the modes yet.',
      value: solids.length,
      limit: null,
      unit: '',
      source: 'limit of this version',
      remedies: [
        {
          text: 'Read single mode frequencies as a guide where fittings fill more than a few percent of the room.',
        },
      ],
    });
  }
  for (const solid of solids) {
    const far = [size.width, size.length, size.height];
    const out = Math.max(
      ...solid.min.map((at) => -at),
      ...solid.max.map((at, axis) => at - (far[axis] ?? 0)),
    );
    if (out <= 0.0005) continue;
    findings.push({
      id: `solid-outside:${solid.id}`,
      severity: 'warning',
      subject: 'fittings',
      where: `${solid.kind} ${solid.id}`,
      message: `It sticks ${lengthText(out)} out of the shell; only the part inside counts.`,
      value: out,
      limit: 0,
      unit: 'm',
      source: 'geometry',
      remedies: [{ text: 'Make the room larger again, or correct the box in the room file.' }],
      place: { kind: 'solid', id: solid.id },
    });
  }
  return findings;
}

const SIDES: readonly (keyof ShellSize)[] = ['width', 'length', 'height'];

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
  const none = { side: 'width' as keyof ShellSize, limit: 0, out: 0 };
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
      value: size[side],
      limit,
      unit: 'm',
      source: 'the bay, as entered',
      remedies: [
        {
          text: `Bring the room within the bay: ${[fitted.width, fitted.length, fitted.height].map(lengthText).join(' by ')}.`,
          edit: { kind: 'size', size: fitted },
        },
      ],
      place: { kind: 'side', side },
    },
  ];
}
