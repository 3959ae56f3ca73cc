/** The nearest of some places that is clear. */

import type { Point } from '../room/project';

export interface Candidate {
  readonly place: Point;
  /** What going there costs, m: the way, and what else weighs as much as a way. */
  readonly wayM: number;
}

/** The one of the least way where nothing is in the way; null where there is none. */
export function clearPlace(
  candidates: readonly Candidate[],
  isClearAt: (place: Point) => boolean,
): Point | null {
  const byWay = [...candidates].sort((a, b) => a.wayM - b.wayM);
  return byWay.find(({ place }) => isClearAt(place))?.place ?? null;
}
