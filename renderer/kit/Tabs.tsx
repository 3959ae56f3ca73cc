/** Kinds of evidence of one subject, on tabs along the edge of the strip; arrow keys go from tab to tab. */

import { useId, useRef, type KeyboardEvent, type ReactElement, type ReactNode } from 'react';
import styles from './Tabs.module.css';

export interface TabsProps<T extends string> {
  /** Of what they are, for a screen reader. */
  readonly of: string;
  readonly tabs: readonly { readonly value: T; readonly title: string }[];
  readonly shown: T;
  readonly onShow: (value: T) => void;
  /** What the shown tab opens. */
  readonly children: ReactNode;
}

/** Steps from tab to tab; tabs stand under each other, or beside each other in a narrow window. */
const STEPS: Readonly<Record<string, number>> = {
  ArrowDown: 1,
  ArrowRight: 1,
  ArrowUp: -1,
  ArrowLeft: -1,
};

/** Index of the tab that a key leads to from the one at `at`; null for a key that leads nowhere. */
function tabAfter(key: string, at: number, count: number): number | null {
  if (key === 'Home') return 0;
  if (key === 'End') return count - 1;
  const step = STEPS[key];
  return step === undefined ? null : (at + step + count) % count;
}

export function Tabs<T extends string>(props: TabsProps<T>): ReactElement {
  const { of, tabs, shown, onShow, children } = props;
  const id = useId();
  const buttons = useRef(new Map<T, HTMLButtonElement>());
  const onKeyDown = (event: KeyboardEvent): void => {
    if (event.ctrlKey || event.metaKey || event.altKey || event.shiftKey) return;
    const at = tabs.findIndex(({ value }) => value === shown);
    const next = tabs[tabAfter(event.key, at, tabs.length) ?? -1];
    if (!next) return;
    event.preventDefault();
    onShow(next.value);
    buttons.current.get(next.value)?.focus();
  };
  return (
    <>
      <div
        className={styles.tabs}
        role="tablist"
        aria-orientation="vertical"
        aria-label={`Evidence for ${of}`}
        onKeyDown={onKeyDown}
      >
        {tabs.map(({ value, title }) => (
          <button
            key={value}
            ref={(element) => {
              if (element) buttons.current.set(value, element);
              else buttons.current.delete(value);
            }}
            type="button"
            role="tab"
            id={`${id}-${value}`}
            aria-selected={value === shown}
            aria-controls={`${id}-panel`}
            tabIndex={value === shown ? 0 : -1}
            onClick={() => onShow(value)}
          >
            {title}
          </button>
        ))}
      </div>
      <div
        className={styles.panel}
        role="tabpanel"
        id={`${id}-panel`}
        aria-labelledby={`${id}-${shown}`}
      >
        {children}
      </div>
    </>
  );
}
