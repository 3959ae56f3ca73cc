/** The program's conscience: every finding, worst first. A new finding is one function in this list. */

import { applyEdit } from '../room/edits';
import { axialFindings } from './axial-modes';
import { contextOf, type FindingContext } from './context';
import { decayFindings } from './decay';
import { earlyReflectionFindings } from './early-reflections';
import type { Draft, Finding } from './finding';
import { fittingFindings } from './fittings';
import { layoutFindings } from './layout';
import { leadingHome, type Trial } from './lead-home';
import { objectFindings } from './objects';
import { sortFindings } from './order';
import { patchFindings } from './patches';
import { referenceSeatFindings } from './reference-seat';
import { screenFindings, seatFindings } from './seats-and-screen';
import { shellFindings } from './shell';
import { speakerBoxFindings } from './speaker-boxes';
import { speakerMountFindings } from './speaker-mounts';
import { speakerFindings } from './speakers';
import { subwooferFindings } from './subwoofers';

const WATCHES: readonly ((context: FindingContext) => readonly Draft[])[] = [
  shellFindings,
  fittingFindings,
  axialFindings,
  seatFindings,
  referenceSeatFindings,
  screenFindings,
  layoutFindings,
  speakerFindings,
  speakerMountFindings,
  speakerBoxFindings,
  subwooferFindings,
  decayFindings,
  earlyReflectionFindings,
  patchFindings,
  objectFindings,
];

export function findingsOf(context: FindingContext): readonly Finding[] {
  const { project, measures } = context;
  const trial: Trial = (edit) => {
    const changed = applyEdit(project, edit);
    return changed === project ? null : draftsOf(contextOf(changed, measures.units));
  };
  return sortFindings(leadingHome(draftsOf(context), trial, measures));
}

const draftsOf = (context: FindingContext): readonly Draft[] =>
  WATCHES.flatMap((watch) => watch(context));
