/** The program's conscience: every finding, worst first. A new finding is one function in this list. */

import { axialFindings } from './axial-modes';
import type { FindingContext } from './context';
import { decayFindings } from './decay';
import { earlyReflectionFindings } from './early-reflections';
import type { Finding } from './finding';
import { fittingFindings } from './fittings';
import { layoutFindings } from './layout';
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

const WATCHES: readonly ((context: FindingContext) => readonly Finding[])[] = [
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
  return sortFindings(WATCHES.flatMap((watch) => watch(context)));
}
