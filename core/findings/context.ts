/** What the findings look at: the project and the results of the concerns below. */

import type { Decay } from '../decay/decay';
import type { AxialSpacing } from '../modes/axial-spacing';
import type { Measures } from '../quantity/measures';
import type { Project } from '../room/project';
import type { FreeSpace } from '../room/space';
import type { SpeakersResult } from '../speakers/judge';

export interface FindingContext {
  readonly project: Project;
  readonly space: FreeSpace;
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
