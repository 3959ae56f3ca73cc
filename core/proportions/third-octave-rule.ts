/**
 * Third-octave mode density and coincident modes.
 * Source: O. J. Bonello, JAES 29 (1981) 597; studios under 120 m3. All modes weigh the same, though
 * axial ones carry more energy: that is the usual objection to the rule.
 */

import { modesPerThirdOctave } from '../modes/mode-count';
import type { ShellMode } from '../modes/shell-modes';

export const THIRD_OCTAVE_RULE_SOURCE = 'Bonello, JAES 29 (1981) 597';

/** Modes this close, as a share of frequency, coincide: 5 mm in 2.5 m (our own convention). */
export const COINCIDENT_SHARE = 0.002;
/** A coincident pair is masked where its band holds at least this many modes. */
export const MASKING_MODES = 5;

export interface ThirdOctaveVerdict {
  /** Nominal bands in Hz that hold fewer modes than the one below. */
  readonly falling: readonly number[];
  /** Pairs of coinciding modes in bands with fewer than five modes: the lower frequency of each, Hz. */
  readonly coinciding: readonly number[];
}

/** The two parts of the rule for `modes` (rising, to 224 Hz). */
export function thirdOctaveRule(modes: readonly ShellMode[]): ThirdOctaveVerdict {
  const bands = modesPerThirdOctave(modes);
  const falling = bands
    .filter((band, i) => band.count < (bands[i - 1]?.count ?? 0))
    .map((band) => band.nominalHz);
  const coinciding = bands
    .filter((band) => band.count < MASKING_MODES)
    .flatMap((band) => {
      const within = modes.filter(
        (mode) => mode.frequencyHz >= band.lowHz && mode.frequencyHz < band.highHz,
      );
      return within.slice(1).flatMap((mode, i) => {
        const before = within[i]?.frequencyHz ?? 0;
        return mode.frequencyHz - before < COINCIDENT_SHARE * before ? [before] : [];
      });
    });
  return { falling, coinciding };
}
