/** What is painted in the drawing: one mode, or what the subwoofers make at one frequency. */

import type { RoomMode } from '../../core/analysis/named-modes';
import type { ModeOrder } from '../../core/modes/shell-modes';
import type { Painted } from '../state/painted';
import { useSession } from '../state/session';

export type { Painted };

export interface PaintedChoice {
  readonly painted: Painted | null;
  readonly choose: (painted: Painted | null) => void;
}

/** What is painted, and how to choose it. It goes with the subject that it was chosen in. */
export function usePainted(): PaintedChoice {
  const painted = useSession((session) => session.painted);
  const choose = useSession((session) => session.paint);
  return { painted, choose };
}

/** Number of the mode as built that is meant; null where another kind is chosen, or there are none. */
export function builtMeant(painted: Painted | null, modes: readonly RoomMode[]): number | null {
  if (painted?.kind !== 'mode' || painted.of !== 'built') return null;
  return modeMeant(
    painted,
    modes.map(({ frequencyHz, likeShell }) => ({ frequencyHz, order: likeShell })),
  );
}

/**
 * Number of the mode meant, in a list that may have changed since it was chosen: the one of the same name,
 * else the nearest in frequency. Null where the list is empty.
 */
export function modeMeant(
  painted: Extract<Painted, { kind: 'mode' }>,
  modes: readonly { readonly frequencyHz: number; readonly order: ModeOrder | null }[],
): number | null {
  const name = painted.order?.join();
  if (name !== undefined) {
    const named = modes.findIndex((mode) => mode.order?.join() === name);
    if (named >= 0) return named;
  }
  let best: number | null = null;
  modes.forEach((mode, n) => {
    const off = Math.abs(mode.frequencyHz - painted.frequencyHz);
    if (best === null || off < Math.abs((modes[best]?.frequencyHz ?? 0) - painted.frequencyHz))
      best = n;
  });
  return best;
}
