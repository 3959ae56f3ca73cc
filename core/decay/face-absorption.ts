/** The faces as the formulas see them that look at more than the mean coefficient. */

import { FACE_NORMALS, patchSide, type Axis } from '../room/faces';
import { absorptionExponent, type DecayInput } from './reverberation';

/** One finish on one face. */
export interface FaceAbsorption {
  /** Shell face, or `solid-id:face`; parts of one plane share it. */
  readonly face: string;
  readonly areaM2: number;
  /** Raw coefficient. */
  readonly coefficient: number;
}

/** A band for the formulas that tell faces apart. */
export interface FacesInput extends DecayInput {
  readonly faces: readonly FaceAbsorption[];
}

/** All faces normal to one axis, taken as the pair of walls of a rectangular room. */
export interface FacePair {
  readonly axis: Axis;
  readonly areaM2: number;
  readonly meanCoefficient: number;
  /** -ln(1 - mean coefficient), the mean cut at 0.99. */
  readonly exponent: number;
}

/**
 * The three pairs of faces by the axis they are normal to: side walls, screen and back wall, floor and
 * ceiling. A solid's faces count with the axis that they are normal to, so the areas add up to the
 * whole surface of the free space.
 */
export function facePairs(faces: readonly FaceAbsorption[]): readonly FacePair[] {
  return ([0, 1, 2] as const).flatMap((axis) => {
    const within = faces.filter(({ face }) => FACE_NORMALS[patchSide(face)].axis === axis);
    const areaM2 = within.reduce((sum, face) => sum + face.areaM2, 0);
    if (areaM2 <= 0) return [];
    const absorbed = within.reduce((sum, face) => sum + face.areaM2 * face.coefficient, 0);
    const meanCoefficient = absorbed / areaM2;
    return [{ axis, areaM2, meanCoefficient, exponent: absorptionExponent(meanCoefficient) }];
  });
}
