/**
 * What helps against a finding. Remedies are tried out when they are read, which takes longer than the
 * analysis itself: they are read of an open finding alone, and only when the room has come to rest.
 */

import { useEffect, useState, type ReactElement } from 'react';
import type { Finding, Remedy } from '../../core/findings/finding';
import { useSession } from '../state/session';
import { useSubjects } from '../subjects/registry';

/** A drag changes the room many times a second; this long without a change it rests, ms. */
const REST_MS = 150;

export function Remedies({ finding }: { readonly finding: Finding }): ReactElement | null {
  const [rested, setRested] = useState(finding);
  const isResting = rested === finding;
  useEffect(() => {
    if (rested === finding) return;
    const timer = setTimeout(() => setRested(finding), REST_MS);
    return () => clearTimeout(timer);
  }, [finding, rested]);
  const { remedies } = rested;
  if (remedies.length === 0) return null;
  // Those of the room before keep their place until then, unseen and out of reach.
  return (
    <div className={isResting ? 'remedies' : 'remedies waiting'} aria-busy={!isResting}>
      <h4>{remedies.length > 1 ? 'What would help' : 'What helps'}</h4>
      {remedies.map((remedy) => (
        <RemedyLine key={remedy.text} remedy={remedy} />
      ))}
    </div>
  );
}

function RemedyLine({ remedy }: { readonly remedy: Remedy }): ReactElement {
  const change = useSession((session) => session.change);
  const setSubject = useSession((session) => session.setSubject);
  const subjects = useSubjects();
  const { edit, opens } = remedy;
  const searcher = opens && subjects.find(({ searches }) => searches?.[opens]);
  return (
    <div className="remedy">
      <span>{remedy.text}</span>
      {edit ? (
        <button type="button" className="apply" onClick={() => change(edit)}>
          Apply
        </button>
      ) : null}
      {opens && searcher ? (
        <button
          type="button"
          className="apply"
          onClick={() => {
            setSubject(searcher.id);
            searcher.searches?.[opens]?.();
          }}
        >
          Search
        </button>
      ) : null}
    </div>
  );
}
