/**
 * What the axial rule finds in a plain shell, and whether it matters there: a gap that tangential and
 * oblique modes fill is heard as none, and a pile-up among many modes stands out little.
 */

import {
  axialModes,
  axialSpacing,
  LISTED_TO_HZ,
  WIDEST_AXIAL_GAP_HZ,
  type AxialGap,
  type AxialSpacing,
  type PileUp,
} from '../modes/axial-spacing';
import { THIRD_OCTAVE_REACH_HZ } from '../modes/mode-count';
import { shellModes, type ShellMode } from '../modes/shell-modes';
import { MASKING_MODES } from '../proportions/third-octave-rule';
import { THIRD_OCTAVES } from '../quantity/bands';
import type { ShellSize } from '../room/project';

export interface GapMatter {
  readonly gap: AxialGap;
  /** How many gaps there are in all. */
  readonly count: number;
  /** Modes of other kinds within it. */
  readonly others: number;
  /** The widest span within it that no mode of any kind lies in, Hz. */
  readonly emptyHz: number;
  /** True where that span is no wider than the axial rule allows (our own convention). */
  readonly isFilled: boolean;
}

export interface PileUpMatter {
  readonly pileUp: PileUp;
  readonly count: number;
  /** Modes of all kinds in its third octave. */
  readonly inBand: number;
  /** True where they are as many as mask coincident modes (Bonello 1981). */
  readonly isMasked: boolean;
}

/** The one gap and the one pile-up that matter most; null where there is none. */
export interface AxialMatters {
  readonly gap: GapMatter | null;
  readonly pileUp: PileUpMatter | null;
}

/** Matters that begin below `belowHz`; `modes` are all of the shell, rising, to 224 Hz. */
export function axialMatters(
  { gaps, pileUps }: Pick<AxialSpacing, 'gaps' | 'pileUps'>,
  modes: readonly ShellMode[],
  belowHz: number,
): AxialMatters {
  const low = gaps.filter((gap) => gap.fromHz < belowHz);
  const close = pileUps.filter((pileUp) => pileUp.lowHz < belowHz);
  return {
    gap: worst(
      low.map((gap) => gapMatter(gap, modes, low.length)),
      (a, b) => b.emptyHz - a.emptyHz || b.gap.widthHz - a.gap.widthHz,
    ),
    pileUp: worst(
      close.map((pileUp) => pileUpMatter(pileUp, modes, close.length)),
      (a, b) => Number(a.isMasked) - Number(b.isMasked) || a.pileUp.closestHz - b.pileUp.closestHz,
    ),
  };
}

/** Matters of a shell of `size`. */
export function mattersOfSize(size: ShellSize, speedMS: number, belowHz: number): AxialMatters {
  const modes = shellModes(size, speedMS, THIRD_OCTAVE_REACH_HZ);
  const spacing = axialSpacing(axialModes(size, speedMS), LISTED_TO_HZ);
  return axialMatters(spacing, modes, belowHz);
}

const worst = <T>(list: readonly T[], order: (a: T, b: T) => number): T | null =>
  [...list].sort(order)[0] ?? null;

function gapMatter(gap: AxialGap, modes: readonly ShellMode[], count: number): GapMatter {
  const toHz = Math.min(gap.toHz, THIRD_OCTAVE_REACH_HZ);
  const within = modes
    .map(({ frequencyHz }) => frequencyHz)
    .filter((hz) => hz > gap.fromHz + 1e-6 && hz < toHz - 1e-6);
  const steps = [gap.fromHz, ...within, toHz];
  const emptyHz = Math.max(...steps.slice(1).map((hz, i) => hz - (steps[i] ?? hz)));
  const isFilled = emptyHz <= WIDEST_AXIAL_GAP_HZ;
  return { gap, count, others: within.length, emptyHz, isFilled };
}

function pileUpMatter(pileUp: PileUp, modes: readonly ShellMode[], count: number): PileUpMatter {
  const band = THIRD_OCTAVES.find(
    ({ lowHz, highHz }) => pileUp.lowHz >= lowHz && pileUp.lowHz < highHz,
  );
  const inBand = band
    ? modes.filter(({ frequencyHz: hz }) => hz >= band.lowHz && hz < band.highHz).length
    : 0;
  return { pileUp, count, inBand, isMasked: inBand >= MASKING_MODES };
}
