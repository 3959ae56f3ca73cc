/** A plan or section as the handles need it: every ray goes straight into the paper. */

import { Ray } from 'three';
import type { FlatView } from '../../../core/drawing/views';
import type { PaperPoint } from '../../../core/drawing/marks';
import { sceneVector } from '../axes';

/** Before everything in the room, m. */
const BEFORE_M = 200;

/** The ray through a place of the paper, along the way that the view looks. */
export function rayInto({ right, up, looks }: FlatView, [x, y]: PaperPoint): Ray {
  const from: [number, number, number] = [0, 0, 0];
  from[right.axis] = right.sign * x;
  from[up.axis] = up.sign * y;
  from[looks.axis] = -looks.sign * BEFORE_M;
  const along: [number, number, number] = [0, 0, 0];
  along[looks.axis] = looks.sign;
  return new Ray(sceneVector(from), sceneVector(along));
}
