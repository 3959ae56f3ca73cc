/** Faces as labels of fields. */

import { faceName } from '../../core/room/faces';
import type { Face } from '../../core/room/project';

/** A face of the shell as the label of its field: `Screen wall`. */
export function faceLabel(face: Face): string {
  const name = faceName(face);
  return name.charAt(0).toUpperCase() + name.slice(1);
}
