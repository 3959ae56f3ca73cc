/**
 * A place on the drawing that can be pulled: a button, so that arrow keys and a screen reader reach it.
 * It tells where the pointer went as a ray; what that means is the caller's. Escape takes a drag back.
 */

import {
  useEffect,
  useRef,
  useState,
  type KeyboardEvent,
  type PointerEvent,
  type ReactElement,
  type ReactNode,
} from 'react';
import type { Ray } from 'three';
import { useKeyGesture } from '../kit/controls/use-key-gesture';
import { useSession } from '../state/session';
import type { Gesture } from '../state/gesture';
import type { Stage } from './stage';

export interface DragHandleProps {
  readonly label: string;
  readonly className: string;
  readonly stage: { readonly current: Stage | null };
  readonly children?: ReactNode;
  readonly onStart?: () => void;
  /** The pointer now looks along `ray`; it started along `startRay`. One gesture a drag. */
  readonly onDrag: (ray: Ray, startRay: Ray, fine: boolean, gesture: Gesture) => void;
  readonly onEnd?: () => void;
  readonly onPress?: () => void;
  /** Arrow keys: a step right or left, up or down. One gesture a burst of presses. */
  readonly onNudge?: (right: number, up: number, fine: boolean, gesture: Gesture) => void;
  /** Delete or Backspace while it has the focus. */
  readonly onRemove?: () => void;
}

const ARROWS: Readonly<Record<string, readonly [number, number]>> = {
  ArrowRight: [1, 0],
  ArrowLeft: [-1, 0],
  ArrowUp: [0, 1],
  ArrowDown: [0, -1],
};
const MOVED_PX = 3;

interface Drag {
  readonly ray: Ray;
  readonly x: number;
  readonly y: number;
  readonly gesture: Gesture;
  readonly moved: boolean;
}

export function DragHandle(props: DragHandleProps): ReactElement {
  const { label, className, stage, children, onStart, onDrag, onPress, onNudge, onRemove } = props;
  const drag = useRef<Drag | null>(null);
  const keys = useKeyGesture();
  const [pulling, setPulling] = useState(false);
  const onEnd = useRef(props.onEnd);
  useEffect(() => {
    onEnd.current = props.onEnd;
  });

  useEffect(() => {
    if (!pulling) return;
    // Whatever has the focus, Escape belongs to the drag while it lasts.
    const onEscape = (event: globalThis.KeyboardEvent): void => {
      const going = drag.current;
      if (event.key !== 'Escape' || !going) return;
      event.preventDefault();
      event.stopImmediatePropagation();
      drag.current = null;
      setPulling(false);
      going.gesture.takeBack();
      onEnd.current?.();
    };
    window.addEventListener('keydown', onEscape, true);
    return () => window.removeEventListener('keydown', onEscape, true);
  }, [pulling]);

  const onPointerDown = (event: PointerEvent<HTMLButtonElement>): void => {
    if (!stage.current || event.button !== 0) return;
    event.currentTarget.setPointerCapture(event.pointerId);
    drag.current = {
      ray: stage.current.rayThrough(event.clientX, event.clientY).clone(),
      x: event.clientX,
      y: event.clientY,
      gesture: useSession.getState().begin(),
      moved: false,
    };
  };

  const onPointerMove = (event: PointerEvent<HTMLButtonElement>): void => {
    const going = drag.current;
    if (!going || !stage.current) return;
    if (!going.moved) {
      if (Math.hypot(event.clientX - going.x, event.clientY - going.y) < MOVED_PX) return;
      drag.current = { ...going, moved: true };
      setPulling(true);
      onStart?.();
    }
    const ray = stage.current.rayThrough(event.clientX, event.clientY);
    onDrag(ray, going.ray, event.shiftKey, going.gesture);
  };

  const onPointerUp = (): void => {
    const going = drag.current;
    drag.current = null;
    setPulling(false);
    if (!going) return;
    going.gesture.end();
    if (going.moved) onEnd.current?.();
    else onPress?.();
  };

  const onKeyDown = (event: KeyboardEvent<HTMLButtonElement>): void => {
    const arrow = ARROWS[event.key];
    if (arrow && onNudge) {
      event.preventDefault();
      onNudge(arrow[0], arrow[1], event.shiftKey, keys.press());
    }
    if (event.key === 'Enter' || event.key === ' ') {
      event.preventDefault();
      onPress?.();
    }
    if ((event.key === 'Delete' || event.key === 'Backspace') && onRemove) {
      event.preventDefault();
      onRemove();
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
      onBlur={keys.end}
    >
      {children}
    </button>
  );
}
