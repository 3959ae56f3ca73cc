/** What a search hands back of the sets that it kept. */

import type { KeptSet } from './best-sets';
import { PLAIN_DRIVE } from './drives';
import { measureSet, type Driven, type SetMeasures } from './measure';
import type { Transfer } from './transfer';

export interface FoundSet {
  /** By rising place. */
  readonly subwoofers: readonly Driven[];
  readonly measures: SetMeasures;
  /** Further sets that cost the same to within `SAME_COST_DB2`: in a symmetric room, mirror images. */
  readonly equals: readonly (readonly Driven[])[];
}

/** Costs closer than this are the same, dB2. */
export const SAME_COST_DB2 = 1e-3;

/** Measured, by rising cost, those of equal cost as one; the first `most`. Yields the share done. */
export function* groupSets(
  transfer: Transfer,
  sets: readonly KeptSet[],
  weight: number,
  most: number,
): Generator<number, readonly FoundSet[]> {
  const measured: { readonly subwoofers: readonly Driven[]; readonly measures: SetMeasures }[] = [];
  for (const [n, set] of sets.entries()) {
    const subwoofers = drivenOf(set);
    const measures = measureSet(transfer, subwoofers, weight);
    if (measures) measured.push({ subwoofers, measures });
    yield 0.95 + (0.05 * (n + 1)) / sets.length;
  }
  measured.sort((a, b) => a.measures.costDb2 - b.measures.costDb2);
  const groups: { -readonly [K in keyof FoundSet]: FoundSet[K] }[] = [];
  for (const { subwoofers, measures } of measured) {
    const group = groups.at(-1);
    if (group && measures.costDb2 - group.measures.costDb2 <= SAME_COST_DB2) {
      group.equals = [...group.equals, subwoofers];
    } else groups.push({ subwoofers, measures, equals: [] });
  }
  return groups.slice(0, most);
}

/** Fields that say nothing are left out, as in the room file. */
function drivenOf({ places, drives }: KeptSet): readonly Driven[] {
  return places.map((place, n) => {
    const { delayMs, levelDb } = drives[n] ?? PLAIN_DRIVE;
    return {
      place,
      ...(delayMs === 0 ? {} : { delayMs }),
      ...(levelDb === 0 ? {} : { levelDb }),
    };
  });
}
