/** The order in which findings are read: what matters most first. */

import { SUBJECTS, type Finding, type Severity, type Subject } from './finding';
import { practice } from '../room/practice/practice';

const RANK: Readonly<Record<Severity, number>> = { fault: 0, warning: 1, note: 2 };

/**
 * The step in which a figure's distance from its limit is counted, by its unit. A decibel is the least change of level that is heard, a twentieth of a decay time the least
 * change of decay (ISO 3382-1:2009, table A.1, from memory).
 */
const STEP: Readonly<Record<string, number>> = {
  m: practice('metres-of-a-step'),
  deg: practice('degrees-of-a-step'),
  dB: 1,
};
const DECAY_SHARE = 0.05;
/** The axial rule is a rule of thumb: its hertz weigh as one step for each whole limit. */
const HERTZ_SHARE = practice('axial-steps-per-limit');

/**
 * How much a finding matters among those of its severity: by how many steps that are seen or heard its
 * figure is past its limit, at least 0. Without a figure or a limit it counts one step.
 */
export function weightOf({
  value,
  limit,
  unit,
}: Pick<Finding, 'value' | 'limit' | 'unit'>): number {
  if (value === null || limit === null) return 1;
  return Math.abs(value - limit) / stepOf(unit, Math.abs(limit));
}

function stepOf(unit: string, limit: number): number {
  if (unit === 's') return DECAY_SHARE * Math.max(limit, 0.01);
  if (unit === 'Hz') return HERTZ_SHARE * Math.max(limit, 1);
  return STEP[unit] ?? 1;
}

/**
 * Worst first: by severity; then what can hurt someone; then by weight; then in the order in which a
 * room is built.
 */
export function sortFindings(findings: readonly Finding[]): readonly Finding[] {
  return findings
    .map((finding) => ({ finding, weight: weightOf(finding) }))
    .sort(
      ({ finding: a, weight: weightA }, { finding: b, weight: weightB }) =>
        RANK[a.severity] - RANK[b.severity] ||
        Number(b.caution !== undefined) - Number(a.caution !== undefined) ||
        weightB - weightA ||
        SUBJECTS.indexOf(a.subject) - SUBJECTS.indexOf(b.subject),
    )
    .map(({ finding }) => finding);
}

export interface FindingOrder {
  /** Those of the subjects that are open. */
  readonly own: readonly Finding[];
  readonly others: readonly Finding[];
}

/** The findings of one or more subjects apart from all others, both in the order that they came in. */
export function orderFor(
  findings: readonly Finding[],
  subjects: Subject | readonly Subject[],
): FindingOrder {
  const isOwn = ({ subject }: Finding): boolean =>
    typeof subjects === 'string' ? subject === subjects : subjects.includes(subject);
  return {
    own: findings.filter(isOwn),
    others: findings.filter((finding) => !isOwn(finding)),
  };
}
