/** Whether a decay lies within its corridor, by two methods together. */

/**
 * Methods a band is judged by. Eyring is right for even absorption, Arau-Puchades for absorption that
 * sits on one pair of faces; where the absorption is even they agree.
 */
export const JUDGED_BY = ['eyring', 'arauPuchades'] as const;

export interface Verdict {
  /** Seconds outside the corridor: positive too long, negative too short, 0 within or unknown. */
  readonly outsideS: number;
  /** The time that lies nearest to the corridor; null where it is unknown. */
  readonly nearestS: number | null;
}

/** A band is outside only where all `times` (s) are on the same side, and by as much as the nearest. */
export function verdictOf(
  { lowS, highS }: { readonly lowS: number | null; readonly highS: number | null },
  times: readonly (number | null)[],
): Verdict {
  const known = times.filter((time) => time !== null);
  if (known.length === 0 || lowS === null || highS === null) {
    return { outsideS: 0, nearestS: known[0] ?? null };
  }
  const [shortest, longest] = [Math.min(...known), Math.max(...known)];
  if (shortest > highS) return { outsideS: shortest - highS, nearestS: shortest };
  if (longest < lowS) return { outsideS: longest - lowS, nearestS: longest };
  const within = known.find((time) => time >= lowS && time <= highS);
  return { outsideS: 0, nearestS: within ?? shortest };
}
