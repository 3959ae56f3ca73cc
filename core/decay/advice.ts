/** Which method to read: Eyring, unless the absorption sits on one pair of faces. */

import type { OctaveHz } from '../quantity/bands';
import type { Axis } from '../room/faces';
import type { FacePair } from './face-absorption';

/**
 * Eyring takes the absorption for evenly spread. EN 12354-6:2003 asks that it differ by no more than
 * this factor from one pair of opposite faces to another (from memory).
 */
export const EVEN_WITHIN_FACTOR = 3;
export const ADVICE_SOURCE = 'EN 12354-6:2003, limits of the method (from memory)';

/** A pair is never taken to absorb less than this, so that the ratio stays a figure. */
const LEAST_EXPONENT = 0.001;

/** Octaves the advice rests on: those that nearly every finish has and the statistics hold in. */
const ADVISED_HZ: readonly OctaveHz[] = [250, 500, 1000, 2000, 4000];

export interface MethodAdvice {
  readonly method: 'eyring' | 'arauPuchades';
  /** Largest ratio of the pairs' absorption exponents -ln(1 - mean coefficient); null if unknown. */
  readonly ratio: number | null;
  readonly limit: number;
  /** Octave of that ratio, and the pairs it lies between, by the axis they are normal to. */
  readonly hz: OctaveHz | null;
  readonly strongest: Axis | null;
  readonly weakest: Axis | null;
  readonly source: string;
}

/**
 * Arau-Puchades where the pairs' exponents part by more than the limit in more than half of the octaves
 * 250 Hz to 4 kHz that have figures; else Eyring.
 */
export function methodAdvice(
  bands: readonly { readonly hz: OctaveHz; readonly pairs: readonly FacePair[] }[],
): MethodAdvice {
  const judged = bands.flatMap(({ hz, pairs }) => {
    if (!ADVISED_HZ.includes(hz) || pairs.length === 0) return [];
    const strongest = pairs.reduce((a, b) => (b.exponent > a.exponent ? b : a));
    const weakest = pairs.reduce((a, b) => (b.exponent < a.exponent ? b : a));
    const ratio = strongest.exponent / Math.max(LEAST_EXPONENT, weakest.exponent);
    return [{ hz, ratio, strongest: strongest.axis, weakest: weakest.axis }];
  });
  const uneven = judged.filter((band) => band.ratio > EVEN_WITHIN_FACTOR);
  const [first, ...others] = judged;
  const worst = first && others.reduce((a, b) => (b.ratio > a.ratio ? b : a), first);
  return {
    method: uneven.length * 2 > judged.length ? 'arauPuchades' : 'eyring',
    ratio: worst?.ratio ?? null,
    limit: EVEN_WITHIN_FACTOR,
    hz: worst?.hz ?? null,
    strongest: worst?.strongest ?? null,
    weakest: worst?.weakest ?? null,
    source: ADVICE_SOURCE,
  };
}
