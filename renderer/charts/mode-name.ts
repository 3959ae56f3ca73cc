/** A mode's name on a chart: half waves along the sides of the room. */

import type { ModeOrder } from '../../core/modes/shell-modes';

const SIDES = ['W', 'L', 'H'] as const;

/** `W2` for two half waves along the width, `W1 L3` for a mode of two sides. */
export function modeName(order: ModeOrder): string {
  return SIDES.flatMap((side, axis) => {
    const n = order[axis] ?? 0;
    return n === 0 ? [] : [`${side}${n}`];
  }).join(' ');
}
