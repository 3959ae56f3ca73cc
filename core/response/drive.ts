/** How one of several sources is driven. */

import type { Point } from '../room/project';

export interface Drive {
  readonly delayMs: number;
  readonly levelDb: number;
  readonly inverted: boolean;
}

/** A source that is driven; what its drive leaves out is 0, and not inverted. */
export interface DrivenSource {
  readonly at: Point;
  readonly drive?: Partial<Drive>;
}

/** The drive as a complex factor at one frequency. */
export function driveAt(
  { delayMs = 0, levelDb = 0, inverted = false }: Partial<Drive> = {},
  frequencyHz: number,
): readonly [number, number] {
  const gain = 10 ** (levelDb / 20) * (inverted ? -1 : 1);
  const phase = -2 * Math.PI * frequencyHz * (delayMs / 1000);
  return [gain * Math.cos(phase), gain * Math.sin(phase)];
}
