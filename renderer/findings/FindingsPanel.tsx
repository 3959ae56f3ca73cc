/**
 * The findings, always in sight: those of the open subject first, then the others, each folded to a
 * line. The list starts at its top when the subject changes.
 */

import { type ReactElement, useEffect, useRef } from 'react';
import type { Finding } from '../../core/findings/finding';
import { orderFor } from '../../core/findings/order';
import { useSession } from '../state/session';
import { useOpenSubject } from '../subjects/registry';
import { FindingItem } from './FindingItem';
import { useChanges } from './use-changes';
import { useFindings } from './use-findings';
import { useGoTo } from './use-go-to';

export function FindingsPanel(): ReactElement {
  const findings = useFindings();
  const findingId = useSession((session) => session.findingId);
  const chooseFinding = useSession((session) => session.chooseFinding);
  const { id: subject, title, tells, NothingFound } = useOpenSubject();
  const goTo = useGoTo();
  const changes = useChanges(findings);
  const list = useRef<HTMLDivElement>(null);
  useEffect(() => {
    const open = list.current?.querySelector('.finding.open');
    if (open) open.scrollIntoView({ block: 'nearest' });
    else if (list.current) list.current.scrollTop = 0;
    // The chosen finding is not asked for: closing it must leave the list where it is.
  }, [subject]);
  useEffect(() => {
    if (findingId === null) return;
    list.current?.querySelector('.finding.open')?.scrollIntoView({ block: 'nearest' });
  }, [findingId]);

  const { own: here, others: elsewhere } = orderFor(findings, tells);
  const items = (some: readonly Finding[]): ReactElement => (
    <ol>
      {some.map((finding) => (
        <FindingItem
          key={finding.id}
          finding={finding}
          open={finding.id === findingId}
          onChoose={() => {
            if (finding.id === findingId) chooseFinding(null);
            else goTo(finding);
          }}
        />
      ))}
    </ol>
  );
  return (
    <section id="findings" tabIndex={-1} className="findings" aria-label="Findings">
      <h2>
        Findings <span className="count">{findings.length}</span>
      </h2>
      <p className="for-readers" role="status">
        {changes}
      </p>
      <div ref={list} className="findings-list">
        <h3>
          {title} <span className="count">{here.length}</span>
        </h3>
        {here.length > 0 ? (
          items(here)
        ) : (
          <p className="all-well">{NothingFound ? <NothingFound /> : 'Nothing is wrong here.'}</p>
        )}
        {elsewhere.length > 0 ? (
          <>
            <h3>
              Elsewhere <span className="count">{elsewhere.length}</span>
            </h3>
            {items(elsewhere)}
          </>
        ) : null}
      </div>
    </section>
  );
}
