/**
 * Statistical reverberation times. Valid where the field is diffuse: above the Schroeder frequency,
 * with absorption spread over the faces. V in m3, S and A in m2, air absorption m in 1/m, c in m/s.
 */

/** Factor 24 ln(10)/c of all these formulas: 0.1610 s/m at 20 C. */
export function decayFactor(speedMS: number): number {
  return (24 * Math.LN10) / speedMS;
}

/** Everything the formulas need of one band. */
export interface DecayInput {
  readonly volumeM3: number;
  readonly surfaceM2: number;
  readonly absorptionM2: number;
  /** Energy attenuation constant of the air, 1/m. */
  readonly airPerM: number;
  readonly speedMS: number;
}

/** Sabine: T = (24 ln10/c) V / (A + 4mV). Source: Sabine 1922; air term as in ISO 354. */
export function sabineS(input: DecayInput): number {
  const air = 4 * input.airPerM * input.volumeM3;
  return (decayFactor(input.speedMS) * input.volumeM3) / (input.absorptionM2 + air);
}

/**
 * Eyring: T = (24 ln10/c) V / (-S ln(1 - A/S) + 4mV). Source: C. F. Eyring, JASA 1 (1930) 217.
 * A mean coefficient of 1 or more (raw test values) absorbs all at once: T = 0.
 */
export function eyringS(input: DecayInput): number {
  const mean = input.absorptionM2 / input.surfaceM2;
  if (mean >= 1) return 0;
  const absorbed = -input.surfaceM2 * Math.log1p(-mean) + 4 * input.airPerM * input.volumeM3;
  return (decayFactor(input.speedMS) * input.volumeM3) / absorbed;
}
