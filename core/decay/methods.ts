/** Every method side by side: how far they part is an honest measure of what is known. */

import { arauPuchadesS } from './arau-puchades';
import type { FacesInput } from './face-absorption';
import { fitzroyS } from './fitzroy';
import { kuttruffPathsS, kuttruffUnevenS } from './kuttruff';
import { millingtonS } from './millington';
import { eyringS, sabineS } from './reverberation';

export const METHOD_IDS = [
  'sabine',
  'eyring',
  'millington',
  'fitzroy',
  'arauPuchades',
  'kuttruffPaths',
  'kuttruffUneven',
] as const;
export type MethodId = (typeof METHOD_IDS)[number];

export interface Method {
  readonly name: string;
  readonly source: string;
  /** Where it holds, in a few words. */
  readonly holds: string;
  readonly timeS: (input: FacesInput) => number;
}

export const METHODS: Readonly<Record<MethodId, Method>> = {
  sabine: {
    name: 'Sabine',
    source: 'W. C. Sabine 1922; raw coefficients as in ISO 354',
    holds: 'live rooms, absorption spread evenly',
    timeS: sabineS,
  },
  eyring: {
    name: 'Eyring',
    source: 'C. F. Eyring, JASA 1 (1930) 217',
    holds: 'absorption spread evenly',
    timeS: eyringS,
  },
  millington: {
    name: 'Millington-Sette',
    source: 'G. Millington, JASA 4 (1932) 69; coefficients cut at 0.99',
    holds: 'no single high coefficient',
    timeS: millingtonS,
  },
  fitzroy: {
    name: 'Fitzroy',
    source: 'D. Fitzroy, JASA 31 (1959) 893',
    holds: 'absorption on one pair of faces; tends to overstate',
    timeS: fitzroyS,
  },
  arauPuchades: {
    name: 'Arau-Puchades',
    source: 'H. Arau-Puchades, Acustica 65 (1988) 163',
    holds: 'rectangular, absorption uneven from pair to pair',
    timeS: arauPuchadesS,
  },
  kuttruffPaths: {
    name: 'Kuttruff, free paths',
    source: 'H. Kuttruff, Room Acoustics, ch. 5; variance 0.4 from memory',
    holds: 'absorption spread evenly',
    timeS: kuttruffPathsS,
  },
  kuttruffUneven: {
    name: 'Kuttruff, uneven faces',
    source: 'H. Kuttruff, Room Acoustics, ch. 5; formula from memory',
    holds: 'faces that reflect diffusely',
    timeS: kuttruffUnevenS,
  },
};

export type MethodTimes = Readonly<Record<MethodId, number | null>>;

/** Times of every method in s; all null without an input. */
export function methodTimes(input: FacesInput | null): MethodTimes {
  return Object.fromEntries(
    METHOD_IDS.map((id) => [id, input && METHODS[id].timeS(input)]),
  ) as Record<MethodId, number | null>;
}

/** Shortest and longest of the times, s; null where they are unknown. */
export function spreadOf(times: MethodTimes): readonly [number, number] | null {
  const known = METHOD_IDS.map((id) => times[id]).filter((time) => time !== null);
  return known.length === 0 ? null : [Math.min(...known), Math.max(...known)];
}
