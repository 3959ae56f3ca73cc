/** The one thing that the hand has chosen in the open subject, and taking it out of the room. */

import type { Project } from '../../core/room/project';
import { projectOf, useSession, type Session } from './session';
import { changeFittings } from './change-fittings';

export type ChosenThing =
  | { readonly kind: 'fitting'; readonly id: string }
  | { readonly kind: 'patch'; readonly id: string }
  | { readonly kind: 'subwoofer'; readonly id: string }
  | { readonly kind: 'speaker'; readonly id: string }
  | { readonly kind: 'row'; readonly id: string };

type Choices = Pick<Session, 'subject' | 'fitting' | 'patch' | 'row' | 'subwoofer' | 'channel'>;

/** What is chosen where the person is at work, as long as it is in the room; null where nothing is. */
export function chosenThing(project: Project, choices: Choices): ChosenThing | null {
  const { room, seating, speakers } = project;
  const among = <K extends ChosenThing['kind']>(
    kind: K,
    id: string | null,
    known: readonly string[],
  ): { readonly kind: K; readonly id: string } | null =>
    id !== null && known.includes(id) ? { kind, id } : null;
  const row = among(
    'row',
    choices.row,
    seating.rows.map(({ id }) => id),
  );
  if (row) return row;
  const patches = room.patches.map(({ id }) => id);
  switch (choices.subject) {
    case 'fittings':
      return (
        among('patch', choices.patch, patches) ??
        among(
          'fitting',
          choices.fitting,
          room.solids.map(({ id }) => id),
        )
      );
    case 'decay':
      return among('patch', choices.patch, patches);
    case 'bass':
      return among(
        'subwoofer',
        choices.subwoofer,
        speakers.subwoofers.map(({ id }) => id),
      );
    case 'speakers':
      return among(
        'speaker',
        choices.channel,
        speakers.placed.map(({ channel }) => channel),
      );
    default:
      return null;
  }
}

/** What can be taken out of the room by the Delete key. */
export type Removable = Extract<ChosenThing, { kind: 'fitting' | 'patch' | 'subwoofer' }>;

export const isRemovable = (thing: ChosenThing | null): thing is Removable =>
  thing?.kind === 'fitting' || thing?.kind === 'patch' || thing?.kind === 'subwoofer';

/** Take it out of the room, as one named step. False where that is refused, with its reason told. */
export function removeThing({ kind, id }: Removable): boolean {
  const session = useSession.getState();
  const { room, speakers } = projectOf(session);
  const what = `remove ${id}`;
  const others = <T extends { readonly id: string }>(list: readonly T[]): readonly T[] =>
    list.filter((one) => one.id !== id);
  if (kind === 'fitting') {
    if (!changeFittings(others(room.solids), what)) return false;
    session.chooseFitting(null);
  } else if (kind === 'patch') {
    session.change({ kind: 'patches', patches: others(room.patches), what });
    session.choosePatch(null);
  } else {
    session.change({ kind: 'subwoofers', subwoofers: others(speakers.subwoofers), what });
    session.chooseSubwoofer(null);
  }
  return true;
}
