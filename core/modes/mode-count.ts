/** How many modes there are, without listing them. */

import { THIRD_OCTAVES, type ThirdOctave } from '../quantity/bands';
import type { ShellSize } from '../room/project';
import type { ModeKind, ShellMode } from './shell-modes';

/**
 * Mean number of modes of a rectangular room below `frequencyHz`:
 * (4 pi/3) V (f/c)^3 + (pi/4) S (f/c)^2 + (E/8) (f/c), E the sum of the twelve edges.
 * Source: Maa 1939, Bolt 1939; Kuttruff, Room Acoustics, ch. 3. A smooth mean: the true count steps.
 */
export function expectedModeCount(size: ShellSize, frequencyHz: number, speedMS: number): number {
  const { width, length, height } = size;
  const ratio = frequencyHz / speedMS;
  const volume = width * length * height;
  const surface = 2 * (width * length + width * height + length * height);
  const edges = 4 * (width + length + height);
  return (
    ((4 * Math.PI) / 3) * volume * ratio ** 3 +
    (Math.PI / 4) * surface * ratio ** 2 +
    (edges / 8) * ratio
  );
}

/** Modes per hertz at `frequencyHz`: the slope of `expectedModeCount`. */
export function modeDensityPerHz(size: ShellSize, frequencyHz: number, speedMS: number): number {
  const { width, length, height } = size;
  const surface = 2 * (width * length + width * height + length * height);
  return (
    (4 * Math.PI * width * length * height * frequencyHz ** 2) / speedMS ** 3 +
    ((Math.PI / 2) * surface * frequencyHz) / speedMS ** 2 +
    (width + length + height) / (2 * speedMS)
  );
}

export interface BandCount extends ThirdOctave {
  readonly count: number;
  readonly byKind: Readonly<Record<ModeKind, number>>;
}

/**
 * Modes per third octave from 20 to 200 Hz. `modes` must reach the upper edge of the last band
 * (224 Hz); a mode on an edge counts in the upper band.
 */
export function modesPerThirdOctave(modes: readonly ShellMode[]): readonly BandCount[] {
  return THIRD_OCTAVES.map((band) => {
    const within = modes.filter(
      (mode) => mode.frequencyHz >= band.lowHz && mode.frequencyHz < band.highHz,
    );
    const of = (kind: ModeKind): number => within.filter((mode) => mode.kind === kind).length;
    return {
      ...band,
      count: within.length,
      byKind: { axial: of('axial'), tangential: of('tangential'), oblique: of('oblique') },
    };
  });
}

/** Where `modes` has to end for `modesPerThirdOctave` to be complete, Hz. */
export const THIRD_OCTAVE_REACH_HZ = THIRD_OCTAVES.at(-1)?.highHz ?? 0;
