/**
 * How far the response from one corner to the opposite one strays from a smooth line, after the idea
 * of Cox, D'Antonio and Avis, JAES 52 (2004) 640: rms of the level in dB from 20 to 200 Hz about its
 * least-squares line over the logarithm of frequency. Their exact measure is from memory; theirs may
 * smooth otherwise, so the figure serves to compare rooms, not against their tables. Narrow notches of
 * the one path weigh as much as peaks: with short decays it tells rooms apart less well than with long
 * ones (at 72 m3 a cube is worse than five rooms of six at T = 1 s, and middling at 0.3 s).
 */

import { type ModeOrder, shellModes } from '../modes/shell-modes';
import type { ShellSize } from '../room/project';

export const SMOOTHNESS_SOURCE =
  "in the manner of Cox, D'Antonio & Avis, JAES 52 (2004) 640 (measure from memory)";

const FROM_HZ = 20;
const TO_HZ = 200;
/** Modes above the range still carry part of the response within it. */
const MODES_TO_HZ = 320;

/** Level in dB, on an arbitrary scale, at 20, 21 ... 200 Hz; decay time `reverberationS` for all modes. */
export function cornerResponseDb(
  size: ShellSize,
  speedMS: number,
  reverberationS: number,
): readonly number[] {
  const damping = (3 * Math.LN10) / reverberationS;
  const modes = shellModes(size, speedMS, MODES_TO_HZ);
  // Before them the zero mode: the pressure of the whole room rising and falling together.
  const squares = Float64Array.from([
    0,
    ...modes.map((mode) => (2 * Math.PI * mode.frequencyHz) ** 2),
  ]);
  const weights = Float64Array.from([1, ...modes.map((mode) => weightOf(mode.order))]);
  const levels: number[] = [];
  for (let hz = FROM_HZ; hz <= TO_HZ; hz++) {
    const w = 2 * Math.PI * hz;
    const imaginary = 2 * damping * w;
    let [re, im] = [0, 0];
    for (let n = 0; n < squares.length; n++) {
      // The weight over (real + j imaginary).
      const real = (squares[n] ?? 0) - w * w;
      const norm = (weights[n] ?? 0) / (real * real + imaginary * imaginary);
      re += real * norm;
      im -= imaginary * norm;
    }
    levels.push(20 * Math.log10(w * Math.hypot(re, im)));
  }
  return levels;
}

/** Of a mode from corner to corner: more half waves weigh more, an odd number of them turns the sign. */
function weightOf([x, y, z]: ModeOrder): number {
  const weight = (x === 0 ? 1 : 2) * (y === 0 ? 1 : 2) * (z === 0 ? 1 : 2);
  return (x + y + z) % 2 === 1 ? -weight : weight;
}

/** Rms deviation in dB of the corner response about its own line. */
export function smoothnessDb(size: ShellSize, speedMS: number, reverberationS: number): number {
  const levels = cornerResponseDb(size, speedMS, reverberationS);
  const x = levels.map((_, i) => Math.log(FROM_HZ + i));
  const mean = (values: readonly number[]): number =>
    values.reduce((sum, value) => sum + value, 0) / values.length;
  const [mx, my] = [mean(x), mean(levels)];
  const covariance = mean(levels.map((level, i) => (level - my) * ((x[i] ?? 0) - mx)));
  const slope = covariance / mean(x.map((value) => (value - mx) ** 2));
  const squares = levels.map((level, i) => (level - my - slope * ((x[i] ?? 0) - mx)) ** 2);
  return Math.sqrt(mean(squares));
}
