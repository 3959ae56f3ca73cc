/** Subwoofers that stand outside the room, inside a fitting, or in the way of something. */

import { clearSubwoofer } from '../bass/clear-subwoofer';
import { obstacleOf, type Obstacle } from '../bass/obstacles';
import type { Project, Subwoofer } from '../room/project';
import { isInside, isInTheOpen, outsideShellM } from '../room/space';
import { subwooferBox } from '../scene/subwoofer-box';
import type { FindingContext } from './context';
import type { Finding, Remedy } from './finding';
import { practiceSource } from '../room/practice/practice';

export function subwooferFindings(context: FindingContext): readonly Finding[] {
  const { project } = context;
  return project.speakers.subwoofers.flatMap((sub): readonly Finding[] =>
    isInTheOpen(sub.position, project.room) ? inTheWayOf(context, sub) : [outside(context, sub)],
  );
}

function outside({ project, lengthText }: FindingContext, { id, position }: Subwoofer): Finding {
  const out = outsideShellM(project.room.size, position);
  const solid = project.room.solids.find(({ min, max }) => isInside(position, min, max));
  return {
    id: `subwoofer-outside:${id}`,
    severity: 'fault',
    subject: 'bass',
    where: `subwoofer ${id}`,
    message:
      out > 0
        ? `It stands ${lengthText(out)} outside the room.`
        : `It stands inside the ${solid?.kind ?? 'fitting'} "${solid?.id ?? ''}".`,
    figureName: 'outside',
    value: out > 0 ? out : null,
    limit: out > 0 ? 0 : null,
    unit: out > 0 ? 'm' : '',
    source: 'geometry',
    remedies: [moveSubwoofer(project, id, () => 'Bring it to the nearest place that is clear.')],
    place: { kind: 'subwoofer', id },
  };
}

/** What its box is in the way of. */
function inTheWayOf(context: FindingContext, sub: Subwoofer): readonly Finding[] {
  const { project, measures } = context;
  const { id, position } = sub;
  const others = project.speakers.subwoofers.filter((other) => other.id !== id);
  const { sizeM, isStated } = subwooferBox(project, sub);
  const obstacle = obstacleOf(project, position, sizeM, others);
  // A loudspeaker that plays tells of that itself.
  if (!obstacle || obstacle.kind === 'speaker') return [];
  // Two that share a place are told once, of the later one.
  if (obstacle.kind === 'subwoofer' && isLater(project, obstacle.id, id)) return [];
  const forPeople = ['door', 'seat', 'walkway'].includes(obstacle.kind);
  return [
    {
      id: `subwoofer-${obstacle.kind}:${id}`,
      severity: forPeople ? 'warning' : 'note',
      subject: 'bass',
      where: `subwoofer ${id}`,
      message: `Its box${isStated ? '' : `, taken as ${measures.about(sizeM[0])} each way with this place in the middle,`} ${wordsOf(obstacle)}.`,
      figureName: '',
      value: null,
      limit: null,
      unit: '',
      source: forPeople ? practiceSource('walk-width') : 'geometry',
      remedies: [
        moveSubwoofer(
          project,
          id,
          (byM) => `Move it by ${measures.rounded(byM)}, to the nearest place that is clear.`,
        ),
      ],
      place: { kind: 'subwoofer', id },
    },
  ];
}

const isLater = ({ speakers }: Project, a: string, b: string): boolean => {
  const at = (id: string): number => speakers.subwoofers.findIndex((sub) => sub.id === id);
  return at(a) > at(b);
};

function wordsOf(obstacle: Obstacle): string {
  switch (obstacle.kind) {
    case 'fitting':
      return `runs into "${obstacle.id}", or stands over its edge`;
    case 'outside':
      return 'reaches out of the room';
    case 'door':
      return `stands where the leaf of "${obstacle.id}" swings`;
    case 'window':
      return `covers part of the window "${obstacle.id}"`;
    case 'picture':
      return 'rises in front of the picture';
    case 'speaker':
      return `runs into the loudspeaker ${obstacle.channel}`;
    case 'planned':
      return `runs into the loudspeaker ${obstacle.channel}, which is to come with a larger layout`;
    case 'subwoofer':
      return `runs into the subwoofer "${obstacle.id}"`;
    case 'seat':
      return `is where seat ${obstacle.seat} of row "${obstacle.row}" and its legs are`;
    case 'walkway':
      return `leaves no way to walk past row "${obstacle.row}"`;
  }
}

/** To the nearest place that is clear; `words` says it, with how far it is. */
export function moveSubwoofer(
  project: Project,
  id: string,
  words: (byM: number) => string,
): Remedy {
  const here = project.speakers.subwoofers.find((sub) => sub.id === id)?.position;
  const place = clearSubwoofer(project, id);
  if (!here || !place) {
    return { text: `Make room for the subwoofer "${id}": no clear place on the floor was found.` };
  }
  const byM = Math.hypot(...place.map((at, n) => at - (here[n] ?? 0)));
  return { text: words(byM), edit: { kind: 'subwoofer', id, position: place } };
}
