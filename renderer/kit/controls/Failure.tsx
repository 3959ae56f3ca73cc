/** Why a long computation gave nothing, whole and beside the press that begins it again. */

import type { ReactElement } from 'react';

export interface FailureProps {
  readonly sentence: string;
  /** What the button says. */
  readonly again: string;
  readonly onAgain: () => void;
}

export function Failure({ sentence, again, onAgain }: FailureProps): ReactElement {
  return (
    <span className="failure" role="alert">
      <span className="complaint">{sentence}</span>
      <button type="button" onClick={onAgain}>
        {again}
      </button>
    </span>
  );
}
