/** Which modes make a peak or a dip. */

import type { Point } from '../room/project';
import type { ModalField } from './field';
import { dampingPerS, decayOf, resonance, type Damping } from './path';

export interface Contribution {
  /** Number in the field; -1 is the mode at zero (pressure the same everywhere). */
  readonly mode: number;
  readonly frequencyHz: number;
  /** Size over the free field at 1 m. */
  readonly size: number;
  /** Against the whole sum's phase, degrees: near 0 it adds, near 180 it takes away. */
  readonly againstDeg: number;
}

/** The `most` largest contributions at one frequency, largest first; empty outside the free space. */
export function modesBehind(
  field: ModalField,
  source: Point,
  receiver: Point,
  frequencyHz: number,
  damping: Damping,
  most = 3,
): readonly Contribution[] {
  const [from, to] = [field.shapeAt(source), field.shapeAt(receiver)];
  if (!from || !to) return [];
  const by = (4 * Math.PI) / field.volumeM3;
  const terms = [-1, ...from.keys()].map((mode) => {
    const modeHz = mode < 0 ? 0 : (field.frequenciesHz[mode] ?? 0);
    const product = mode < 0 ? 1 : (from[mode] ?? 0) * (to[mode] ?? 0);
    const term = resonance(modeHz, frequencyHz, dampingPerS(decayOf(damping, mode)), field.speedMS);
    return { mode, modeHz, re: by * product * term[0], im: by * product * term[1] };
  });
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
