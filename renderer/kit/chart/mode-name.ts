/** A mode's name on a chart: half waves along the sides of the room. */

import type { RoomMode } from '../../../core/analysis/named-modes';
import type { ModeOrder } from '../../../core/modes/shell-modes';

const SIDES = ['W', 'L', 'H'] as const;

/** `W2` for two half waves along the width, `W1 L3` for a mode of two sides. */
export function modeName(order: ModeOrder): string {
  return SIDES.flatMap((side, axis) => {
    const n = order[axis] ?? 0;
    return n === 0 ? [] : [`${side}${n}`];
  }).join(' ');
}

/** Name of a mode as built: that of the shell, or `mixed` with the two shell modes most in it. */
export function builtModeName({
  likeShell,
  shares,
}: Pick<RoomMode, 'likeShell' | 'shares'>): string {
  if (likeShell) return modeName(likeShell);
  const parts = shares.slice(0, 2).map((part) => modeName(part.order));
  return parts.length === 0 ? 'mixed' : `mixed (${parts.join(' + ')})`;
}
