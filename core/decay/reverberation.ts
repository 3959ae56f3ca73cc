/**
 * Statistical reverberation times of Sabine and Eyring, and what all the formulas share. Valid where
 * the field is diffuse: above the Schroeder frequency, with absorption spread over the faces.
 * V in m3, S and A in m2, air absorption m in 1/m, c in m/s.
 *
 * What absorbs by the piece (people, chairs) and the air stand beside the surface term in every
 * formula, outside the logarithm: they are not walls that a ray is thrown back from.
 */

/** Factor 24 ln(10)/c of all these formulas: 0.1610 s/m at 20 C. */
export function decayFactor(speedMS: number): number {
  return (24 * Math.LN10) / speedMS;
}

/** Everything that Sabine and Eyring need of one band. */
export interface DecayInput {
  readonly volumeM3: number;
  readonly surfaceM2: number;
  /** Absorption of the surfaces, m2, from raw coefficients. */
  readonly absorptionM2: number;
  /** Energy attenuation constant of the air, 1/m. */
  readonly airPerM: number;
  readonly speedMS: number;
  /** Absorption of what stands in the room by the piece, m2; 0 where it is not given. */
  readonly objectsM2?: number;
}

/**
 * Largest coefficient that goes into a logarithm. Raw test values exceed 1 where a sample absorbs at
 * its edges (ISO 354): Sabine takes them as they are, all others only after this cut.
 */
export const MOST_IN_LOGARITHM = 0.99;

/** Absorption exponent -ln(1 - coefficient), with the coefficient cut at `MOST_IN_LOGARITHM`. */
export function absorptionExponent(coefficient: number): number {
  return -Math.log1p(-Math.min(coefficient, MOST_IN_LOGARITHM));
}

/** T = (24 ln10/c) V / (a + 4mV + A of objects), `wallsM2` being the surface term a in m2. */
export function decayTimeS(
  input: Pick<DecayInput, 'volumeM3' | 'airPerM' | 'speedMS' | 'objectsM2'>,
  wallsM2: number,
): number {
  const beside = 4 * input.airPerM * input.volumeM3 + (input.objectsM2 ?? 0);
  return (decayFactor(input.speedMS) * input.volumeM3) / (wallsM2 + beside);
}

/** Sabine: surface term A. Source: Sabine 1922; air term as in ISO 354. Overstates dead rooms. */
export function sabineS(input: DecayInput): number {
  return decayTimeS(input, input.absorptionM2);
}

/**
 * Eyring: surface term -S ln(1 - A/S). Source: C. F. Eyring, JASA 1 (1930) 217. A mean coefficient of
 * 0.99 or more (raw test values) is cut at 0.99.
 */
export function eyringS(input: DecayInput): number {
  return decayTimeS(
    input,
    input.surfaceM2 * absorptionExponent(input.absorptionM2 / input.surfaceM2),
  );
}
