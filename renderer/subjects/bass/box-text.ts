/** The size of a subwoofer's box in words. */

import type { Measures } from '../../../core/quantity/measures';
import type { Point } from '../../../core/room/project';

/** `40 cm each way`, or width by height by depth. */
export function boxText(boxM: Point, { part }: Measures): string {
  const sides = boxM.map(part);
  return new Set(sides).size === 1 ? `${sides[0] ?? ''} each way` : sides.join(' x ');
}
