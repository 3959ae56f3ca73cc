/**
 * Pressure at a receiver from a point source, as a sum over modes (time factor exp(+i w t)):
 *
 *     p = (i w rho Q/V) sum psi_n(s) psi_n(r) / (k_n2 - k2 + 2 i d_n w/c2),   k = w/c, d = 3 ln10/T
 *
 * psi of mean square 1, the mode at zero included. The damping term has w, not w_n: near a resonance,
 * where damping counts, the two are the same. A free source gives |p| = w rho Q/(4 pi) at 1 m; all
 * results are p over that, so rho and Q drop out.
 * Source: Kuttruff, Room Acoustics, ch. 3; Morse & Ingard, Theoretical Acoustics, ch. 9 (from memory).
 */

import type { Point } from '../room/project';
import { driveAt, type Drive } from './drive';
import type { ModalField } from './field';

/** Decay time of a mode for which none is given, s: a treated small room at low frequencies. */
export const DEFAULT_DECAY_S = 0.4;

export interface Damping {
  /** Decay time of each mode, s, in the field's order; one number for all. */
  readonly modesS: Float64Array | number;
  /**
   * Of the mode at zero at a frequency, s: it meets every face alike, so that the mean over the others,
   * which meet most faces twice, is too short. As `restS` where it is not given.
   */
  readonly zeroS?: (frequencyHz: number) => number;
  /** Of what lies above the last mode, s; the mean of the modes' without it. */
  readonly restS?: number;
}

/** Complex pressure over that of the free source at 1 m. */
export interface PathResponse {
  readonly frequenciesHz: Float64Array;
  readonly re: Float64Array;
  readonly im: Float64Array;
}

/** What the modes above the last one add, per frequency and decay constant; see `room-modes-tail.ts` and `shell-tail.ts`. */
export type Tail = (
  frequencyHz: number,
  dampingPerS: number,
) => { readonly re: number; readonly im: number };

/** d = 3 ln10/T in 1/s. */
export const dampingPerS = (decayS: number): number => (3 * Math.LN10) / decayS;

/** One term of the sum at one frequency, without the shapes: 1/(k_n2 - k2 + 2 i d w/c2), in m2. */
export function resonance(
  modeHz: number,
  frequencyHz: number,
  damping: number,
  speedMS: number,
): readonly [number, number] {
  const omega = 2 * Math.PI * frequencyHz;
  const re = ((2 * Math.PI * modeHz) ** 2 - omega * omega) / speedMS ** 2;
  const im = (2 * damping * omega) / speedMS ** 2;
  const square = re * re + im * im;
  return [re / square, -im / square];
}

/** Decay time of mode n and of the rest. */
export function modeDecayS({ modesS, restS }: Damping, mode: number): number {
  if (mode >= 0) return typeof modesS === 'number' ? modesS : (modesS[mode] ?? DEFAULT_DECAY_S);
  if (restS !== undefined) return restS;
  if (typeof modesS === 'number') return modesS;
  return modesS.length > 0
    ? modesS.reduce((sum, value) => sum + value, 0) / modesS.length
    : DEFAULT_DECAY_S;
}

/** Decay constant of the mode at zero, 1/s. */
export const zeroDampingPerS = (damping: Damping, frequencyHz: number): number =>
  dampingPerS(damping.zeroS?.(frequencyHz) ?? modeDecayS(damping, -1));

/** Response from `source` to `receiver`; null where one of them is not in the free space. */
export function pathResponse(
  field: ModalField,
  source: Point,
  receiver: Point,
  frequenciesHz: Float64Array,
  damping: Damping = { modesS: DEFAULT_DECAY_S },
  tail?: Tail,
): PathResponse | null {
  const [from, to] = [field.shapeAt(source), field.shapeAt(receiver)];
  if (!from || !to) return null;
  const products = from.map((value, n) => value * to[n]!);
  const { speedMS, volumeM3 } = field;
  const rest = dampingPerS(modeDecayS(damping, -1));
  const dampings = products.map((_, n) => dampingPerS(modeDecayS(damping, n)));
  const re = new Float64Array(frequenciesHz.length);
  const im = new Float64Array(frequenciesHz.length);
  frequenciesHz.forEach((hz, f) => {
    let [sumRe, sumIm] = resonance(0, hz, zeroDampingPerS(damping, hz), speedMS);
    for (let n = 0; n < products.length; n++) {
      const product = products[n]!;
      if (product === 0) continue;
      const term = resonance(field.frequenciesHz[n]!, hz, dampings[n]!, speedMS);
      sumRe += product * term[0];
      sumIm += product * term[1];
    }
    const more = tail?.(hz, rest) ?? { re: 0, im: 0 };
    re[f] = ((4 * Math.PI) / volumeM3) * sumRe + 4 * Math.PI * more.re;
    im[f] = ((4 * Math.PI) / volumeM3) * sumIm + 4 * Math.PI * more.im;
  });
  return { frequenciesHz, re, im };
}

/** Level in dB re the free field of one source at 1 m. */
export function levelDb({ re, im }: PathResponse): Float64Array {
  return re.map((value, f) => 10 * Math.log10(value * value + im[f]! ** 2));
}

/** Sum of responses at one receiver, each with its drive; all over the same frequencies. */
export function together(
  paths: readonly { readonly path: PathResponse; readonly drive?: Partial<Drive> }[],
): PathResponse | null {
  const frequenciesHz = paths[0]?.path.frequenciesHz;
  if (!frequenciesHz) return null;
  const re = new Float64Array(frequenciesHz.length);
  const im = new Float64Array(frequenciesHz.length);
  for (const { path, drive } of paths) {
    frequenciesHz.forEach((hz, f) => {
      const [c, s] = driveAt(drive, hz);
      const [a, b] = [path.re[f]!, path.im[f]!];
      re[f] = re[f]! + a * c - b * s;
      im[f] = im[f]! + a * s + b * c;
    });
  }
  return { frequenciesHz, re, im };
}
