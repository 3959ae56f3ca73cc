/** What the decay should be: a time per octave with the corridor around it. */

import { exactOctaveHz, type OctaveHz } from '../quantity/bands';
import type { Target } from '../room/project';

export interface TargetBand {
  readonly targetS: number | null;
  readonly lowS: number | null;
  readonly highS: number | null;
}

export const BS1116_SOURCE = 'ITU-R BS.1116-3, 8.2 (mask from memory)';
export const HOME_CINEMA_SOURCE =
  'trade rule for home cinemas (common practice): 0.3 s at 100 m³ (3,531 cu ft), longer with the cube root of the volume, kept in 0.2 to 0.5 s; within 25 %, 250 Hz to 4 kHz';

/** Percent by which a decay may leave the person's own target where they name no other. */
export const OWN_TOLERANCE_PERCENT = 25;

/** Share by which a decay may leave the home-cinema time (trade rule: Acoustic Frontiers). */
export const HOME_CINEMA_TOLERANCE = 0.25;
/** Shortest and longest time that the trade rule allows a home cinema, s (Acoustic Frontiers). */
export const HOME_CINEMA_LIMITS_S = [0.2, 0.5] as const;

export function targetSource(target: Target): string {
  switch (target.kind) {
    case 'bs1116':
      return BS1116_SOURCE;
    case 'home-cinema':
      return HOME_CINEMA_SOURCE;
    case 'custom':
      return `own target, within ${tolerancePercent(target)} %`;
  }
}

export function tolerancePercent(target: Target & { readonly kind: 'custom' }): number {
  return target.tolerancePercent ?? OWN_TOLERANCE_PERCENT;
}

/** Nominal mid-band decay time in s of a listening room of `volumeM3`: 0.25 (V/100)^(1/3). */
export function bs1116NominalS(volumeM3: number): number {
  return 0.25 * Math.cbrt(volumeM3 / 100);
}

/**
 * Nominal decay time in s of a home cinema of `volumeM3`: 0.3 (V/100)^(1/3), kept within 0.2 to 0.5 s.
 * No standard gives a figure that could be read, so this is a rule of the trade: the cube-root law with
 * 0.3 s at 3532 cubic feet (Sound & Vision, "Design the ultimate home theater"), and the span and the
 * 25 % of Acoustic Frontiers ("Understanding small room reverberation time measurements"). The law was
 * chosen over the bare span because it follows the size of the room; the span bounds it.
 */
export function homeCinemaNominalS(volumeM3: number): number {
  const [least, most] = HOME_CINEMA_LIMITS_S;
  return Math.min(most, Math.max(least, 0.3 * Math.cbrt(volumeM3 / 100)));
}

/** Target and corridor in the octave `bandHz`; null where the target says nothing about it. */
export function targetBand(target: Target, bandHz: OctaveHz, volumeM3: number): TargetBand {
  switch (target.kind) {
    case 'bs1116':
      return bs1116Band(bandHz, volumeM3);
    case 'home-cinema':
      // The rule speaks of 250 Hz to 4 kHz only.
      return bandHz < 250 || bandHz > 4000
        ? NO_TARGET
        : within(homeCinemaNominalS(volumeM3), HOME_CINEMA_TOLERANCE);
    case 'custom': {
      const seconds = target.seconds[`${bandHz}`];
      return seconds === undefined ? NO_TARGET : within(seconds, tolerancePercent(target) / 100);
    }
  }
}

const NO_TARGET: TargetBand = { targetS: null, lowS: null, highS: null };

const within = (targetS: number, tolerance: number): TargetBand => ({
  targetS,
  lowS: targetS * (1 - tolerance),
  highS: targetS * (1 + tolerance),
});

/**
 * BS.1116: 200 Hz to 4 kHz within 0.05 s of the nominal time; above, within 0.1 s; below 200 Hz the
 * upper limit opens evenly over the logarithm of frequency to +0.3 s at 63 Hz. The nominal time is
 * second-hand from several public sources, the mask is from memory. The standard speaks of reference
 * rooms of 20 m2 and more; in a small basement it is an extrapolation.
 */
function bs1116Band(bandHz: OctaveHz, volumeM3: number): TargetBand {
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
