/** Which modes make a peak or a dip. */

import type { Point } from '../room/project';
import type { ModalField } from './field';
import type { DrivenSource } from './drive';
import type { Damping } from './path';
import { fieldWeights } from './pressure-plane';

export interface Contribution {
  /** Number in the field; -1 is the mode at zero (pressure the same everywhere). */
  readonly mode: number;
  readonly frequencyHz: number;
  /** Size over the free field at 1 m. */
  readonly size: number;
  /** Against the whole sum's phase, degrees: near 0 it adds, near 180 it takes away. */
  readonly againstDeg: number;
}

/**
 * The `most` largest contributions of all `sources` together at one frequency, largest first; empty where
 * the receiver or every source is outside the free space.
 */
export function modesBehind(
  field: ModalField,
  sources: readonly DrivenSource[],
  receiver: Point,
  frequencyHz: number,
  damping: Damping,
  most = 3,
): readonly Contribution[] {
  const to = field.shapeAt(receiver);
  if (!to || !sources.some((source) => field.shapeAt(source.at))) return [];
  const weights = fieldWeights(field, sources, frequencyHz, damping);
  const terms = [-1, ...to.keys()].map((mode) => ({
    mode,
    modeHz: mode < 0 ? 0 : field.frequenciesHz[mode]!,
    re: mode < 0 ? weights.zeroRe : weights.re[mode]! * to[mode]!,
    im: mode < 0 ? weights.zeroIm : weights.im[mode]! * to[mode]!,
  }));
  const re = terms.reduce((sum, term) => sum + term.re, 0);
  const im = terms.reduce((sum, term) => sum + term.im, 0);
  return terms
    .map(({ mode, modeHz, re: a, im: b }) => ({
      mode,
      frequencyHz: modeHz,
      size: Math.hypot(a, b),
      againstDeg: (Math.atan2(Math.abs(b * re - a * im), a * re + b * im) * 180) / Math.PI,
    }))
    .sort((a, b) => b.size - a.size)
    .slice(0, most);
}
