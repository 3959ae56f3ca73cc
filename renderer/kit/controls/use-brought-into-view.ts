/** What has just been added or chosen is brought into view in the pane that scrolls it. */

import { useEffect, useRef, type RefObject } from 'react';

/**
 * For the element with the fields of the thing named `chosen`: whenever that changes to another, groups
 * around it unfold and it is scrolled to. Null leaves everything as it is.
 */
export function useBroughtIntoView<E extends HTMLElement>(
  chosen: string | null,
): RefObject<E | null> {
  const element = useRef<E>(null);
  useEffect(() => {
    const box = element.current;
    if (!box || chosen === null) return;
    for (let group = box.closest('details'); group; group = outerGroup(group)) group.open = true;
    // From its top where it is taller than the pane, so that its heading and first fields are seen.
    const pane = box.closest('.inputs');
    const tall = pane !== null && box.offsetHeight > pane.clientHeight;
    // Newer browsers answer scrolling with a promise, which nobody waits for.
    void box.scrollIntoView({ block: tall ? 'start' : 'nearest' });
  }, [chosen]);
  return element;
}

const outerGroup = (group: HTMLDetailsElement): HTMLDetailsElement | null =>
  group.parentElement?.closest('details') ?? null;
