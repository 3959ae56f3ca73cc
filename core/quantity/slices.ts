/** Long computations are generators: they yield the share done, so that they can be watched and stopped. */

/** The share done, with a first answer beside it. */
export interface Interim<A> {
  readonly share: number;
  readonly interim: A;
}

/** What a long computation yields: the share done, 0 to 1, now and then with an interim answer. */
export type Step<A> = number | Interim<A>;

/** A computation in slices. `next(true)` asks it to end early with what it has; not every one can. */
export type Slices<A> = Generator<Step<A>, A>;

export const shareOf = (step: Step<unknown>): number =>
  typeof step === 'number' ? step : step.share;

/** Run a sliced computation to its end in one go: for those who need no progress. */
export function finish<T>(slices: Generator<unknown, T>): T {
  for (;;) {
    const step = slices.next();
    if (step.done) return step.value;
  }
}

/** The work without its interim answers. */
export function* shares<T>(work: Generator<Step<unknown>, T>): Generator<number, T> {
  for (;;) {
    const step = work.next();
    if (step.done) return step.value;
    yield shareOf(step.value);
  }
}

/** Shares (or counts of `whole`) of a part of the work as shares of the whole work. */
export function* scaled<T, S extends Step<unknown>>(
  work: Generator<S, T>,
  from: number,
  to: number,
  whole = 1,
): Generator<S, T> {
  for (;;) {
    const { done, value } = work.next();
    if (done) return value;
    const step: Step<unknown> = value;
    const share = from + ((to - from) * shareOf(step)) / whole;
    yield (typeof step === 'number' ? share : { ...step, share }) as S;
  }
}
