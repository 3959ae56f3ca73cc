/** What stands in place of the whole window where an exception could not be held to one part of it. */

import type { ReactElement } from 'react';
import { PartBoundary } from '../controls/PartBoundary';
import { errorText } from '../controls/error-text';
import { NoticeBar } from '../sheet/NoticeBar';
import { undoName } from '../state/history';
import type { Filing } from '../state/filing';
import { useSession } from '../state/session';

export interface BrokenWindowProps {
  readonly error: unknown;
  readonly filing: Filing;
  readonly onRetry: () => void;
}

export function BrokenWindow({ error, filing, onRetry }: BrokenWindowProps): ReactElement {
  const back = useSession((session) => undoName(session.work));
  const undo = useSession((session) => session.undo);
  return (
    <main className="broken-window">
      <div role="alert">
        <h1>Roomwright cannot show its window just now</h1>
        <p>
          An error in the program stopped it. Your room is still here: save it to a file first. Then
          undo the last change, or show the window again.
        </p>
        <p className="error-text">{errorText(error)}</p>
      </div>
      <div className="head-group">
        <button type="button" onClick={() => void filing.save()}>
          Save
        </button>
        <button type="button" onClick={() => void filing.saveAs()}>
          Save as
        </button>
        {back === null ? null : (
          <button
            type="button"
            onClick={() => {
              undo();
              onRetry();
            }}
          >
            Undo {back}
          </button>
        )}
        <button type="button" onClick={onRetry}>
          Show the window again
        </button>
      </div>
      <PartBoundary part="The answer">
        <NoticeBar />
      </PartBoundary>
    </main>
  );
}
