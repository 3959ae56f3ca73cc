/** What the subjects are called, and of what they are. */

import type { OpenSubject } from '../state/session';

export const SUBJECT_TITLES: Readonly<Record<OpenSubject, { title: string; about: string }>> = {
  shell: { title: 'Shell', about: 'size and modes' },
  fittings: { title: 'Fittings', about: 'ducts, risers, closets' },
  speakers: { title: 'Speakers', about: 'angles and places' },
  bass: { title: 'Bass', about: 'subwoofers, every seat' },
  decay: { title: 'Decay', about: 'finishes and time' },
};
