/** What is painted in the drawing: one mode, or what the subwoofers make at one frequency. */

import { create } from 'zustand';
import type { BuiltMode } from '../../core/analysis/built-modes';
import type { ModeOrder } from '../../core/modes/shell-modes';
import { onOtherRoom } from '../state/session';

export type Tone =
  | {
      readonly kind: 'mode';
      /** A mode of the plain shell, or of the room as built. */
      readonly of: 'shell' | 'built';
      readonly frequencyHz: number;
      /** Its name by the shell; null where it is mixed. */
      readonly order: ModeOrder | null;
    }
  | { readonly kind: 'frequency'; readonly frequencyHz: number };

export interface ToneStore {
  readonly tone: Tone | null;
  readonly choose: (tone: Tone | null) => void;
}

export const useTone = create<ToneStore>((set) => ({
  tone: null,
  choose: (tone) => set({ tone }),
}));

/** Number of the mode as built that is meant; null where another kind is chosen, or there are none. */
export function builtMeant(tone: Tone | null, modes: readonly BuiltMode[]): number | null {
  if (tone?.kind !== 'mode' || tone.of !== 'built') return null;
  return modeMeant(
    tone,
    modes.map(({ frequencyHz, likeShell }) => ({ frequencyHz, order: likeShell })),
  );
}

/**
 * Number of the mode meant, in a list that may have changed since it was chosen: the one of the same name,
 * else the nearest in frequency. Null where the list is empty.
 */
export function modeMeant(
  tone: Extract<Tone, { kind: 'mode' }>,
  modes: readonly { readonly frequencyHz: number; readonly order: ModeOrder | null }[],
): number | null {
  const name = tone.order?.join();
  if (name !== undefined) {
    const named = modes.findIndex((mode) => mode.order?.join() === name);
    if (named >= 0) return named;
  }
  let best: number | null = null;
  modes.forEach((mode, n) => {
    const off = Math.abs(mode.frequencyHz - tone.frequencyHz);
    if (best === null || off < Math.abs((modes[best]?.frequencyHz ?? 0) - tone.frequencyHz))
      best = n;
  });
  return best;
}

onOtherRoom(() => useTone.setState({ tone: null }));
