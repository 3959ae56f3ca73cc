/** The subjects, in the order in which a room is built. A new one is a folder beside this file and a line here. */

import { createContext, useContext } from 'react';
import { useSession } from '../state/session';
import { BASS } from './bass/bass';
import { DECAY } from './decay/decay';
import { FITTINGS } from './fittings/fittings';
import { SHELL } from './shell/shell';
import { SPEAKERS } from './speakers/speakers';
import type { Subject } from './subject';

export const SUBJECTS: readonly [Subject, ...Subject[]] = [SHELL, FITTINGS, SPEAKERS, BASS, DECAY];

/** The subjects of the window; another list makes another window. */
export const SubjectsContext = createContext<readonly [Subject, ...Subject[]]>(SUBJECTS);

export const useSubjects = (): readonly [Subject, ...Subject[]] => useContext(SubjectsContext);

/** The open subject. */
export function useOpenSubject(): Subject {
  const subjects = useSubjects();
  const id = useSession((session) => session.subject);
  return subjects.find((subject) => subject.id === id) ?? subjects[0];
}
