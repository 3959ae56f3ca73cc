/** What a modal sum is made of: frequencies and shapes, of the plain shell or of the real free space. */

import { shellModes, type ModeOrder } from '../modes/shell-modes';
import type { Point, ShellSize } from '../room/project';
import { modeShapeAt } from '../shape-modes/evaluate';
import type { ShapeModes } from '../shape-modes/shape-modes';

/** Modes without the one at zero, which every room has: pressure the same everywhere, 1. */
export interface ModalField {
  readonly frequenciesHz: Float64Array;
  readonly speedMS: number;
  readonly volumeM3: number;
  /** Each mode's value at a point, mean square 1 over the free space; null outside it. */
  readonly shapeAt: (at: Point) => Float64Array | null;
}

export interface ShellField extends ModalField {
  readonly size: ShellSize;
  readonly orders: readonly ModeOrder[];
}

/** The plain shell's modes up to and including `limitHz`; cosines times the root of 1, 2, 4 or 8. */
export function shellField(size: ShellSize, speedMS: number, limitHz: number): ShellField {
  const modes = shellModes(size, speedMS, limitHz);
  const { width, length, height } = size;
  const shapeAt = (at: Point): Float64Array | null => {
    const [x, y, z] = at;
    if (x < 0 || x > width || y < 0 || y > length || z < 0 || z > height) return null;
    return Float64Array.from(modes, ({ order: [nx, ny, nz] }) => {
      const norm = Math.SQRT2 ** (Math.sign(nx) + Math.sign(ny) + Math.sign(nz));
      const cosines = coupling(nx, x, width) * coupling(ny, y, length) * coupling(nz, z, height);
      return norm * cosines;
    });
  };
  return {
    size,
    orders: modes.map((mode) => mode.order),
    frequenciesHz: Float64Array.from(modes, (mode) => mode.frequencyHz),
    speedMS,
    volumeM3: width * length * height,
    shapeAt,
  };
}

/** cos(n pi x/L), exactly 0 at a node and 1 at an end, so that what symmetry cancels is nothing. */
function coupling(n: number, x: number, length: number): number {
  const quarters = (2 * n * x) / length;
  const whole = Math.round(quarters);
  if (Math.abs(quarters - whole) > 1e-12) return Math.cos((Math.PI / 2) * quarters);
  return whole % 2 !== 0 ? 0 : whole % 4 === 0 ? 1 : -1;
}

/** The modes of the real free space. */
export function shapedField(modes: ShapeModes): ModalField {
  const { frequenciesHz, speedMS, volumeM3 } = modes;
  return { frequenciesHz, speedMS, volumeM3, shapeAt: (at) => modeShapeAt(modes, at) };
}
