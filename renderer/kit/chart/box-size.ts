/** The size of a box on the page, so that a chart is drawn at its true size and lettering never scales. */

import { createContext, useContext, useEffect, useRef, useState, type RefObject } from 'react';

export interface BoxSize {
  /** Whole px; 0 until the box has been measured. */
  readonly width: number;
  readonly height: number;
}

/** A size that charts take without a page to measure it on: for paper and for tests. */
export const GivenBoxSize = createContext<BoxSize | null>(null);

export function useBoxSize<T extends HTMLElement>(): [RefObject<T | null>, BoxSize] {
  const ref = useRef<T>(null);
  const given = useContext(GivenBoxSize);
  const [size, setSize] = useState<BoxSize>(given ?? { width: 0, height: 0 });
  useEffect(() => {
    const element = ref.current;
    if (!element) return;
    const observer = new ResizeObserver(([entry]) => {
      if (!entry) return;
      const { width, height } = entry.contentRect;
      setSize({ width: Math.floor(width), height: Math.floor(height) });
    });
    observer.observe(element);
    return () => observer.disconnect();
  }, []);
  return [ref, size];
}
