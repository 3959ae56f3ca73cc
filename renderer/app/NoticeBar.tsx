/** What the program has to say right now: an error with its place, or that work was saved. */

import { useEffect, type ReactElement } from 'react';
import { useSession } from '../state/session';

const GOOD_STAYS_MS = 6000;

export function NoticeBar(): ReactElement | null {
  const notice = useSession((session) => session.notice);
  const notify = useSession((session) => session.notify);
  useEffect(() => {
    if (notice?.tone !== 'good') return;
    const timer = setTimeout(() => notify(null), GOOD_STAYS_MS);
    return () => clearTimeout(timer);
  }, [notice, notify]);
  if (!notice) return null;
  return (
    <div
      className={`notice notice-${notice.tone}`}
      role={notice.tone === 'bad' ? 'alert' : 'status'}
    >
      <div>
        <strong>{notice.title}</strong>
        {notice.lines.map((line) => (
          <p key={line}>{line}</p>
        ))}
        {notice.actions ? (
          <div className="notice-actions">
            {notice.actions.map(({ label, run }) => (
              <button
                key={label}
                type="button"
                onClick={() => {
                  notify(null);
                  run();
                }}
              >
                {label}
              </button>
            ))}
          </div>
        ) : null}
      </div>
      <button type="button" onClick={() => notify(null)}>
        Close
      </button>
    </div>
  );
}
