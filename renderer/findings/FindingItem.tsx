/** One finding: a line with its sign, place and figure; pressed, it opens on what, why and what to do. */

import type { ReactElement } from 'react';
import type { Finding } from '../../core/findings/finding';
import { capital } from '../../core/quantity/capital';
import { measuresIn, type Measures } from '../../core/quantity/measures';
import { minused } from '../kit/chart/signed';
import { useSession } from '../state/session';
import { usePrinting } from '../state/paper';
import { Remedies } from './Remedies';
import { SeverityMark } from '../kit/controls/SeverityMark';

interface FindingItemProps {
  readonly finding: Finding;
  readonly open: boolean;
  readonly onChoose: () => void;
}

export function FindingItem({ finding, open, onChoose }: FindingItemProps): ReactElement {
  const measures = useSession((session) => measuresIn(session.units));
  const onPaper = usePrinting();
  return (
    <li className={open ? 'finding open' : 'finding'} data-finding={finding.id}>
      <button type="button" className="finding-head" aria-expanded={open} onClick={onChoose}>
        <SeverityMark severity={finding.severity} />
        <span className="finding-where">{finding.where}</span>
        {finding.value === null ? null : (
          <span className="finding-figure">
            <small>{finding.figureName}</small>
            <span>{figure(finding.value, finding.unit, measures)}</span>
          </span>
        )}
      </button>
      <div className="finding-more">
        <p>{finding.message}</p>
        <p className="finding-limit">
          {finding.value === null
            ? ''
            : `${capital(finding.figureName)} ${figure(finding.value, finding.unit, measures)}. `}
          {finding.limit === null
            ? ''
            : `Limit ${figure(finding.limit, finding.unit, measures, true)}. `}
          Source: {finding.source}.
        </p>
        {finding.caution === undefined ? null : <p className="caution">{finding.caution}</p>}
        {open || onPaper ? <Remedies finding={finding} /> : null}
      </div>
    </li>
  );
}

/** A finding's figure with its unit, lengths in the person's units. */
export function figure(
  value: number | null,
  unit: string,
  { length, limit }: Measures,
  isLimit = false,
): string {
  if (value === null) return '';
  if (unit === 'm') return isLimit ? limit(value) : length(value);
  if (unit === 'deg') return `${value.toFixed(1)}°`;
  if (unit === 's') return `${value.toFixed(2)} s`;
  if (unit === 'Hz') return `${value.toFixed(1)} Hz`;
  if (unit === 'dB') return `${minused(value)} dB`;
  return String(value);
}
