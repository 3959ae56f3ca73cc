/** Taking the chosen thing out of the room. */

import { changeFittings } from './change-fittings';
import type { Selected } from './selection';
import { projectOf, useSession } from './session';

/** What can be taken out of the room by the Delete key. */
export type Removable = Extract<Selected, { kind: 'solid' | 'patch' | 'subwoofer' }>;

export const isRemovable = (thing: Selected | null): thing is Removable =>
  thing?.kind === 'solid' || thing?.kind === 'patch' || thing?.kind === 'subwoofer';

/** Take it out of the room, as one named step. False where that is refused, with its reason told. */
export function removeThing({ kind, id }: Removable): boolean {
  const session = useSession.getState();
  const { room, speakers } = projectOf(session);
  const what = `remove ${id}`;
  const others = <T extends { readonly id: string }>(list: readonly T[]): readonly T[] =>
    list.filter((one) => one.id !== id);
  if (kind === 'solid') {
    if (!changeFittings(others(room.solids), what)) return false;
  } else if (kind === 'patch') {
    session.change({ kind: 'patches', patches: others(room.patches), what });
  } else {
    session.change({ kind: 'subwoofers', subwoofers: others(speakers.subwoofers), what });
  }
  session.deselect(kind);
  return true;
}
