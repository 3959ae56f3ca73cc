/** The faces as the formulas see them that look at more than the mean coefficient. */

import { AXES, type Axis, FACE_NORMALS, patchSide } from '../room/faces';
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
  const areas: [number, number, number] = [0, 0, 0];
  const absorbed: [number, number, number] = [0, 0, 0];
  for (const { face, areaM2, coefficient } of faces) {
    const { axis } = FACE_NORMALS[patchSide(face)];
    areas[axis] += areaM2;
    absorbed[axis] += areaM2 * coefficient;
  }
  return AXES.flatMap((axis) => {
    const areaM2 = areas[axis];
    if (areaM2 <= 0) return [];
    const meanCoefficient = absorbed[axis] / areaM2;
    return [{ axis, areaM2, meanCoefficient, exponent: absorptionExponent(meanCoefficient) }];
  });
}
