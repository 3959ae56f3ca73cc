import { facePairs, type FacesInput } from './face-absorption';
import { decayTimeS } from './reverberation';

/**
 * Arau-Puchades: as Fitzroy, but the geometric mean of the three times, weighted by area.
 * Source: H. Arau-Puchades, Acustica 65 (1988) 163. For rectangular rooms whose absorption is uneven
 * from pair to pair; even absorption gives Eyring.
 */
export function arauPuchadesS(input: FacesInput): number {
  const logarithm = facePairs(input.faces).reduce(
    (sum, pair) =>
      sum +
      (pair.areaM2 / input.surfaceM2) *
        Math.log(decayTimeS(input, input.surfaceM2 * pair.exponent)),
    0,
  );
  return Math.exp(logarithm);
}
