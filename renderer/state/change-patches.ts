/** One way to change a door, window or panel, from its fields and by hand. */

import type { Patch } from '../../core/room/project';
import { projectOf, useSession } from './session';
import type { Gesture } from './gesture';

/** Put `patch` in place of the one of its id; `what` names the step. */
export function changePatch(patch: Patch, what: string, gesture: Gesture | null = null): void {
  const session = useSession.getState();
  const patches = projectOf(session).room.patches.map((known) =>
    known.id === patch.id ? patch : known,
  );
  session.change({ kind: 'patches', patches, what }, gesture);
}
