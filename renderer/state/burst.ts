/**
 * Gestures of keys: presses that follow each other at once are one gesture, as a drag is. It ends with a
 * pause, and when the focus leaves what the keys moved.
 */

import type { Gesture } from './gesture';

/** A pause longer than this ends a burst, ms. */
export const BURST_MS = 1000;

export interface Burst {
  /** The gesture of a press now; `nowMs` on any clock that does not jump. */
  readonly press: (nowMs?: number) => Gesture;
  readonly end: () => void;
}

/** The bursts of one handle or field; `begin` starts a gesture. */
export function startBursts(begin: () => Gesture): Burst {
  let lastMs = -Infinity;
  let going: Gesture | null = null;
  const end = (): void => {
    going?.end();
    going = null;
  };
  return {
    press: (nowMs = performance.now()) => {
      if (nowMs - lastMs > BURST_MS) end();
      lastMs = nowMs;
      going ??= begin();
      return going;
    },
    end,
  };
}
