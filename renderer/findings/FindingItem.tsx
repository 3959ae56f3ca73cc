/** One finding: a line with its sign, place and figure; pressed, it opens on what, why and what to do. */

import type { ReactElement } from 'react';
import type { Finding, Remedy } from '../../core/findings/finding';
import { formatLength, type LengthUnits } from '../../core/quantity/length';
import { usePlaces } from '../bass/places-store';
import { minused } from '../charts/signed';
import { useSession } from '../state/session';
import { SeverityMark } from './SeverityMark';

interface FindingItemProps {
  readonly finding: Finding;
  readonly open: boolean;
  readonly onChoose: () => void;
}

export function FindingItem({ finding, open, onChoose }: FindingItemProps): ReactElement {
  const units = useSession((session) => session.units);
  const remedies = finding.remedies.length;
  return (
    <li className={open ? 'finding open' : 'finding'} data-finding={finding.id}>
      <button type="button" className="finding-head" aria-expanded={open} onClick={onChoose}>
        <SeverityMark severity={finding.severity} />
        <span className="finding-where">{finding.where}</span>
        {finding.value === null ? null : (
          <span className="finding-figure">
            <small>{finding.figureName}</small>
            <span>{figure(finding.value, finding.unit, units)}</span>
          </span>
        )}
      </button>
      <div className="finding-more">
        <p>{finding.message}</p>
        <p className="finding-limit">
          {finding.limit === null ? '' : `Limit ${figure(finding.limit, finding.unit, units)}. `}
          Source: {finding.source}.
        </p>
        {finding.caution === undefined ? null : <p className="caution">{finding.caution}</p>}
        {remedies > 0 ? <h4>{remedies > 1 ? 'What would help' : 'What helps'}</h4> : null}
        {finding.remedies.map((remedy) => (
          <RemedyLine key={remedy.text} remedy={remedy} />
        ))}
      </div>
    </li>
  );
}

function RemedyLine({ remedy }: { readonly remedy: Remedy }): ReactElement {
  const change = useSession((session) => session.change);
  const setSubject = useSession((session) => session.setSubject);
  const search = usePlaces((store) => store.start);
  const { edit, opens } = remedy;
  return (
    <div className="remedy">
      <span>{remedy.text}</span>
      {edit ? (
        <button type="button" className="apply" onClick={() => change(edit)}>
          Apply
        </button>
      ) : null}
      {opens === 'subwoofer-search' ? (
        <button
          type="button"
          className="apply"
          onClick={() => {
            setSubject('bass');
            search();
          }}
        >
          Search
        </button>
      ) : null}
    </div>
  );
}

/** A finding's figure with its unit, lengths in the person's units. */
export function figure(value: number | null, unit: string, units: LengthUnits): string {
  if (value === null) return '';
  if (unit === 'm') return formatLength(value, units);
  if (unit === 'deg') return `${value.toFixed(1)}°`;
  if (unit === 's') return `${value.toFixed(2)} s`;
  if (unit === 'Hz') return `${value.toFixed(1)} Hz`;
  if (unit === 'dB') return `${minused(value)} dB`;
  return String(value);
}
