/** Escape leaves what is open, unless a field of it is being typed in: there it takes back the typing. */

import { useEffect, type RefObject } from 'react';

/** Calls `onLeave` on Escape with the focus in `box` or nowhere. */
export function useEscape(box: RefObject<HTMLElement | null>, onLeave: () => void): void {
  useEffect(() => {
    const onKeyDown = (event: KeyboardEvent): void => {
      if (event.key !== 'Escape' || event.isComposing) return;
      const { target } = event;
      const inBox = target instanceof Node && (box.current?.contains(target) ?? false);
      if (!inBox && target !== document.body) return;
      if (target instanceof HTMLElement && target.matches('[data-typing="true"]')) return;
      onLeave();
    };
    // Asked before the field itself answers the key, for then it is no longer being typed in.
    window.addEventListener('keydown', onKeyDown, true);
    return () => window.removeEventListener('keydown', onKeyDown, true);
  }, [box, onLeave]);
}
