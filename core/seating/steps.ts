/**
 * Steps up to a platform. Limits are those of the International Residential Code, R311.7 and R312
 * (R312 from memory): local codes differ and decide.
 */

/** Most rise and least run of a step, m: 7 3/4 in and 10 in (IRC R311.7.5). */
export const STEP_LIMITS_M = { rise: 7.75 * 0.0254, run: 10 * 0.0254 } as const;
/** Least height over every tread, m: 6 ft 8 in (IRC R311.7.2). */
export const STAIR_HEADROOM_M = 80 * 0.0254;
/** A walked surface higher than this over the one beside it has a guard, m: 30 in (IRC R312). */
export const GUARD_FROM_M = 30 * 0.0254;

export interface Steps {
  /** Risers; there is one tread less, the platform itself being the last. */
  readonly count: number;
  readonly riseM: number;
  readonly runM: number;
  /** How far the flight reaches into the aisle, m. */
  readonly reachM: number;
}

/** Equal steps over `heightM` (0 or more), as few as the limits allow. */
export function stepsOver(
  heightM: number,
  { rise, run }: { readonly rise: number; readonly run: number } = STEP_LIMITS_M,
): Steps {
  const count = Math.max(0, Math.ceil(heightM / rise - 1e-9));
  if (count === 0) return { count: 0, riseM: 0, runM: run, reachM: 0 };
  return { count, riseM: heightM / count, runM: run, reachM: (count - 1) * run };
}
