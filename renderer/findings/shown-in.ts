/** Which of the open subjects shows what a finding speaks of. */

import { SUBJECTS, type Subject } from '../../core/findings/finding';
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

/** The subjects of findings that an open subject of the window shows. */
export const shownUnder = (open: OpenSubject): readonly Subject[] =>
  SUBJECTS.filter((subject) => SHOWN_IN[subject] === open);
