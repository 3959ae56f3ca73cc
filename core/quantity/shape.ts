/**
 * Lengths that a kernel is handed, checked once at its entry: its loops read without a check, so that a
 * wrong length would come out as NaN far away, or not at all.
 */

/** Throws where `array` is shorter than `least`. */
export function expectAtLeast(what: string, array: ArrayLike<unknown>, least: number): void {
  if (array.length >= least) return;
  throw new Error(`${what} holds ${array.length} values where ${least} are needed.`);
}

/** Throws where `array` has another length than `length`. */
export function expectLength(what: string, array: ArrayLike<unknown>, length: number): void {
  if (array.length === length) return;
  throw new Error(`${what} holds ${array.length} values instead of ${length}.`);
}
