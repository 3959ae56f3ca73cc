/** An octave of the room as it would be if some of its surfaces took another finish. */

import { absorptionAt, type Finish } from '../room/finishes';
import type { Surface } from '../room/space';
import type { DecayBand } from './decay';
import type { FaceAbsorption, FacesInput } from './face-absorption';

export interface RoomSize {
  readonly volumeM3: number;
  readonly surfaceM2: number;
}

/**
 * What the formulas need of `band` where `finishOn` gives a surface another finish; null from it leaves
 * the surface as it is. Null where a figure is missing. The volume stays: what a deep finish takes of the
 * room is not counted.
 */
export function bandWith(
  { volumeM3, surfaceM2 }: RoomSize,
  speedMS: number,
  band: DecayBand,
  finishOn: (surface: Surface) => Finish | null,
): FacesInput | null {
  if (band.objectsM2 === null || volumeM3 <= 0) return null;
  const faces: FaceAbsorption[] = [];
  let absorptionM2 = 0;
  for (const surface of band.surfaces) {
    const finish = finishOn(surface);
    const coefficient = finish ? absorptionAt(finish, band.hz) : surface.coefficient;
    if (coefficient === null) return null;
    faces.push({ face: surface.face, areaM2: surface.areaM2, coefficient });
    absorptionM2 += surface.areaM2 * coefficient;
  }
  return {
    volumeM3,
    surfaceM2,
    absorptionM2,
    objectsM2: band.objectsM2,
    airPerM: band.airAbsorptionM2 / (4 * volumeM3),
    speedMS,
    faces,
  };
}
