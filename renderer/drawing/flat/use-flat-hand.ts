/** Moving the paper by hand: pull it, turn the wheel, pinch it. */

import { useEffect, useRef, type PointerEvent, type RefObject } from 'react';
import type { PagePoint, PageSize } from '../../../core/drawing/place-labels';
import { pulled, zoomedAt, type EyeShift, type FlatEye } from './flat-eye';

/** A notch of a wheel is 100 px or so and zooms by a tenth. */
const ZOOM_PER_PX = 1 / 1000;
const PX_PER_LINE = 16;

export interface FlatHand {
  readonly onPointerDown: (event: PointerEvent<SVGSVGElement>) => void;
  readonly onPointerMove: (event: PointerEvent<SVGSVGElement>) => void;
  readonly onPointerUp: (event: PointerEvent<SVGSVGElement>) => void;
}

export function useFlatHand(
  element: RefObject<SVGSVGElement | null>,
  whole: FlatEye,
  picture: PageSize,
  move: (change: (shift: EyeShift) => EyeShift) => void,
): FlatHand {
  const pointers = useRef(new Map<number, PagePoint>());
  const now = useRef({ whole, picture, move });
  useEffect(() => {
    now.current = { whole, picture, move };
  });

  useEffect(() => {
    const svg = element.current;
    if (!svg) return;
    // React listens passively, and would let the page scroll.
    const onWheel = (event: WheelEvent): void => {
      event.preventDefault();
      const px = event.deltaY * (event.deltaMode === 0 ? 1 : PX_PER_LINE);
      const box = svg.getBoundingClientRect();
      const at = { x: event.clientX - box.left, y: event.clientY - box.top };
      const { whole: eye, picture: size, move: change } = now.current;
      change((shift) => zoomedAt(eye, shift, Math.exp(-px * ZOOM_PER_PX), at, size));
    };
    svg.addEventListener('wheel', onWheel, { passive: false });
    return () => svg.removeEventListener('wheel', onWheel);
  }, [element]);

  const onPointerMove = (event: PointerEvent<SVGSVGElement>): void => {
    const before = pointers.current.get(event.pointerId);
    if (!before) return;
    const at = { x: event.clientX, y: event.clientY };
    const other = [...pointers.current].find(([id]) => id !== event.pointerId)?.[1];
    pointers.current.set(event.pointerId, at);
    if (!other) {
      move((shift) => pulled(whole, shift, at.x - before.x, at.y - before.y));
      return;
    }
    const far = (from: PagePoint): number => Math.hypot(from.x - other.x, from.y - other.y);
    const factor = far(at) / Math.max(1, far(before));
    const box = event.currentTarget.getBoundingClientRect();
    const middle = { x: (at.x + other.x) / 2 - box.left, y: (at.y + other.y) / 2 - box.top };
    move((shift) =>
      pulled(
        whole,
        zoomedAt(whole, shift, factor, middle, picture),
        (at.x - before.x) / 2,
        (at.y - before.y) / 2,
      ),
    );
  };

  return {
    onPointerDown: (event) => {
      event.currentTarget.setPointerCapture(event.pointerId);
      pointers.current.set(event.pointerId, { x: event.clientX, y: event.clientY });
    },
    onPointerMove,
    onPointerUp: (event) => {
      pointers.current.delete(event.pointerId);
    },
  };
}
