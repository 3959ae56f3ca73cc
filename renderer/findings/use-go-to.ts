/** What the press of a finding opens: its subject, and in it the thing that it speaks of. */

import type { Finding } from '../../core/findings/finding';
import { isThing } from '../state/selection';
import { useSession } from '../state/session';
import { useSubjects } from '../subjects/registry';

export function useGoTo(): (finding: Finding) => void {
  const subjects = useSubjects();
  const { chooseFinding, setSubject, select } = useSession.getState();
  return ({ id, subject, place }) => {
    const shownIn = subjects.find(({ tells }) => tells.includes(subject));
    chooseFinding(id);
    if (shownIn) setSubject(shownIn.id);
    if (!place) return;
    // A row's dimensions would lie over what the finding shows of it.
    if (isThing(place) && place.kind !== 'row') select(place);
    shownIn?.goTo?.(place);
  };
}
