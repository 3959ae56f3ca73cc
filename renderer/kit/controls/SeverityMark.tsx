/** Severity by shape and word, not by colour alone. */

import type { ReactElement } from 'react';
import type { Severity } from '../../../core/findings/finding';

const SHAPES: Readonly<Record<Severity, ReactElement>> = {
  fault: <path className="mark-full" d="M8 1.5 L15 14.5 H1 Z" />,
  warning: <path className="mark-open" d="M8 2.5 L14 13.5 H2 Z" />,
  note: <circle className="mark-note" cx="8" cy="8" r="5.5" />,
};

export function SeverityMark({ severity }: { readonly severity: Severity }): ReactElement {
  return (
    <svg
      className={`severity severity-${severity}`}
      width="16"
      height="16"
      viewBox="0 0 16 16"
      role="img"
    >
      <title>{severity}</title>
      {SHAPES[severity]}
    </svg>
  );
}
