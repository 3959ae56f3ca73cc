/** Kuttruff's two corrections of Eyring. Source: H. Kuttruff, Room Acoustics, ch. 5. */

import type { FacesInput } from './face-absorption';
import {
  absorptionExponent,
  decayTimeS,
  MOST_IN_LOGARITHM,
  type DecayInput,
} from './reverberation';

/** Relative variance of the free paths in rooms of usual shape (Kuttruff's table, from memory). */
export const FREE_PATH_VARIANCE = 0.4;

/**
 * Free paths of unequal length: surface term S a (1 - a g/2), a = -ln(1 - A/S), g the relative variance
 * of the free paths. The bracket is the start of a series: a is held at 1/g, where the term is largest
 * (mean coefficient 0.92), because beyond it the formula would call a deader room livelier.
 */
export function kuttruffPathsS(input: DecayInput): number {
  const exponent = absorptionExponent(input.absorptionM2 / input.surfaceM2);
  const held = Math.min(exponent, 1 / FREE_PATH_VARIANCE);
  return decayTimeS(input, input.surfaceM2 * held * (1 - (held * FREE_PATH_VARIANCE) / 2));
}

/**
 * Plane faces of unequal absorption that reflect diffusely: surface term
 * S (-ln r + ln(1 + sum r_i (r_i - r) S_i^2 / ((r S)^2 - sum r_i^2 S_i^2))), r_i = 1 - alpha_i of a whole
 * face (its patches averaged, cut at 0.99), r their mean by area. Formula from memory. Where the
 * correction has no meaning (one face reflects nearly all) it is left out, which is Eyring.
 */
export function kuttruffUnevenS(input: FacesInput): number {
  const faces = wholeFaces(input);
  const reflected = faces.reduce((sum, face) => sum + face.areaM2 * face.reflection, 0);
  const mean = reflected / input.surfaceM2;
  let above = 0;
  let below = reflected ** 2;
  for (const { areaM2, reflection } of faces) {
    above += reflection * (reflection - mean) * areaM2 ** 2;
    below -= (reflection * areaM2) ** 2;
  }
  const correction = below > 1e-9 * reflected ** 2 ? Math.log1p(above / below) : 0;
  const exponent = -Math.log(mean) + correction;
  return decayTimeS(input, input.surfaceM2 * (exponent > 0 ? exponent : -Math.log(mean)));
}

function wholeFaces({
  faces,
}: FacesInput): readonly { readonly areaM2: number; readonly reflection: number }[] {
  const sums = new Map<string, { areaM2: number; absorbedM2: number }>();
  for (const face of faces) {
    const sum = sums.get(face.face) ?? { areaM2: 0, absorbedM2: 0 };
    sum.areaM2 += face.areaM2;
    sum.absorbedM2 += face.areaM2 * face.coefficient;
    sums.set(face.face, sum);
  }
  return [...sums.values()].map(({ areaM2, absorbedM2 }) => ({
    areaM2,
    reflection: 1 - Math.min(absorbedM2 / areaM2, MOST_IN_LOGARITHM),
  }));
}
