/** Long computations are generators: they yield the share done, so that they can be watched and stopped. */

/** Run a sliced computation to its end in one go: for those who need no progress. */
export function finish<T>(slices: Generator<number, T>): T {
  for (;;) {
    const step = slices.next();
    if (step.done) return step.value;
  }
}

/** Shares (or counts of `whole`) of a part of the work as shares of the whole work. */
export function* scaled<T>(
  work: Generator<number, T>,
  from: number,
  to: number,
  whole = 1,
): Generator<number, T> {
  for (;;) {
    const step = work.next();
    if (step.done) return step.value;
    yield from + ((to - from) * step.value) / whole;
  }
}
