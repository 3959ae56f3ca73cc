/** The sign of a loudspeaker outside its window: that of the finding on it, so that one sign has one meaning. */

import type { Finding, Severity } from '../../core/findings/finding';
import type { SpeakerResult } from '../../core/speakers/judge';

/** As the legend draws them. */
const SIGNS: Readonly<Record<Severity, string>> = { fault: '▲', warning: '△', note: '○' };
const PLACE_FINDING = /^speaker-(range|outside|at-ears):/;

/** How bad its place is; null within its window. */
export function severityOfPlace(
  { channel, inRange }: Pick<SpeakerResult, 'channel' | 'inRange'>,
  findings: readonly Pick<Finding, 'id' | 'severity'>[],
): Severity | null {
  if (inRange) return null;
  const found = findings.find(
    ({ id }) => PLACE_FINDING.test(id) && id.slice(id.indexOf(':') + 1) === channel,
  );
  return found?.severity ?? 'warning';
}

/** The sign; null within its window. */
export function speakerSign(
  speaker: Pick<SpeakerResult, 'channel' | 'inRange'>,
  findings: readonly Pick<Finding, 'id' | 'severity'>[],
): string | null {
  const severity = severityOfPlace(speaker, findings);
  return severity && SIGNS[severity];
}
