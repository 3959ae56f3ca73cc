/**
 * How evenly the axial modes follow each other. The rule of thumb for small studios: no two axial
 * modes closer than 5 Hz, none further than 20 Hz from its neighbour.
 * Source: Handbook for Sound Engineers, ch. 6, after Gilford (BBC practice).
 */

import type { ShellSize, Side } from '../room/project';
import { SIDES } from '../room/project';
import type { ShellMode } from './shell-modes';

export const CLOSEST_AXIAL_HZ = 5;
export const WIDEST_AXIAL_GAP_HZ = 20;
export const AXIAL_RULE_SOURCE = 'Handbook for Sound Engineers, ch. 6 (after Gilford)';

/** Modes are listed and judged up to here. */
export const LISTED_TO_HZ = 200;
/** Axial modes that lie too far apart, with the empty span between them. */
export interface AxialGap {
  readonly fromHz: number;
  readonly toHz: number;
  readonly widthHz: number;
}

/** Two or more axial modes, each closer than the limit to the next. */
export interface PileUp {
  readonly modes: readonly ShellMode[];
  readonly lowHz: number;
  readonly highHz: number;
  /** Smallest distance of two neighbours in it, Hz. */
  readonly closestHz: number;
}

export interface AxialSpacing {
  readonly gaps: readonly AxialGap[];
  readonly pileUps: readonly PileUp[];
  /** Smallest and largest distance of neighbours; null with fewer than two axial modes. */
  readonly closestHz: number | null;
  readonly widestHz: number | null;
}

/**
 * Axial modes alone, rising: all to `LISTED_TO_HZ` and the next one of each side, which the last gap is
 * measured to.
 */
export function axialModes(size: ShellSize, speedMS: number): readonly ShellMode[] {
  return rising(SIDES.flatMap((side) => axialModesOf(side, size[side], speedMS)));
}

/** Modes by their frequency, lowest first. */
export const rising = (modes: readonly ShellMode[]): readonly ShellMode[] =>
  [...modes].sort((a, b) => a.frequencyHz - b.frequencyHz);

/** Those of one side alone, rising. */
export function axialModesOf(side: Side, lengthM: number, speedMS: number): readonly ShellMode[] {
  const count = Math.floor((2 * LISTED_TO_HZ * lengthM) / speedMS) + 1;
  return Array.from({ length: count }, (_, i) => ({
    frequencyHz: ((i + 1) * speedMS) / (2 * lengthM),
    order: [
      side === 'width' ? i + 1 : 0,
      side === 'length' ? i + 1 : 0,
      side === 'height' ? i + 1 : 0,
    ] as const,
    kind: 'axial' as const,
  }));
}

/** Spacing of the axial modes among `modes` (rising). A gap is judged where it begins below `limitHz`. */
export function axialSpacing(modes: readonly ShellMode[], limitHz: number): AxialSpacing {
  const axial = modes.filter((mode) => mode.kind === 'axial');
  const gaps: AxialGap[] = [];
  const pileUps: PileUp[] = [];
  let closestHz: number | null = null;
  let widestHz: number | null = null;
  let open: ShellMode[] = [];

  const close = (): void => {
    const [first, last] = [open[0], open.at(-1)];
    if (first && last && open.length > 1) {
      const steps = open.slice(1).map((mode, i) => mode.frequencyHz - (open[i]?.frequencyHz ?? 0));
      pileUps.push({
        modes: open,
        lowHz: first.frequencyHz,
        highHz: last.frequencyHz,
        closestHz: Math.min(...steps),
      });
    }
    open = [];
  };

  axial.forEach((mode, i) => {
    const before = axial[i - 1];
    if (before && before.frequencyHz <= limitHz) {
      const widthHz = mode.frequencyHz - before.frequencyHz;
      widestHz = Math.max(widestHz ?? 0, widthHz);
      if (widthHz > WIDEST_AXIAL_GAP_HZ) {
        gaps.push({ fromHz: before.frequencyHz, toHz: mode.frequencyHz, widthHz });
      }
      if (mode.frequencyHz <= limitHz) closestHz = Math.min(closestHz ?? Infinity, widthHz);
      if (widthHz >= CLOSEST_AXIAL_HZ) close();
    }
    if (mode.frequencyHz <= limitHz) open.push(mode);
  });
  close();
  return { gaps, pileUps, closestHz, widestHz };
}
