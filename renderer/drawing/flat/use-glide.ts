/** The eye glides to where it shows the whole room again after the room has changed its size. */

import { useEffect, useRef, useState } from 'react';
import type { FlatEye } from './flat-eye';

const GLIDE_MS = 260;

const eased = (t: number): number => t * t * (3 - 2 * t);
const stillPreferred = (): boolean => matchMedia('(prefers-reduced-motion: reduce)').matches;

const between = (from: FlatEye, to: FlatEye, share: number): FlatEye => {
  const mix = (a: number, b: number): number => a + (b - a) * share;
  return {
    pxPerM: mix(from.pxPerM, to.pxPerM),
    middle: [mix(from.middle[0], to.middle[0]), mix(from.middle[1], to.middle[1])],
  };
};

const isSame = (a: FlatEye, b: FlatEye): boolean =>
  a.pxPerM === b.pxPerM && a.middle[0] === b.middle[0] && a.middle[1] === b.middle[1];

/**
 * The eye on its way to `target`. At once where `key` is another (another view, another picture); not at all
 * while `held`: it stays still under the hand.
 */
export function useGlide(target: FlatEye, key: string, held: boolean): FlatEye {
  const [state, setState] = useState({ key, eye: target });
  const shown = state.key === key ? state.eye : target;
  const latest = useRef(shown);
  useEffect(() => {
    latest.current = shown;
  });
  const {
    pxPerM,
    middle: [x, y],
  } = target;
  useEffect(() => {
    const to: FlatEye = { pxPerM, middle: [x, y] };
    if (held) return;
    const from = latest.current;
    if (isSame(from, to) || stillPreferred()) {
      setState({ key, eye: to });
      return;
    }
    const startMs = performance.now();
    let frame = 0;
    const step = (): void => {
      const share = Math.min(1, Math.max(0, (performance.now() - startMs) / GLIDE_MS));
      setState({ key, eye: share < 1 ? between(from, to, eased(share)) : to });
      if (share < 1) frame = requestAnimationFrame(step);
    };
    frame = requestAnimationFrame(step);
    return () => cancelAnimationFrame(frame);
  }, [pxPerM, x, y, key, held]);
  return shown;
}
