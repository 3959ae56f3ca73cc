/** Faces as labels of fields. */

import { capital } from '../../core/quantity/capital';
import { faceName } from '../../core/room/faces';
import type { Face } from '../../core/room/project';

/** A face of the shell as the label of its field: `Screen wall`. */
export function faceLabel(face: Face): string {
  return capital(faceName(face));
}
