/** Subjects down one side in the order in which a room is built, each with what was found in it. */

import type { ReactElement } from 'react';
import type { Severity } from '../../core/findings/finding';
import { SHOWN_IN } from '../findings/shown-in';
import { SeverityMark } from '../kit/controls/SeverityMark';
import { useFindings } from '../findings/use-findings';
import { OPEN_SUBJECTS, useSession } from '../state/session';
import { SUBJECT_TITLES } from '../subjects/subject-titles';

export function SubjectIndex(): ReactElement {
  const subject = useSession((session) => session.subject);
  const setSubject = useSession((session) => session.setSubject);
  const findings = useFindings();
  return (
    <nav className="subjects" aria-label="Subjects">
      <ol>
        {OPEN_SUBJECTS.map((name, i) => {
          const here = findings.filter((finding) => SHOWN_IN[finding.subject] === name);
          const worst: Severity | undefined = here[0]?.severity;
          return (
            <li key={name}>
              <button
                type="button"
                aria-current={name === subject ? 'page' : undefined}
                onClick={() => setSubject(name)}
              >
                <span className="subject-number">{i + 1}</span>
                <span className="subject-title">{SUBJECT_TITLES[name].title}</span>
                <span className="subject-about">{SUBJECT_TITLES[name].about}</span>
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
