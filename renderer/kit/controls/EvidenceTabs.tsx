/** Kinds of evidence of one subject, on tabs along the edge of the strip. */

import type { ReactElement } from 'react';

export interface EvidenceTabsProps<T extends string> {
  /** Of what they are, for a screen reader. */
  readonly of: string;
  readonly tabs: readonly { readonly value: T; readonly title: string }[];
  readonly shown: T;
  readonly onShow: (value: T) => void;
}

export function EvidenceTabs<T extends string>(props: EvidenceTabsProps<T>): ReactElement {
  const { of, tabs, shown, onShow } = props;
  return (
    <div className="evidence-tabs" role="group" aria-label={`Evidence for ${of}`}>
      {tabs.map(({ value, title }) => (
        <button
          key={value}
          type="button"
          aria-pressed={value === shown}
          onClick={() => onShow(value)}
        >
          {title}
        </button>
      ))}
    </div>
  );
}
