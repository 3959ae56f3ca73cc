/**
 * Checks across the file: every name that is used exists, and no name is used twice. They also look at
 * a file that has other faults, so that all are told at once: what cannot be read is passed over, and
 * so is a name that might belong to it.
 */

import { faceIdOf } from './faces';
import { describe, pathText, type Fault } from './fault';
import { finishLookup, nearestFinishId } from './finishes';
import { FACES, type CustomFinish } from './project';
import { listAt, textIn, atPath } from './unchecked';

/** Faults of names in a project, or in the file of one whose shape has faults. */
export function referenceFaults(file: unknown): readonly Fault[] {
  return [
    ...duplicates(file),
    ...unknownFinishes(file),
    ...unknownSeat(file),
    ...unknownFaces(file),
  ];
}

/** Lists with the field that names their items. */
const NAMED_LISTS = [
  ['room.solids', 'id'],
  ['room.patches', 'id'],
  ['objects', 'id'],
  ['finishesCustom', 'id'],
  ['seating.rows', 'id'],
  ['speakers.placed', 'channel'],
  ['speakers.subwoofers', 'id'],
] as const;

function duplicates(file: unknown): readonly Fault[] {
  return NAMED_LISTS.flatMap(([path, field]) => {
    const names = listAt(file, path).map((item) => textIn(item, field));
    return names.flatMap((name, i) =>
      name !== null && names.indexOf(name) < i
        ? [
            {
              path: `${path}[${i}].${field}`,
              sentence: `"${name}" is used twice in this list. Give one of them another name.`,
            },
          ]
        : [],
    );
  });
}

/** The names of a list; null where one of them, or the list itself, cannot be read. */
function readableNames(file: unknown, path: string): readonly string[] | null {
  const value = atPath(file, path);
  if (value !== undefined && !Array.isArray(value)) return null;
  const names = listAt(file, path).map((item) => textIn(item, 'id'));
  return names.every((name) => name !== null) ? names : null;
}

function unknownFinishes(file: unknown): readonly Fault[] {
  const own = readableNames(file, 'finishesCustom');
  if (own === null) return [];
  const finishesCustom = own.map((id): CustomFinish => ({
    id,
    name: '',
    absorption: {},
    source: '',
  }));
  const lookup = finishLookup({ finishesCustom });
  const uses: readonly (readonly [string, string | null])[] = [
    ...FACES.map(
      (face) => [`room.finishes.${face}`, textIn(atPath(file, 'room.finishes'), face)] as const,
    ),
    ...['room.solids', 'room.patches'].flatMap((path) =>
      listAt(file, path).map(
        (item, i) => [`${path}[${i}].finish`, textIn(item, 'finish')] as const,
      ),
    ),
  ];
  return uses.flatMap(([path, id]) =>
    id === null || lookup(id) !== undefined
      ? []
      : [
          {
            path,
            sentence: `There is no finish "${id}". The nearest known one is "${nearestFinishId(id, { finishesCustom })}"; your own finishes go in finishesCustom.`,
          },
        ],
  );
}

function unknownSeat(file: unknown): readonly Fault[] {
  const names = readableNames(file, 'seating.rows');
  const reference = atPath(file, 'seating.reference');
  const wanted = textIn(reference, 'row');
  if (names === null || names.length === 0 || wanted === null) return [];
  const at = names.indexOf(wanted);
  if (at === -1) {
    const sentence = `There is no row "${wanted}". Name one of ${names.join(', ')}.`;
    return [{ path: pathText(['seating', 'reference', 'row']), sentence }];
  }
  const seats = atPath(listAt(file, 'seating.rows')[at], 'seats');
  const seat = atPath(reference, 'seat');
  if (typeof seats !== 'number' || typeof seat !== 'number' || seat <= seats) return [];
  const sentence = `Row "${wanted}" has ${seats} seats, so there is no seat ${seat}.`;
  return [{ path: pathText(['seating', 'reference', 'seat']), sentence }];
}

function unknownFaces(file: unknown): readonly Fault[] {
  const solids = readableNames(file, 'room.solids');
  return listAt(file, 'room.patches').flatMap((patch, i): readonly Fault[] => {
    const face = textIn(patch, 'face');
    if (face === null) return [];
    const named = faceIdOf(face);
    const known =
      named !== null && (named.solid === null || solids === null || solids.includes(named.solid));
    if (known) return [];
    const sentence = `There is no face ${describe(face)}. Name one of ${FACES.join(', ')}, or a solid's as its id, a colon and the side.`;
    return [{ path: pathText(['room', 'patches', i, 'face']), sentence }];
  });
}
