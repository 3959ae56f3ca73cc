/** The least and the most that the figures of a room file may be; fields and edits hold to them too. */

import type { Side } from './kinds';

/** Smallest and largest shell that the program takes, m. */
export const SIZE_LIMITS_M = {
  width: [1, 30],
  length: [1, 30],
  height: [1, 12],
} as const satisfies Record<Side, readonly [number, number]>;

/** Places may lie a little outside the shell (a wall can have been moved past them), never far, m. */
export const PLACE_LIMITS_M = [-10, 60] as const;

/** Figures of a row of seats, m. */
export const ROW_LIMITS = {
  y: PLACE_LIMITS_M,
  x: PLACE_LIMITS_M,
  pitchM: [0.3, 3],
  riserM: [0, 5],
  earHeightM: [0.3, 2.5],
  eyeHeightM: [0.3, 2.5],
} as const;

/** Figures of the screen: lengths in m, the gain a factor. */
export const SCREEN_LIMITS = {
  widthM: [0.2, 30],
  bottomM: [0, 12],
  gain: [0.1, 10],
  centreX: PLACE_LIMITS_M,
} as const;

/** Figures of the air that the formulas are taken to hold for. */
export const AIR_LIMITS = {
  temperatureC: [-20, 50],
  humidityPercent: [10, 100],
  pressureKPa: [50, 120],
} as const;

/** A side of a loudspeaker's or subwoofer's cabinet, m. */
export const BOX_SIDE_LIMITS_M = [0.02, 3] as const;

/** Raw test values exceed 1 where a sample absorbs at its edges (ISO 354); the library's go to 1.24. */
export const MOST_ABSORPTION = 1.25;

/** Patches that a room file may hold at most. */
export const MOST_PATCHES = 60;

/** What a room file and its fields hold of the subwoofers: how many, and how each may be driven. */
export const SUBWOOFER_LIMITS = { count: 16, delayMs: [0, 30], levelDb: [-20, 6] } as const;
