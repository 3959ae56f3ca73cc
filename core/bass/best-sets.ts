/** The best sets so far: each set of places once, with the best drives that were offered. */

import type { Allows } from './allowed-sets';
import { PLAIN_DRIVE, type DelayAndLevel } from './drives';

export interface KeptSet {
  /** Rising. */
  readonly places: readonly number[];
  /** Of each place; none where all are plain. */
  readonly drives: readonly DelayAndLevel[];
  /** In the units of `sumCost`. */
  readonly cost: number;
}

export interface BestSets {
  /** What costs more is not kept. */
  limit: number;
  /** Rising by cost, then by places. */
  readonly sets: KeptSet[];
  readonly most: number;
  /** A set that it refuses is not kept. */
  readonly allows: Allows;
}

export const bestSets = (most: number, allows: Allows = () => true): BestSets => ({
  limit: Infinity,
  sets: [],
  most,
  allows,
});

/** Keep the set where it is among the best; `places` in any order, `drives` in the same. */
export function offer(
  best: BestSets,
  places: readonly number[],
  cost: number,
  drives: readonly DelayAndLevel[] = [],
): void {
  if (!(cost <= best.limit)) return;
  const order = [...places.keys()].sort((a, b) => (places[a] ?? 0) - (places[b] ?? 0));
  const found: KeptSet = {
    places: order.map((n) => places[n] ?? 0),
    drives: drives.length > 0 ? order.map((n) => drives[n] ?? PLAIN_DRIVE) : [],
    cost,
  };
  const known = best.sets.findIndex((set) =>
    set.places.every((place, n) => place === found.places[n]),
  );
  if (known >= 0 && (best.sets[known]?.cost ?? 0) <= cost) return;
  if (!best.allows(found.places, found.drives)) return;
  if (known >= 0) best.sets.splice(known, 1);
  const after = best.sets.findIndex((set) => inOrder(found, set) < 0);
  best.sets.splice(after < 0 ? best.sets.length : after, 0, found);
  if (best.sets.length > best.most) best.sets.pop();
  if (best.sets.length === best.most) best.limit = best.sets.at(-1)?.cost ?? Infinity;
}

function inOrder(a: KeptSet, b: KeptSet): number {
  if (a.cost !== b.cost) return a.cost - b.cost;
  const differs = a.places.findIndex((place, n) => place !== b.places[n]);
  return differs < 0 ? 0 : (a.places[differs] ?? 0) - (b.places[differs] ?? 0);
}
