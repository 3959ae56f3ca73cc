/** Room that a figure under an axis takes with the space beside it, px. */
const TICK_PX = 36;

/** How many figures an axis of `lengthPx` has room for: 2 to `most`. */
export const tickCount = (lengthPx: number, most: number): number =>
  Math.max(2, Math.min(most, Math.floor(lengthPx / TICK_PX)));
