/** Between the subwoofers of a project and the sets of a search. */

import { freeId } from '../room/free-id';
import type { Point, Subwoofer } from '../room/project';
import type { Driven } from './measure';

/** What there is now, as a set whose places follow `firstPlace` in the transfer. */
export function presentSet(
  subwoofers: readonly Subwoofer[],
  firstPlace: number,
): readonly Driven[] {
  return subwoofers.map(({ delayMs = 0, levelDb = 0, inverted = false }, n) => ({
    place: firstPlace + n,
    delayMs,
    levelDb,
    inverted,
  }));
}

/**
 * A set as the subwoofers of a project, `places` being those that were searched for a box of width, height
 * and depth `boxM`, which each then has. The present ones are kept
 * in their order, names and unknown fields with them, and moved; what is missing is added, what is too
 * much goes.
 */
export function asSubwoofers(
  set: readonly Driven[],
  places: readonly Point[],
  present: readonly Subwoofer[],
  boxM: Point,
): readonly Subwoofer[] {
  const taken = new Set(present.slice(0, set.length).map(({ id }) => id));
  return set.flatMap(({ place, delayMs = 0, levelDb = 0, inverted = false }, n) => {
    const position = places[place];
    if (!position) return [];
    const known: Subwoofer = {
      ...(present[n] ?? { id: freeId('sub', taken) }),
      position,
      boxM,
    };
    taken.add(known.id);
    return [
      {
        ...known,
        ...(delayMs === (known.delayMs ?? 0) ? {} : { delayMs }),
        ...(levelDb === (known.levelDb ?? 0) ? {} : { levelDb }),
        ...(inverted === (known.inverted ?? false) ? {} : { inverted }),
      },
    ];
  });
}
