/** Natural frequencies of a rigid rectangular shell (Rayleigh). */

import type { ShellSize } from '../room/project';

export type ModeKind = 'axial' | 'tangential' | 'oblique';
export type ModeOrder = readonly [number, number, number];

export interface ShellMode {
  readonly frequencyHz: number;
  /** Half waves along width, length and height. */
  readonly order: ModeOrder;
  readonly kind: ModeKind;
}

const KINDS: readonly ModeKind[] = ['axial', 'tangential', 'oblique'];

/** Frequency in Hz of one mode: (c/2) ((nx/W)^2 + (ny/L)^2 + (nz/H)^2)^(1/2). */
export function modeFrequencyHz(order: ModeOrder, size: ShellSize, speedMS: number): number {
  return (
    (speedMS / 2) *
    Math.hypot(order[0] / size.width, order[1] / size.length, order[2] / size.height)
  );
}

/** One non-zero order is axial, two tangential, three oblique. */
export function modeKind(order: ModeOrder): ModeKind {
  return KINDS[order.filter((n) => n > 0).length - 1] ?? 'axial';
}

/** All modes of the shell up to and including `limitHz`, rising; the zero mode is left out. */
export function shellModes(
  size: ShellSize,
  speedMS: number,
  limitHz: number,
): readonly ShellMode[] {
  const modes: ShellMode[] = [];
  const reach = (lengthM: number): number => Math.floor((2 * limitHz * lengthM) / speedMS);
  for (let nx = 0; nx <= reach(size.width); nx++) {
    for (let ny = 0; ny <= reach(size.length); ny++) {
      for (let nz = 0; nz <= reach(size.height); nz++) {
        if (nx + ny + nz === 0) continue;
        const order = [nx, ny, nz] as const;
        const frequencyHz = modeFrequencyHz(order, size, speedMS);
        if (frequencyHz <= limitHz) modes.push({ frequencyHz, order, kind: modeKind(order) });
      }
    }
  }
  return modes.sort((a, b) => a.frequencyHz - b.frequencyHz);
}
