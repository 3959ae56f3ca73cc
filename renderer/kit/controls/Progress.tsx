/** How far a long computation has come, with the way to stop it. */

import type { ReactElement } from 'react';

export interface ProgressProps {
  /** 0 to 1. */
  readonly share: number;
  /** What is being done, for a screen reader. */
  readonly label: string;
  readonly onStop: () => void;
}

export function Progress({ share, label, onStop }: ProgressProps): ReactElement {
  return (
    <span className="solving" role="status">
      <progress value={share} aria-label={label} />
      <button type="button" onClick={onStop}>
        Stop
      </button>
    </span>
  );
}
