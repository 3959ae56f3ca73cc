import { facePairs, type FacesInput } from './face-absorption';
import { decayTimeS } from './reverberation';

/**
 * Fitzroy: the Eyring times of the three pairs of faces, each as if the whole surface had the mean
 * coefficient of the pair, weighted by the area of the pair.
 * Source: D. Fitzroy, JASA 31 (1959) 893. For rectangular rooms with absorption on one pair; known to
 * overstate the time where a pair hardly absorbs.
 */
export function fitzroyS(input: FacesInput): number {
  return facePairs(input.faces).reduce(
    (sum, pair) =>
      sum + (pair.areaM2 / input.surfaceM2) * decayTimeS(input, input.surfaceM2 * pair.exponent),
    0,
  );
}
