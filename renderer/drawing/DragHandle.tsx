/**
 * A place on the drawing that can be pulled: a button, so that arrow keys and a screen reader reach it.
 * It tells where the pointer went as a ray; what that means is the caller's.
 */

import {
  useRef,
  type KeyboardEvent,
  type PointerEvent,
  type ReactElement,
  type ReactNode,
} from 'react';
import type { Ray } from 'three';
import { rayThrough, type Stage } from './stage';

export interface DragHandleProps {
  readonly label: string;
  readonly className: string;
  readonly stage: { readonly current: Stage | null };
  readonly children?: ReactNode;
  readonly onStart?: () => void;
  /** The pointer now looks along `ray`; it started along `startRay`. One gesture name a drag. */
  readonly onDrag: (ray: Ray, startRay: Ray, fine: boolean, gesture: string) => void;
  readonly onEnd?: () => void;
  readonly onPress?: () => void;
  /** Arrow keys: a step right or left, up or down. */
  readonly onNudge?: (right: number, up: number, fine: boolean) => void;
}

const ARROWS: Readonly<Record<string, readonly [number, number]>> = {
  ArrowRight: [1, 0],
  ArrowLeft: [-1, 0],
  ArrowUp: [0, 1],
  ArrowDown: [0, -1],
};
const MOVED_PX = 3;
let gestureCount = 0;

export function DragHandle(props: DragHandleProps): ReactElement {
  const { label, className, stage, children, onStart, onDrag, onEnd, onPress, onNudge } = props;
  const drag = useRef<{ ray: Ray; x: number; y: number; gesture: string; moved: boolean } | null>(
    null,
  );

  const onPointerDown = (event: PointerEvent<HTMLButtonElement>): void => {
    if (!stage.current || event.button !== 0) return;
    event.currentTarget.setPointerCapture(event.pointerId);
    gestureCount += 1;
    drag.current = {
      ray: rayThrough(stage.current, event.clientX, event.clientY).clone(),
      x: event.clientX,
      y: event.clientY,
      gesture: `drag-${gestureCount}`,
      moved: false,
    };
  };

  const onPointerMove = (event: PointerEvent<HTMLButtonElement>): void => {
    const going = drag.current;
    if (!going || !stage.current) return;
    if (!going.moved) {
      if (Math.hypot(event.clientX - going.x, event.clientY - going.y) < MOVED_PX) return;
      going.moved = true;
      onStart?.();
    }
    const ray = rayThrough(stage.current, event.clientX, event.clientY);
    onDrag(ray, going.ray, event.shiftKey, going.gesture);
  };

  const onPointerUp = (): void => {
    const going = drag.current;
    drag.current = null;
    if (!going) return;
    if (going.moved) onEnd?.();
    else onPress?.();
  };

  const onKeyDown = (event: KeyboardEvent<HTMLButtonElement>): void => {
    const arrow = ARROWS[event.key];
    if (arrow && onNudge) {
      event.preventDefault();
      onNudge(arrow[0], arrow[1], event.shiftKey);
    }
    if (event.key === 'Enter' || event.key === ' ') {
      event.preventDefault();
      onPress?.();
    }
  };

  return (
    <button
      type="button"
      className={className}
      aria-label={label}
      title={label}
      onPointerDown={onPointerDown}
      onPointerMove={onPointerMove}
      onPointerUp={onPointerUp}
      onPointerCancel={onPointerUp}
      onKeyDown={onKeyDown}
    >
      {children}
    </button>
  );
}
