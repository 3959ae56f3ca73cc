/** What the findings look at: the project and the results of the concerns below. */

import { speedOfSoundMS } from '../air/medium';
import { decayOf, type Decay } from '../decay/decay';
import { axialModes, axialSpacing, LISTED_TO_HZ, type AxialSpacing } from '../modes/axial-spacing';
import { THIRD_OCTAVE_REACH_HZ } from '../modes/mode-count';
import { schroederHz } from '../modes/schroeder';
import { shellModes, type ShellMode } from '../modes/shell-modes';
import { carpenterStepM } from '../quantity/carpenter-step';
import type { LengthUnits } from '../quantity/length';
import { measuresIn, type Measures } from '../quantity/measures';
import type { Project } from '../room/project';
import { freeSpace, type FreeSpace } from '../room/space';
import { judgeSpeakers, type SpeakersResult } from '../speakers/judge';

export interface FindingContext {
  readonly project: Project;
  readonly space: FreeSpace;
  /** Modes of the plain shell, rising, to 224 Hz. */
  readonly modes: readonly ShellMode[];
  readonly spacing: AxialSpacing;
  readonly speedMS: number;
  readonly schroederHz: number | null;
  readonly decay: Decay;
  readonly speakers: SpeakersResult;
  /** Step in metres of the sizes that a remedy proposes. */
  readonly remedyStepM: number;
  /** A length in metres in the units that the person reads. */
  readonly lengthText: (lengthM: number) => string;
  /** Every quantity in the units that the person reads. */
  readonly measures: Measures;
}

/** All that findings need to know of `project`: no slow answers among it. */
export function contextOf(project: Project, units: LengthUnits): FindingContext {
  const { size } = project.room;
  const measures = measuresIn(units);
  const speedMS = speedOfSoundMS(project.air.temperatureC);
  const space = freeSpace(project.room);
  const decay = decayOf(project, space);
  return {
    project,
    space,
    modes: shellModes(size, speedMS, THIRD_OCTAVE_REACH_HZ),
    spacing: axialSpacing(axialModes(size, speedMS), LISTED_TO_HZ),
    speedMS,
    schroederHz: decay.midS === null ? null : schroederHz(decay.midS, space.volumeM3),
    decay,
    speakers: judgeSpeakers(project),
    remedyStepM: 2 * carpenterStepM(units),
    lengthText: measures.length,
    measures,
  };
}
