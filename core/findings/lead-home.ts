/**
 * Remedies are tried out before they are offered: each is made on a copy of the room, and the findings
 * of that room say what it leads to. What brings its own finding no nearer to its limit, or the room as
 * a whole no further, is not offered; what is left over and what comes new is said in its text. The
 * rule that rooms are compared by is our own convention and stands here.
 */

import type { Edit } from '../room/edits';
import type { Measures } from '../quantity/measures';
import type { Draft, Finding, Remedy, Severity } from './finding';
import { figureText } from './figure-text';
import { weightOf } from './order';

/** A figure has come nearer where its distance from the limit has shrunk by this share at least. */
const LEAST_SHARE = 0.1;
/** A figure that is farther from its limit by less than this share and these steps is no worse. */
const SAME_SHARE = 0.06;
const SAME_STEPS = 0.1;

/** What the findings of the room after an edit are; null where the edit changes nothing. */
export type Trial = (edit: Edit) => readonly Draft[] | null;

const SEVERITIES: readonly Severity[] = ['fault', 'warning', 'note'];
const rank = (finding: Pick<Finding, 'severity'>): number => SEVERITIES.indexOf(finding.severity);

/** What an edit leads to, as far as findings tell. */
interface Outcome {
  readonly cleared: boolean;
  readonly left: Draft | null;
  /** Faults and warnings that are new, or farther from their limit than before. */
  readonly brought: readonly Draft[];
  /** Notes that are new. */
  readonly notes: readonly Draft[];
}

/** `drafts` with the remedies that lead home, found out when they are first read. */
export function leadingHome(
  drafts: readonly Draft[],
  trial: Trial,
  measures: Measures,
): readonly Finding[] {
  return drafts.map(({ remedies, otherwise, ...told }): Finding => {
    let kept: readonly Remedy[] | null = null;
    return {
      ...told,
      get remedies() {
        kept ??= proven({ ...told, remedies }, otherwise, drafts, trial, measures);
        return kept;
      },
    };
  });
}

function proven(
  draft: Draft,
  otherwise: string | undefined,
  before: readonly Draft[],
  trial: Trial,
  measures: Measures,
): readonly Remedy[] {
  const { remedies } = draft;
  const wanted = typeof remedies === 'function' ? remedies() : remedies;
  const good = wanted.flatMap((remedy) => {
    if (!remedy.edit) return [{ remedy, brings: 0, cleared: false }];
    const after = trial(remedy.edit);
    const outcome = after && outcomeOf(draft, before, after);
    if (!outcome) return [];
    const text = [remedy.text, ...leads(outcome, measures)].join(' ');
    const { cleared, brought } = outcome;
    return [{ remedy: { ...remedy, text }, brings: brought.length, cleared }];
  });
  // Those with a button first; among them what clears the matter, and what brings nothing new.
  const order = [...good].sort(
    (a, b) =>
      Number(a.remedy.edit === undefined) - Number(b.remedy.edit === undefined) ||
      Number(b.cleared) - Number(a.cleared) ||
      a.brings - b.brings,
  );
  if (order.length > 0) return order.map(({ remedy }) => remedy);
  return [{ text: otherwise ?? NOTHING_ALONE }];
}

const NOTHING_ALONE =
  'No single change that was tried mends it without harm elsewhere: change more than one thing.';

/** Null where the edit does not help, or helps here and harms more elsewhere. */
function outcomeOf(
  draft: Draft,
  before: readonly Draft[],
  after: readonly Draft[],
): Outcome | null {
  const left = after.find(({ id }) => id === draft.id) ?? null;
  if (left && !isNearer(draft, left)) return null;
  const known = new Map(before.map((one) => [one.id, one]));
  const worse = after.filter((one) => one.id !== draft.id && isWorse(known.get(one.id), one));
  const brought = worse.filter(({ severity }) => severity !== 'note');
  // What is as grave as the matter itself would only be put in its place; what can hurt someone goes
  // before the sound.
  const isGrave = (one: Draft): boolean => rank(one) <= rank(draft);
  if (draft.caution === undefined && brought.some(isGrave)) return null;
  if (!isBetterRoom(before, after)) return null;
  const notes = worse.filter(({ id, severity }) => severity === 'note' && !known.has(id));
  return { cleared: left === null, left, brought, notes };
}

function isNearer(before: Draft, after: Draft): boolean {
  if (rank(after) !== rank(before)) return rank(after) > rank(before);
  const [was, is] = [weightOf(before), weightOf(after)];
  return is <= (1 - LEAST_SHARE) * was;
}

const isWorse = (before: Draft | undefined, after: Draft): boolean =>
  before === undefined ||
  rank(after) < rank(before) ||
  (rank(after) === rank(before) &&
    weightOf(after) > (1 + SAME_SHARE) * weightOf(before) + SAME_STEPS);

type Judged = Pick<Finding, 'severity' | 'value' | 'limit' | 'unit' | 'caution'>;

/** The tiers that a room is judged by, the gravest first. */
const TIERS: readonly ((finding: Judged) => boolean)[] = [
  ({ severity }) => severity === 'fault',
  ({ severity, caution }) => severity === 'warning' && caution !== undefined,
  ({ severity, caution }) => severity === 'warning' && caution === undefined,
  ({ severity }) => severity === 'note',
];

/**
 * True where what is wrong has become less: faults first, then what can hurt someone, then the other
 * warnings, then notes. In each tier every finding counts one, and one more for each doubling of its
 * weight, so that the last step to a limit is worth as much as many far from it.
 */
export function isBetterRoom(before: readonly Judged[], after: readonly Judged[]): boolean {
  for (const tier of TIERS) {
    const gravity = (findings: readonly Judged[]): number =>
      findings.filter(tier).reduce((sum, finding) => sum + 1 + Math.log2(1 + weightOf(finding)), 0);
    const [was, is] = [gravity(before), gravity(after)];
    if (Math.abs(is - was) > SAME_STEPS) return is < was;
  }
  return false;
}

/** What the remedy leaves over and what it brings, in sentences. */
function leads({ left, brought, notes }: Outcome, measures: Measures): readonly string[] {
  return [
    ...(left ? [`Left then: ${figureOf(left, measures)}.`] : []),
    ...(brought.length > 0
      ? [
          `It brings: ${brought.map((one) => `${one.where}, ${figureOf(one, measures)}`).join('; ')}.`,
        ]
      : []),
    ...(notes.length > 0
      ? [
          `New notes: ${notes.map((one) => `${one.where} (${figureOf(one, measures)})`).join('; ')}.`,
        ]
      : []),
  ];
}

/** `widest gap 22.1 Hz where the limit is 20.0 Hz`; the message where there is no figure. */
function figureOf({ figureName, value, limit, unit, message }: Draft, measures: Measures): string {
  if (value === null) return message;
  const figure = `${figureName} ${figureText(value, unit, measures)}`;
  return limit === null
    ? figure
    : `${figure} where the limit is ${figureText(limit, unit, measures)}`;
}
