/** The keyboard stays on the picture when another view takes its place. */

import { useEffect, useLayoutEffect, useRef, type RefObject } from 'react';
import type { View } from '../state/session';

const isPicture = (target: EventTarget | null): target is HTMLElement | SVGElement =>
  target instanceof Element && target.classList.contains('scene');

export function useKeptFocus(frame: RefObject<HTMLElement | null>, view: View): void {
  const had = useRef(false);
  useEffect(() => {
    const onFocus = (event: FocusEvent): void => {
      had.current = isPicture(event.target);
    };
    document.addEventListener('focusin', onFocus);
    return () => document.removeEventListener('focusin', onFocus);
  }, []);
  useLayoutEffect(() => {
    const picture = frame.current?.querySelector('.scene');
    if (had.current && document.activeElement === document.body && isPicture(picture ?? null)) {
      (picture as SVGElement).focus();
    }
  }, [frame, view]);
}
