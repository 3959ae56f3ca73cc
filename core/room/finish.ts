/** What is known of a finish: what it absorbs, how it is built, where that comes from. */

import type { FaceRole } from './faces';
import type { LengthUnits } from '../quantity/length';
import type { AbsorptionByBand } from './project';

/**
 * How a finish is built: `face`, the face itself is made so; `flat`, fixed flat on it; `framed`, in
 * framing against it; `air`, with air behind; `floor`, laid on it; `hung`, a curtain or baffles; `own`,
 * as the person builds it.
 */
export type FinishMount = 'face' | 'flat' | 'framed' | 'air' | 'floor' | 'hung' | 'own';

/** What a finish may be put on. */
export type FacePlace = FaceRole;

export interface Finish {
  readonly id: string;
  /** Its name with metric sizes; `names` has both. */
  readonly name: string;
  readonly names: Readonly<Record<LengthUnits, string>>;
  readonly category: string;
  /** Mounting of the test as its source states it (ASTM E795: A, E-400), or words. */
  readonly mounting: string;
  readonly mount: FinishMount;
  /**
   * How far its front stands off what it is fixed to, m: 0.4 for a ceiling tested in mounting E-400, 0
   * where the face itself is built so.
   */
  readonly depthM: number;
  /** Air between it and what it is fixed to, m. */
  readonly airM?: number;
  /** The source does not say the depth: a usual one (common practice). */
  readonly depthUsual?: boolean;
  /** What its own frame and board take in front of bare masonry, m, where the face itself is built so. */
  readonly frameM?: number;
  readonly suits: readonly FacePlace[];
  /** Sold over the counter. */
  readonly shop?: boolean;
  /** Market that sells it in these sizes; either where it is not given. */
  readonly builds?: 'metric' | 'north-american';
  readonly absorption: AbsorptionByBand;
  /** Source with metric sizes; `sources` has both. */
  readonly source: string;
  readonly sources: Readonly<Record<LengthUnits, string>>;
  /**
   * `transcription`: the figures were read in a copy of the source; `computed`: by the program's own
   * absorber model from `design`; `own`: typed in by the person.
   */
  readonly howKnown: 'transcription' | 'definition' | 'computed' | 'own';
  /** The absorber that the figures were computed from. */
  readonly design?: unknown;
}
