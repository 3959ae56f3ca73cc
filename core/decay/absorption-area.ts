/** Equivalent absorption of the room's surfaces, band by band. */

import type { OctaveHz } from '../quantity/bands';
import { absorptionAt, type Finish } from '../room/finishes';
import type { Surface } from '../room/space';

export interface SurfaceAbsorption extends Surface {
  /** Raw coefficient of the source; may exceed 1 (ISO 354 samples absorb at their edges). */
  readonly coefficient: number | null;
}

export interface BandAbsorption {
  /** Sum of area times coefficient, m2; null where a finish has no figure in this band. */
  readonly areaM2: number | null;
  /** Mean coefficient over the whole surface. */
  readonly mean: number | null;
  readonly surfaces: readonly SurfaceAbsorption[];
}

/** Absorption of `surfaces` in the octave `bandHz`. */
export function bandAbsorption(
  surfaces: readonly Surface[],
  lookup: (id: string) => Finish | undefined,
  bandHz: OctaveHz,
): BandAbsorption {
  let areaM2: number | null = 0;
  let total = 0;
  const rows = surfaces.map((surface) => {
    const finish = lookup(surface.finish);
    const coefficient = finish ? absorptionAt(finish, bandHz) : null;
    total += surface.areaM2;
    areaM2 = areaM2 === null || coefficient === null ? null : areaM2 + surface.areaM2 * coefficient;
    return { ...surface, coefficient };
  });
  return { areaM2, mean: areaM2 === null || total === 0 ? null : areaM2 / total, surfaces: rows };
}
