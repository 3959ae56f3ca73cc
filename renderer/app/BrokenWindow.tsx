/** What stands in place of the whole window where an exception could not be held to one part of it. */

import type { ReactElement } from 'react';
import { PartBoundary } from '../kit/controls/PartBoundary';
import { errorText } from '../kit/controls/error-text';
import { NoticeBar } from './NoticeBar';
import { undoName } from '../state/history';
import type { DocumentCommands } from '../state/document-commands';
import { useSession } from '../state/session';

export interface BrokenWindowProps {
  readonly error: unknown;
  readonly commands: DocumentCommands;
  readonly onRetry: () => void;
}

export function BrokenWindow({ error, commands, onRetry }: BrokenWindowProps): ReactElement {
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
        <button type="button" onClick={() => void commands.save()}>
          Save
        </button>
        <button type="button" onClick={() => void commands.saveAs()}>
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
