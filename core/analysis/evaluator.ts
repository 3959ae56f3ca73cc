/**
 * Computes results and keeps the newest of them by key, so that whoever asks twice for the same room is
 * answered at once. An answer is found under the key of what it was computed from and under no other:
 * it can't be shown for another room.
 */

import { finish, shares, type Slices } from '../quantity/slices';
import type { Project } from '../room/project';
import {
  RESULTS,
  type AnswerOf,
  type Ask,
  type QuickEntry,
  type QuickName,
  type RequestOf,
  type ResultName,
  type SlowName,
  type SlowWork,
} from './results';

/** The text of plain data, written once for each object: rooms share the parts that did not change. */
const texts = new WeakMap<object, string>();

function textOf(part: unknown): string {
  if (typeof part !== 'object' || part === null) return JSON.stringify(part) ?? '';
  const before = texts.get(part);
  if (before !== undefined) return before;
  const text = JSON.stringify(part);
  texts.set(part, text);
  return text;
}

/** What an answer is of: equal where room and request are the same as far as they matter to it. */
export function resultKey<N extends ResultName>(
  name: N,
  project: Project,
  request: RequestOf<N>,
): string {
  const parts = RESULTS[name].dependsOn(project);
  return [name, ...parts.map(textOf), JSON.stringify(request)].join('\n');
}

export class Evaluator implements Ask {
  /** Answers by key for each name, the one asked for last at the end. */
  private readonly kept = new Map<ResultName, Map<string, unknown>>();
  private readonly listeners = new Set<() => void>();

  /** `slowWork` where slow results are computed here; without it they come in from elsewhere by `keep`. */
  constructor(private readonly slowWork: SlowWork | null = null) {}

  quick = <N extends QuickName>(name: N, project: Project, request: RequestOf<N>): AnswerOf<N> => {
    const key = resultKey(name, project, request);
    const before = this.find<N>(name, key);
    if (before) return before.answer;
    const entry = RESULTS[name] as unknown as QuickEntry<N>;
    const answer = entry.compute(project, request, this);
    this.put(name, key, answer);
    return answer;
  };

  part = <N extends SlowName>(
    name: N,
    project: Project,
    request: RequestOf<N>,
  ): Generator<number, AnswerOf<N>> => shares(this.begin(name, project, request));

  /** The whole computation in one go, for those without a worker. */
  finish = <N extends SlowName>(name: N, project: Project, request: RequestOf<N>): AnswerOf<N> =>
    finish(this.begin(name, project, request));

  known = <N extends SlowName>(
    name: N,
    project: Project,
    request: RequestOf<N>,
  ): AnswerOf<N> | null => this.find<N>(name, resultKey(name, project, request))?.answer ?? null;

  /** Take in what was computed elsewhere, under the key that it was asked with. */
  keep<N extends SlowName>(name: N, key: string, answer: AnswerOf<N>): void {
    this.put(name, key, answer);
    for (const listener of this.listeners) listener();
  }

  /** Call `listener` whenever an answer from elsewhere comes in; the result ends that. */
  subscribe = (listener: () => void): (() => void) => {
    this.listeners.add(listener);
    return () => void this.listeners.delete(listener);
  };

  /**
   * In slices; ends at once where the answer is known. An answer that was cut short by `next(true)` is
   * given but not kept.
   */
  *begin<N extends SlowName>(
    name: N,
    project: Project,
    request: RequestOf<N>,
  ): Slices<AnswerOf<N>> {
    const key = resultKey(name, project, request);
    const before = this.find<N>(name, key);
    if (before) return before.answer;
    if (!this.slowWork) throw new Error(`"${name}" is not computed here.`);
    const slices = this.slowWork[name](project, request, this);
    let cut = false;
    for (let step = slices.next(); ; step = slices.next(cut)) {
      if (step.done) {
        if (!cut) this.put(name, key, step.value);
        return step.value;
      }
      cut = (yield step.value) === true;
    }
  }

  private find<N extends ResultName>(
    name: N,
    key: string,
  ): { readonly answer: AnswerOf<N> } | null {
    const answers = this.kept.get(name);
    if (!answers?.has(key)) return null;
    const answer = answers.get(key) as AnswerOf<N>;
    // The last one asked for is the last to be forgotten.
    answers.delete(key);
    answers.set(key, answer);
    return { answer };
  }

  private put<N extends ResultName>(name: N, key: string, answer: AnswerOf<N>): void {
    const answers = this.kept.get(name) ?? new Map<string, unknown>();
    this.kept.set(name, answers);
    answers.delete(key);
    answers.set(key, answer);
    for (const oldest of answers.keys()) {
      if (answers.size <= RESULTS[name].keeps) break;
      answers.delete(oldest);
    }
  }
}
