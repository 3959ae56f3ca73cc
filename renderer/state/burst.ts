/**
 * Gesture names for keys: presses that follow each other at once are one step of the history, as a
 * drag is; a press after a pause begins another.
 */

/** A pause longer than this ends a burst, ms. */
export const BURST_MS = 1000;

let count = 0;

export interface Burst {
  /** Gesture of a press now; `nowMs` on any clock that does not jump. */
  readonly press: (nowMs?: number) => string;
}

/** The bursts of one handle or field. */
export function startBursts(): Burst {
  let lastMs = -Infinity;
  let gesture = '';
  return {
    press: (nowMs = performance.now()) => {
      if (nowMs - lastMs > BURST_MS) {
        count += 1;
        gesture = `keys-${count}`;
      }
      lastMs = nowMs;
      return gesture;
    },
  };
}
