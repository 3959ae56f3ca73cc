/** The findings, worst first, each with its figures, its source and what to try. Always in sight. */

import { type ReactElement, useEffect, useRef } from 'react';
import type { Finding, Remedy } from '../../core/findings/finding';
import { formatLength, type LengthUnits } from '../../core/quantity/length';
import { useSpeakerEvidence } from '../speakers/evidence-store';
import { useFace } from '../speakers/face-store';
import { useSession } from '../state/session';
import { minused } from '../charts/signed';
import { usePlaces } from '../bass/places-store';
import { SHOWN_IN } from './shown-in';
import { SeverityMark } from './SeverityMark';
import { useFindings } from './use-findings';

export function FindingsPanel(): ReactElement {
  const findings = useFindings();
  const findingId = useSession((session) => session.findingId);
  const chooseFinding = useSession((session) => session.chooseFinding);
  const setSubject = useSession((session) => session.setSubject);
  const chooseChannel = useSession((session) => session.chooseChannel);
  const chooseFitting = useSession((session) => session.chooseFitting);
  const chooseSubwoofer = useSession((session) => session.chooseSubwoofer);
  const chooseFace = useFace((store) => store.chooseFace);
  const showEvidence = useSpeakerEvidence((store) => store.show);
  const choose = (finding: Finding): void => {
    if (finding.id === findingId) {
      chooseFinding(null);
      return;
    }
    chooseFinding(finding.id);
    setSubject(SHOWN_IN[finding.subject]);
    if (finding.place?.kind === 'speaker') chooseChannel(finding.place.channel);
    if (finding.place?.kind === 'reflection') {
      chooseChannel(finding.place.channel);
      chooseFace(finding.place.face);
      showEvidence('early');
    }
    if (finding.place?.kind === 'subwoofer') chooseSubwoofer(finding.place.id);
    if (finding.place?.kind === 'solid') chooseFitting(finding.place.id);
  };
  return (
    <section className="findings" aria-label="Findings">
      <h2>
        Findings <span className="count">{findings.length}</span>
      </h2>
      {findings.length === 0 ? (
        <p className="all-well">
          Nothing found: size, angles and decay are within what the sources ask for.
        </p>
      ) : (
        <ol>
          {findings.map((finding) => (
            <FindingItem
              key={finding.id}
              finding={finding}
              open={finding.id === findingId}
              onChoose={() => choose(finding)}
            />
          ))}
        </ol>
      )}
    </section>
  );
}

interface FindingItemProps {
  readonly finding: Finding;
  readonly open: boolean;
  readonly onChoose: () => void;
}

function FindingItem({ finding, open, onChoose }: FindingItemProps): ReactElement {
  const units = useSession((session) => session.units);
  const item = useRef<HTMLLIElement>(null);
  useEffect(() => {
    if (open) item.current?.scrollIntoView({ block: 'nearest' });
  }, [open]);
  return (
    <li ref={item} className={open ? 'finding open' : 'finding'}>
      <button type="button" className="finding-head" aria-expanded={open} onClick={onChoose}>
        <SeverityMark severity={finding.severity} />
        <span className="finding-where">{finding.where}</span>
        <span className="finding-figure">{figure(finding.value, finding.unit, units)}</span>
      </button>
      <p className="finding-message">{finding.message}</p>
      {open ? (
        <div className="finding-more">
          {finding.limit === null ? null : (
            <p className="finding-limit">
              Limit {figure(finding.limit, finding.unit, units)}. Source: {finding.source}.
            </p>
          )}
          {finding.limit === null ? (
            <p className="finding-limit">Source: {finding.source}.</p>
          ) : null}
          {finding.caution === undefined ? null : <p className="caution">{finding.caution}</p>}
        </div>
      ) : null}
      {finding.remedies.map((remedy) => (
        <RemedyLine key={remedy.text} remedy={remedy} />
      ))}
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
