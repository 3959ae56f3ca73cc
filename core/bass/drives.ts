/** Delays and levels that a search may give to a subwoofer. */

import type { Drive } from '../response/drive';
import { practice } from '../room/practice/practice';

/** Both in equal steps from 0, so that a difference of two is one again. */
export interface DriveGrid {
  readonly delaysMs: readonly number[];
  /** Falling. */
  readonly levelsDb: readonly number[];
}

export const DEFAULT_DRIVES: DriveGrid = {
  delaysMs: practice('drive-delays'),
  levelsDb: practice('drive-levels'),
};

/** What a search chooses; it turns no polarity. */
export type DelayAndLevel = Pick<Drive, 'delayMs' | 'levelDb'>;

export const PLAIN_DRIVE: DelayAndLevel = { delayMs: 0, levelDb: 0 };

/** All drives of two subwoofers, one of them without delay and one of them at 0 dB; plain ones first. */
export function pairDrives({
  delaysMs,
  levelsDb,
}: DriveGrid): readonly (readonly [DelayAndLevel, DelayAndLevel])[] {
  return eitherOf(delaysMs).flatMap(([delayA, delayB]) =>
    eitherOf(levelsDb).map(([levelA, levelB]): readonly [DelayAndLevel, DelayAndLevel] => [
      { delayMs: delayA, levelDb: levelA },
      { delayMs: delayB, levelDb: levelB },
    ]),
  );
}

/** Pairs of values of which one is 0. */
function eitherOf(values: readonly number[]): readonly (readonly [number, number])[] {
  const others = [...new Set(values)].filter((value) => value !== 0);
  return [
    [0, 0],
    ...others.map((value) => [0, value] as const),
    ...others.map((value) => [value, 0] as const),
  ];
}

/**
 * The same set with its earliest subwoofer undelayed and its loudest at 0 dB: what is common to all changes
 * neither spread nor deviation.
 */
export function settled(drives: readonly DelayAndLevel[]): DelayAndLevel[] {
  const first = Math.min(...drives.map((drive) => drive.delayMs));
  const loudest = Math.max(...drives.map((drive) => drive.levelDb));
  return drives.map(({ delayMs, levelDb }) => ({
    delayMs: delayMs - first,
    levelDb: levelDb - loudest,
  }));
}
