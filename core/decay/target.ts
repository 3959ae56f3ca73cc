/** What the decay should be: a time per octave with the corridor around it. */

import { exactOctaveHz, type OctaveHz } from '../quantity/bands';
import type { Target } from '../room/project';

export interface TargetBand {
  readonly targetS: number | null;
  readonly lowS: number | null;
  readonly highS: number | null;
}

export const BS1116_SOURCE = 'ITU-R BS.1116-3, 8.2 (mask from memory)';
export const CUSTOM_SOURCE = 'own target, within 25 % (trade rule for home cinemas)';

/** Share by which a decay may leave the person's own target. */
export const CUSTOM_TOLERANCE = 0.25;

export function targetSource(target: Target): string {
  return target.kind === 'bs1116' ? BS1116_SOURCE : CUSTOM_SOURCE;
}

/** Nominal mid-band decay time in s of a listening room of `volumeM3`: 0.25 (V/100)^(1/3). */
export function bs1116NominalS(volumeM3: number): number {
  return 0.25 * Math.cbrt(volumeM3 / 100);
}

/**
 * Target and corridor in the octave `bandHz`.
 *
 * BS.1116: 200 Hz to 4 kHz within 0.05 s of the nominal time; above, within 0.1 s; below 200 Hz the
 * upper limit opens evenly over the logarithm of frequency to +0.3 s at 63 Hz. The nominal time is
 * second-hand from several public sources, the mask is from memory. The standard speaks of reference
 * rooms of 20 m2 and more; in a small basement it is an extrapolation.
 */
export function targetBand(target: Target, bandHz: OctaveHz, volumeM3: number): TargetBand {
  if (target.kind === 'custom') {
    const tolerance = (target.tolerancePercent ?? 100 * CUSTOM_TOLERANCE) / 100;
    const targetS = target.seconds[`${bandHz}`] ?? null;
    if (targetS === null) return { targetS: null, lowS: null, highS: null };
    return {
      targetS,
      lowS: targetS * (1 - tolerance),
      highS: targetS * (1 + tolerance),
    };
  }
  const targetS = bs1116NominalS(volumeM3);
  const high = bandHz > 4000 ? 0.1 : lowEndToleranceS(exactOctaveHz(bandHz));
  const low = bandHz > 4000 ? 0.1 : 0.05;
  return { targetS, lowS: Math.max(0, targetS - low), highS: targetS + high };
}

/** Upper tolerance in s of BS.1116 up to 4 kHz: 0.05 s from 200 Hz, 0.3 s at 63 Hz. */
export function lowEndToleranceS(frequencyHz: number): number {
  if (frequencyHz >= 200) return 0.05;
  return 0.05 + (0.25 * Math.log(200 / Math.max(63, frequencyHz))) / Math.log(200 / 63);
}
