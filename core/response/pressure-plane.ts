/** The pressure that driven sources make at one frequency, as weights of the modes: for pictures of it. */

import type { PlaneMap } from '../room-modes/evaluate';
import type { ModalField } from './field';
import { driveAt, type DrivenSource } from './drive';
import { dampingPerS, modeDecayS, resonance, zeroDampingPerS, type Damping } from './path';

/** Complex weight of each mode, and that of the mode at zero; over the free field of one source at 1 m. */
export interface FieldWeights {
  readonly re: Float64Array;
  readonly im: Float64Array;
  readonly zeroRe: number;
  readonly zeroIm: number;
}

/**
 * Weights at `frequencyHz`; sources outside the free space are left out. What lies above the last
 * mode is not in it: close to a source the picture is too quiet.
 */
export function fieldWeights(
  field: ModalField,
  sources: readonly DrivenSource[],
  frequencyHz: number,
  damping: Damping,
): FieldWeights {
  const count = field.frequenciesHz.length;
  const [re, im] = [new Float64Array(count), new Float64Array(count)];
  const by = (4 * Math.PI) / field.volumeM3;
  const zero = resonance(0, frequencyHz, zeroDampingPerS(damping, frequencyHz), field.speedMS);
  let [sumRe, sumIm] = [0, 0];
  for (const { at, drive } of sources) {
    const shape = field.shapeAt(at);
    if (!shape) continue;
    const [c, s] = driveAt(drive, frequencyHz);
    sumRe += c;
    sumIm += s;
    shape.forEach((value, n) => {
      re[n] = re[n]! + c * value;
      im[n] = im[n]! + s * value;
    });
  }
  for (let n = 0; n < count; n++) {
    const modeHz = field.frequenciesHz[n]!;
    const [a, b] = resonance(
      modeHz,
      frequencyHz,
      dampingPerS(modeDecayS(damping, n)),
      field.speedMS,
    );
    const [c, s] = [re[n]!, im[n]!];
    re[n] = by * (a * c - b * s);
    im[n] = by * (a * s + b * c);
  }
  return {
    re,
    im,
    zeroRe: by * (zero[0] * sumRe - zero[1] * sumIm),
    zeroIm: by * (zero[0] * sumIm + zero[1] * sumRe),
  };
}

/** Level over a plane, dB re the free field of one source at 1 m; NaN outside the free space. */
export function levelOver(map: PlaneMap, weights: FieldWeights): Float32Array {
  const im = map.blend(weights.im);
  return map.blend(weights.re).map((value, n) => {
    const square = (value + weights.zeroRe) ** 2 + (im[n]! + weights.zeroIm) ** 2;
    return 10 * Math.log10(Math.max(square, 1e-12));
  });
}
