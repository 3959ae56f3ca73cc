/**
 * Named steps back to the start of the session. A step is a whole state (states share what did not
 * change) and the name of what led to it. Changes of one gesture, a drag say, are one step.
 */

/** Tells a gesture from every other: the same key is the same gesture. */
export type GestureKey = object | string;

export interface Step<S> {
  readonly state: S;
  /** What the step did, as a noun: undo says it. Empty for the first. */
  readonly name: string;
  readonly gesture: GestureKey | null;
  /** What could be redone before the step's gesture began: there again where it is taken back. */
  readonly emptied?: readonly Step<S>[];
}

export interface History<S> {
  readonly past: readonly Step<S>[];
  readonly present: Step<S>;
  readonly future: readonly Step<S>[];
}

export function startHistory<S>(state: S): History<S> {
  return { past: [], present: { state, name: '', gesture: null }, future: [] };
}

/** A new present; within the same gesture it replaces the present one. Redo is emptied. */
export function record<S>(
  history: History<S>,
  state: S,
  name: string,
  gesture: GestureKey | null = null,
): History<S> {
  const { past, present, future } = history;
  const goesOn = gesture !== null && gesture === present.gesture;
  const emptied = goesOn ? present.emptied : gesture === null ? undefined : future;
  return {
    past: goesOn ? past : [...past, present],
    present: { state, name, gesture, ...(emptied ? { emptied } : {}) },
    future: [],
  };
}

/** Every state of the history changed alike, without a step: for what is not the person's work. */
export function amendAll<S>(history: History<S>, change: (state: S) => S): History<S> {
  const amended = (step: Step<S>): Step<S> => ({
    ...step,
    state: change(step.state),
    ...(step.emptied ? { emptied: step.emptied.map(amended) } : {}),
  });
  return {
    past: history.past.map(amended),
    present: amended(history.present),
    future: history.future.map(amended),
  };
}

/** What a change of `gesture` starts from: the state before that gesture, else the present one. */
export function baseOf<S>(history: History<S>, gesture: GestureKey | null): S {
  const goesOn = gesture !== null && gesture === history.present.gesture;
  return (goesOn ? history.past.at(-1) : undefined)?.state ?? history.present.state;
}

/** The history without the present step, as if its gesture had not been: redo is as it was before. */
export function dropPresent<S>(history: History<S>): History<S> {
  const { past, present } = history;
  const before = past.at(-1);
  return before
    ? { past: past.slice(0, -1), present: settled(before), future: present.emptied ?? [] }
    : history;
}

/** The history as it was before `gesture` began; the same where the present step is of another. */
export function takeBack<S>(history: History<S>, gesture: GestureKey): History<S> {
  return history.present.gesture === gesture ? dropPresent(history) : history;
}

/** The history with `gesture` over, where the present step is of it: the next change is another step. */
export function endGesture<S>(history: History<S>, gesture: GestureKey): History<S> {
  return history.present.gesture === gesture
    ? { ...history, present: settled(history.present) }
    : history;
}

/** A history that begins one named step back. */
export function startAfter<S>(before: S, state: S, name: string): History<S> {
  return record(startHistory(before), state, name);
}

export function undo<S>(history: History<S>): History<S> {
  const before = history.past.at(-1);
  if (!before) return history;
  return {
    past: history.past.slice(0, -1),
    present: settled(before),
    future: [settled(history.present), ...history.future],
  };
}

export function redo<S>(history: History<S>): History<S> {
  const [next, ...rest] = history.future;
  if (!next) return history;
  return {
    past: [...history.past, history.present],
    present: settled(next),
    future: rest,
  };
}

/** The step with its gesture over: nothing goes on with it or takes it back any more. */
function settled<S>({ state, name }: Step<S>): Step<S> {
  return { state, name, gesture: null };
}

/** What undo would take back, or null. */
export function undoName<S>(history: History<S>): string | null {
  return history.past.length > 0 ? history.present.name : null;
}

/** What redo would bring back, or null. */
export function redoName<S>(history: History<S>): string | null {
  return history.future[0]?.name ?? null;
}
