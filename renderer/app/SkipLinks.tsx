/** For the keyboard: past the drawing's many tags, straight to the inputs or the findings. */

import type { ReactElement } from 'react';

const TARGETS = [
  { id: 'inputs', title: 'Go to the inputs' },
  { id: 'findings', title: 'Go to the findings' },
] as const;

export function SkipLinks(): ReactElement {
  return (
    <div className="skip-links">
      {TARGETS.map(({ id, title }) => (
        <button key={id} type="button" onClick={() => document.getElementById(id)?.focus()}>
          {title}
        </button>
      ))}
    </div>
  );
}
