/** How loud a reflection is in an octave, against the direct sound. */

import type { OctaveHz } from '../quantity/bands';
import { absorptionAt, type Finish } from '../room/finishes';
import type { ReflectionPath } from './image-sources';

/** Part of the energy that every face returns, 0.01 (-20 dB): coefficients of 1 and above are cut. */
export const LEAST_REFLECTED = 0.01;

export type FinishLookup = (id: string) => Finish | undefined;

/**
 * Level in dB that one reflection off a face with `coefficient` leaves: 10 lg(1 - coefficient), -20 to
 * 0. The coefficient is that of the tables, for sound from all sides at once; what a face returns
 * under a single angle can differ by some decibels (common practice to use it all the same).
 */
export function reflectionLossDb(coefficient: number): number {
  return 10 * Math.log10(Math.min(1, Math.max(LEAST_REFLECTED, 1 - coefficient)));
}

/**
 * Coefficient in the octave. Few tables go to 8 kHz: there a finish without a figure takes the one of
 * 4 kHz (our own convention), so that what is covered and what is bare are judged in the same octaves.
 */
function coefficientAt(finish: Finish, octaveHz: OctaveHz): number | null {
  const known = absorptionAt(finish, octaveHz);
  return known === null && octaveHz === 8000 ? absorptionAt(finish, 4000) : known;
}

/**
 * Level in dB of `path` against the direct sound in the octave: inverse distance and what each face
 * returns. Null where a finish is unknown or has no figure in that octave (at 8 kHz nor at 4 kHz).
 */
export function reflectionLevelDb(
  path: Pick<ReflectionPath, 'hits' | 'spreadingDb'>,
  octaveHz: OctaveHz,
  finish: FinishLookup,
): number | null {
  let levelDb = path.spreadingDb;
  for (const hit of path.hits) {
    const covering = finish(hit.finish);
    const coefficient = covering ? coefficientAt(covering, octaveHz) : null;
    if (coefficient === null) return null;
    levelDb += reflectionLossDb(coefficient);
  }
  return levelDb;
}
