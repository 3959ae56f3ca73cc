/** What is painted belongs to the subject that it was asked for in: leaving that takes it off. */

import { useSession } from '../state/session';
import { usePainted } from './painted';

/** Watch the open subject from now on; the answer stops it. */
export function endPaintWithSubject(): () => void {
  return useSession.subscribe((now, before) => {
    if (now.subject !== before.subject) usePainted.getState().choose(null);
  });
}
