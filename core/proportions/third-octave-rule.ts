/**
 * Third-octave mode density and coincident modes.
 * Source: O. J. Bonello, JAES 29 (1981) 597; studios under 120 m3. All modes weigh the same, though
 * axial ones carry more energy: that is the usual objection to the rule.
 */

import { modesPerThirdOctave } from '../modes/mode-count';
import type { ShellMode } from '../modes/shell-modes';
import { practice } from '../room/practice/practice';

export const THIRD_OCTAVE_RULE_SOURCE = 'Bonello, JAES 29 (1981) 597';

/** Modes this close, as a share of frequency, coincide. */
export const COINCIDENT_SHARE = practice('coincident-modes');
/** A coincident pair is masked where its band, or each of its two bands, holds at least this many modes. */
export const MASKING_MODES = 5;

export interface ThirdOctaveVerdict {
  /** Nominal bands in Hz that hold fewer modes than the one below. */
  readonly falling: readonly number[];
  /** Coinciding modes, one of them at least in a band with fewer than five: the lower frequency of each pair, Hz. */
  readonly coinciding: readonly number[];
}

/** The two parts of the rule for `modes` (rising, to 224 Hz). */
export function thirdOctaveRule(modes: readonly ShellMode[]): ThirdOctaveVerdict {
  const bands = modesPerThirdOctave(modes);
  const falling = bands
    .filter((band, i) => band.count < (bands[i - 1]?.count ?? 0))
    .map((band) => band.nominalHz);
  const isSparse = ({ frequencyHz }: ShellMode): boolean =>
    bands.some(
      ({ lowHz, highHz, count }) =>
        frequencyHz >= lowHz && frequencyHz < highHz && count < MASKING_MODES,
    );
  // Neighbours over all modes: the edge between two bands parts no pair for the ear.
  const coinciding = modes.slice(1).flatMap((mode, i) => {
    const before = modes[i];
    if (!before || mode.frequencyHz - before.frequencyHz >= COINCIDENT_SHARE * before.frequencyHz) {
      return [];
    }
    return isSparse(before) || isSparse(mode) ? [before.frequencyHz] : [];
  });
  return { falling, coinciding };
}
