/** A group of inputs that folds away, with what is in it told in its heading. */

import type { ReactElement, ReactNode } from 'react';

export interface FoldGroupProps {
  readonly title: string;
  /** What is in it, for when it is folded. */
  readonly tally?: string;
  /** Unfolded at first. */
  readonly open?: boolean;
  readonly children: ReactNode;
}

export function FoldGroup({ title, tally, open, children }: FoldGroupProps): ReactElement {
  return (
    <details className="group" open={open}>
      <summary>
        <span className="group-title">{title}</span>
        {tally === undefined ? null : <span className="group-tally">{tally}</span>}
      </summary>
      <div className="group-body">{children}</div>
    </details>
  );
}
