/** Checks across the file: every name that is used exists, and no name is used twice. */

import { describe, pathText, type Fault } from './fault';
import { finishLookup, nearestFinishId } from './finishes';
import { FACES, type Project } from './project';

/** Faults of names in an otherwise well-formed project. */
export function referenceFaults(project: Project): readonly Fault[] {
  return [...duplicates(project), ...unknownFinishes(project), ...unknownPlaces(project)];
}

function duplicates(project: Project): readonly Fault[] {
  const lists: readonly (readonly [string, readonly string[], string])[] = [
    ['room.solids', project.room.solids.map((solid) => solid.id), 'id'],
    ['room.patches', project.room.patches.map((patch) => patch.id), 'id'],
    ['objects', project.objects.map((object) => object.id), 'id'],
    ['finishesCustom', project.finishesCustom.map((finish) => finish.id), 'id'],
    ['seating.rows', project.seating.rows.map((row) => row.id), 'id'],
    ['speakers.placed', project.speakers.placed.map((speaker) => speaker.channel), 'channel'],
    ['speakers.subwoofers', project.speakers.subwoofers.map((sub) => sub.id), 'id'],
  ];
  return lists.flatMap(([path, names, field]) =>
    names.flatMap((name, i) =>
      names.indexOf(name) < i
        ? [
            {
              path: `${path}[${i}].${field}`,
              sentence: `"${name}" is used twice in this list. Give one of them another name.`,
            },
          ]
        : [],
    ),
  );
}

function unknownFinishes(project: Project): readonly Fault[] {
  const lookup = finishLookup(project);
  const uses: readonly (readonly [string, string])[] = [
    ...FACES.map((face) => [`room.finishes.${face}`, project.room.finishes[face]] as const),
    ...project.room.solids.map((s, i) => [`room.solids[${i}].finish`, s.finish] as const),
    ...project.room.patches.map((p, i) => [`room.patches[${i}].finish`, p.finish] as const),
  ];
  return uses
    .filter(([, id]) => lookup(id) === undefined)
    .map(([path, id]) => ({
      path,
      sentence: `There is no finish "${id}". The nearest known one is "${nearestFinishId(id, project)}"; your own finishes go in finishesCustom.`,
    }));
}

function unknownPlaces(project: Project): readonly Fault[] {
  const faults: Fault[] = [];
  const { rows, reference } = project.seating;
  const row = rows.find((candidate) => candidate.id === reference.row);
  if (rows.length > 0 && !row) {
    faults.push({
      path: pathText(['seating', 'reference', 'row']),
      sentence: `There is no row "${reference.row}". Name one of ${rows.map((r) => r.id).join(', ')}.`,
    });
  }
  if (row && reference.seat > row.seats) {
    faults.push({
      path: pathText(['seating', 'reference', 'seat']),
      sentence: `Row "${row.id}" has ${row.seats} seats, so there is no seat ${reference.seat}.`,
    });
  }
  const solids = new Set(project.room.solids.map((solid) => solid.id));
  project.room.patches.forEach((patch, i) => {
    const parts = patch.face.split(':');
    const side = parts.at(-1);
    const owner = parts.length === 2 ? parts[0] : null;
    const known =
      parts.length <= 2 &&
      FACES.some((face) => face === side) &&
      (owner === null || solids.has(owner ?? ''));
    if (!known) {
      faults.push({
        path: pathText(['room', 'patches', i, 'face']),
        sentence: `There is no face ${describe(patch.face)}. Name one of ${FACES.join(', ')}, or a solid's as its id, a colon and the side.`,
      });
    }
  });
  return faults;
}
