/** What is known of a finish, in a line. */

import { coefficientUncertainty } from '../../core/decay/uncertainty';
import { bandMark, OCTAVES_HZ } from '../../core/quantity/bands';
import type { LengthUnits } from '../../core/quantity/length';
import { absorptionAt, type Finish } from '../../core/room/finishes';

const KNOWN_HOW: Readonly<Record<Finish['howKnown'], string>> = {
  transcription: 'read in a transcription of it',
  definition: 'by definition',
  computed: 'not measured',
  own: 'typed in here',
};

/** How a finish's figures are known. */
export function knownHow(finish: Finish): string {
  return KNOWN_HOW[finish.howKnown];
}

/** Source and mark of a finish in one sentence. */
export function sourceLine(finish: Finish | undefined, units: LengthUnits): string {
  return finish ? `${finish.sources[units]}; ${knownHow(finish)}.` : 'No such finish.';
}

/** Coefficients by octave with their usual error: `125 Hz 0.29 ±0.17`. */
export function coefficientLine(finish: Finish): string {
  const figures = OCTAVES_HZ.flatMap((hz) => {
    const value = absorptionAt(finish, hz);
    return value === null ? [] : [`${bandMark(hz)} ${value}`];
  });
  return figures.length === 0 ? 'no figures yet' : figures.join(', ');
}

/** The usual error of a coefficient in words. */
export const UNCERTAINTY_LINE = `Laboratories differ by about ±${coefficientUncertainty(125)} at 125 Hz and ±${coefficientUncertainty(500)} above (95 %, typical values of ISO 12999-2); of a hard face half its coefficient is taken at most.`;
