/** Average and spread of the response over seats. */

/** Over the seats, at each frequency; levels in dB. */
export interface LevelSpread {
  /** Mean of the levels. */
  readonly meanDb: Float64Array;
  readonly lowestDb: Float64Array;
  readonly highestDb: Float64Array;
  /** Variance of the levels, divisor N - 1, dB2; 0 with one seat. */
  readonly varianceDb2: Float64Array;
  /**
   * Mean spatial variance: the mean of `varianceDb2` over the frequencies. The smaller, the better one
   * equaliser serves all seats.
   * Source: T. Welti, A. Devantier, JAES 54 (2006) 347; divisor N - 1 from memory.
   */
  readonly meanSpatialVarianceDb2: number;
}

/** Levels of each seat over the same frequencies; null without seats. */
export function levelSpread(levelsDb: readonly Float64Array[]): LevelSpread | null {
  const first = levelsDb[0];
  if (!first) return null;
  const at = (f: number): readonly number[] => levelsDb.map((levels) => levels[f] ?? 0);
  const meanDb = first.map(
    (_, f) => at(f).reduce((sum, level) => sum + level, 0) / levelsDb.length,
  );
  const varianceDb2 = first.map((_, f) => {
    if (levelsDb.length < 2) return 0;
    const square = at(f).reduce((sum, level) => sum + (level - (meanDb[f] ?? 0)) ** 2, 0);
    return square / (levelsDb.length - 1);
  });
  return {
    meanDb,
    lowestDb: first.map((_, f) => Math.min(...at(f))),
    highestDb: first.map((_, f) => Math.max(...at(f))),
    varianceDb2,
    meanSpatialVarianceDb2:
      first.length > 0 ? varianceDb2.reduce((sum, value) => sum + value, 0) / first.length : 0,
  };
}
