/** What a change of the room did to the findings, in words for a screen reader. */

import type { Finding } from '../../core/findings/finding';

/** At most this many new findings are named; the rest are counted. */
const MOST_NAMED = 3;

/** A sentence or two; empty where the same matters are found as before. */
export function changesText(before: readonly Finding[], after: readonly Finding[]): string {
  const ids = (findings: readonly Finding[]): ReadonlySet<string> =>
    new Set(findings.map(({ id }) => id));
  const [known, left] = [ids(before), ids(after)];
  const fresh = after.filter(({ id }) => !known.has(id));
  const gone = before.filter(({ id }) => !left.has(id)).length;
  if (fresh.length === 0 && gone === 0) return '';
  const named = fresh
    .slice(0, MOST_NAMED)
    .map(({ severity, where }) => `${severity}, ${where}`)
    .join('; ');
  const more = fresh.length > MOST_NAMED ? ` and ${fresh.length - MOST_NAMED} more` : '';
  return [
    gone > 0 ? `${gone} ${gone === 1 ? 'finding is' : 'findings are'} gone.` : '',
    fresh.length > 0 ? `New: ${named}${more}.` : '',
    `${after.length} ${after.length === 1 ? 'finding' : 'findings'} in all.`,
  ]
    .filter((part) => part !== '')
    .join(' ');
}
