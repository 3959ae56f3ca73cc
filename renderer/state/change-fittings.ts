/** One way to change the fittings: what cannot be built is refused with its reason, and nothing is lost. */

import { fittingsRefusal } from '../../core/room/connected';
import type { Solid } from '../../core/room/project';
import { projectOf, useSession } from './session';
import type { Gesture } from './gesture';

/** Put `solids` in place of the present ones; `what` names the step. False where that is refused. */
export function changeFittings(
  solids: readonly Solid[],
  what: string,
  gesture: Gesture | null = null,
): boolean {
  const session = useSession.getState();
  const { room } = projectOf(session);
  const refusal = fittingsRefusal({ ...room, solids });
  if (refusal !== null) {
    session.notify({ tone: 'bad', title: 'The fitting was not changed', lines: [refusal] });
    return false;
  }
  session.change({ kind: 'solids', solids, what }, gesture);
  return true;
}

/** The list with one solid replaced. */
export function withSolid(solids: readonly Solid[], changed: Solid): readonly Solid[] {
  return solids.map((solid) => (solid.id === changed.id ? changed : solid));
}
