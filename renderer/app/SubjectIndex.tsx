/** Subjects down one side in the order in which a room is built, each with what was found in it. */

import type { ReactElement } from 'react';
import type { Severity } from '../../core/findings/finding';
import { SeverityMark } from '../kit/controls/SeverityMark';
import { useFindings } from '../findings/use-findings';
import { useSession } from '../state/session';
import { useOpenSubject, useSubjects } from '../subjects/registry';

export function SubjectIndex(): ReactElement {
  const subjects = useSubjects();
  const open = useOpenSubject();
  const setSubject = useSession((session) => session.setSubject);
  const findings = useFindings();
  return (
    <nav className="subjects" aria-label="Subjects">
      <ol>
        {subjects.map(({ id, title, about, tells }, i) => {
          const here = findings.filter((finding) => tells.includes(finding.subject));
          const worst: Severity | undefined = here[0]?.severity;
          return (
            <li key={id}>
              <button
                type="button"
                aria-current={id === open.id ? 'page' : undefined}
                onClick={() => setSubject(id)}
              >
                <span className="subject-number">{i + 1}</span>
                <span className="subject-title">{title}</span>
                <span className="subject-about">{about}</span>
                {worst ? (
                  <span className="subject-findings">
                    <SeverityMark severity={worst} /> {here.length}
                  </span>
                ) : null}
              </button>
            </li>
          );
        })}
      </ol>
      <Legend />
    </nav>
  );
}

/** What the marks on the sheet mean. */
function Legend(): ReactElement {
  return (
    <dl className="legend" aria-label="Marks on the sheet">
      {(['fault', 'warning', 'note'] as const).map((severity) => (
        <div key={severity}>
          <dt>
            <SeverityMark severity={severity} />
          </dt>
          <dd>{severity}</dd>
        </div>
      ))}
      <div>
        <dt>
          <svg width="22" height="8" aria-hidden="true">
            <line className="legend-dashed" x1="0" x2="22" y1="4" y2="4" />
          </svg>
        </dt>
        <dd>overhead, or out of range</dd>
      </div>
      <div>
        <dt>
          <svg width="16" height="16" aria-hidden="true">
            <rect className="legend-grip" x="3.5" y="3.5" width="9" height="9" rx="1.5" />
          </svg>
        </dt>
        <dd>drag to move</dd>
      </div>
    </dl>
  );
}
