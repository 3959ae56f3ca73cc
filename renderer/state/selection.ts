/**
 * What the hand has chosen: things of the room, as findings name them. Of each kind one thing is chosen at
 * most, so that a subject finds its own again when it is opened once more.
 */

import type { FindingPlace } from '../../core/findings/finding';
import type { Project } from '../../core/room/project';

/** A thing of the room that can be chosen. */
export type Selected =
  | Extract<FindingPlace, { kind: 'speaker' | 'subwoofer' | 'row' | 'solid' }>
  | { readonly kind: 'patch'; readonly id: string };
export type ThingKind = Selected['kind'];

/** Newest first, one of each kind at most. */
export type Selection = readonly Selected[];

/** Label of a loudspeaker's channel; id of anything else. */
export function idOf(thing: Selected): string {
  if (thing.kind === 'speaker') return thing.channel;
  return thing.kind === 'row' ? thing.row : thing.id;
}

/** True where a finding's place is a thing that can be chosen. */
export const isThing = (place: FindingPlace): place is Extract<FindingPlace, Selected> =>
  ['speaker', 'subwoofer', 'row', 'solid'].includes(place.kind);

export const isSameThing = (a: Selected, b: Selected): boolean =>
  a.kind === b.kind && idOf(a) === idOf(b);

/** Id of the chosen thing of a kind; null where none is. */
export function selectedId(selection: Selection, kind: ThingKind): string | null {
  const thing = selection.find((one) => one.kind === kind);
  return thing ? idOf(thing) : null;
}

/** Kinds that are never chosen together: their handles would lie over each other. */
const APART: readonly (readonly [ThingKind, ThingKind])[] = [
  ['solid', 'patch'],
  ['patch', 'solid'],
];

/** `thing` chosen as well. A row is let go by any other choice, as it is chosen in every subject. */
export function withSelected(selection: Selection, thing: Selected): Selection {
  const gone = new Set<ThingKind>([
    thing.kind,
    'row',
    ...APART.flatMap(([kind, other]) => (kind === thing.kind ? [other] : [])),
  ]);
  return [thing, ...selection.filter(({ kind }) => !gone.has(kind))];
}

export const withoutKind = (selection: Selection, kind: ThingKind): Selection =>
  selection.some((thing) => thing.kind === kind)
    ? selection.filter((thing) => thing.kind !== kind)
    : selection;

const isInRoom = ({ room, seating, speakers }: Project, thing: Selected): boolean => {
  const list: Readonly<Record<ThingKind, readonly { readonly id?: string; channel?: string }[]>> = {
    solid: room.solids,
    patch: room.patches,
    row: seating.rows,
    subwoofer: speakers.subwoofers,
    speaker: speakers.placed,
  };
  return list[thing.kind].some(({ id, channel }) => (channel ?? id) === idOf(thing));
};

/**
 * The one thing that the hand is at, as long as it is in the room: a row, else of the kinds that are
 * chosen in the open subject. Null where nothing is.
 */
export function chosenThing(
  project: Project,
  selection: Selection,
  kinds: readonly ThingKind[],
): Selected | null {
  const isHere = (kind: ThingKind): boolean => kind === 'row' || kinds.includes(kind);
  return selection.find((thing) => isHere(thing.kind) && isInRoom(project, thing)) ?? null;
}
