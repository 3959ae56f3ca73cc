/** Which of the open subjects shows what a finding speaks of. */

import type { Subject } from '../../core/findings/finding';
import type { OpenSubject } from '../state/session';

export const SHOWN_IN: Readonly<Record<Subject, OpenSubject>> = {
  shell: 'shell',
  fittings: 'fittings',
  seats: 'speakers',
  picture: 'shell',
  speakers: 'speakers',
  bass: 'bass',
  decay: 'decay',
};
