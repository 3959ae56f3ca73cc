/**
 * The canvas of the scene, which needs WebGL. Where there is none, and where it is taken away, a
 * sentence stands in its place: charts, inputs and findings work without it.
 */

import { Canvas, invalidate, useThree } from '@react-three/fiber';
import {
  useEffect,
  useId,
  useState,
  type KeyboardEvent,
  type ReactElement,
  type ReactNode,
} from 'react';

export interface SceneCanvasProps {
  /** Name of the picture for a screen reader. */
  readonly label: string;
  /** What its keys do, for a screen reader and for who comes by the keyboard. */
  readonly keys: string;
  /** A key while the picture itself has the focus; true where it was used. */
  readonly onKey: (event: KeyboardEvent<HTMLElement>) => boolean;
  /** The scene. */
  readonly children: ReactNode;
  /** Page elements over the canvas; only where there is a drawing under them. */
  readonly over: ReactNode;
}

/** True where a context can be had. What is made for the question is left to the garbage collector. */
function canDraw(): boolean {
  try {
    return document.createElement('canvas').getContext('webgl2') !== null;
  } catch {
    return false;
  }
}

export function SceneCanvas(props: SceneCanvasProps): ReactElement {
  const { label, keys, onKey, children, over } = props;
  const keysId = useId();
  const [able, setAble] = useState(canDraw);
  const [lost, setLost] = useState(false);
  // What lies over the picture is back only now, and has its places from a frame.
  useEffect(() => {
    if (!lost) invalidate();
  }, [lost]);
  const [attempt, setAttempt] = useState(0);
  const drawAgain = (): void => {
    setAble(canDraw());
    setLost(false);
    setAttempt((count) => count + 1);
  };
  if (!able) return <NoDrawing onRetry={drawAgain} />;
  return (
    <>
      <Canvas
        key={attempt}
        frameloop="demand"
        flat
        dpr={[1, 2]}
        // The picture is kept, so that it is there when the window is printed.
        gl={{
          antialias: true,
          alpha: true,
          powerPreference: 'low-power',
          preserveDrawingBuffer: true,
        }}
        className="scene"
        aria-label={label}
        aria-describedby={keysId}
        // Its arrow keys are the picture's own, so a screen reader must hand them on.
        role="application"
        tabIndex={0}
        onKeyDown={(event: KeyboardEvent<HTMLElement>) => {
          if (event.target === event.currentTarget && onKey(event)) event.preventDefault();
        }}
      >
        {children}
        <ContextWatch onLost={setLost} />
      </Canvas>
      <p className="scene-keys" id={keysId}>
        {keys}
      </p>
      {lost ? <LostDrawing onRetry={drawAgain} /> : over}
    </>
  );
}

/** Says when the context is lost and when it is back; then the scene is drawn again. */
function ContextWatch({ onLost }: { readonly onLost: (lost: boolean) => void }): null {
  const canvas = useThree((state) => state.gl.domElement);
  useEffect(() => {
    const lose = (event: Event): void => {
      // Without this the browser never gives the context back.
      event.preventDefault();
      onLost(true);
    };
    const restore = (): void => {
      onLost(false);
    };
    canvas.addEventListener('webglcontextlost', lose);
    canvas.addEventListener('webglcontextrestored', restore);
    return () => {
      canvas.removeEventListener('webglcontextlost', lose);
      canvas.removeEventListener('webglcontextrestored', restore);
    };
  }, [canvas, onLost]);
  return null;
}

function NoDrawing({ onRetry }: { readonly onRetry: () => void }): ReactElement {
  return (
    <div className="no-drawing" role="status">
      <div>
        <strong>The room cannot be drawn in space in this window</strong>
        <p>
          The room in space needs WebGL, and this window has none: graphics acceleration is switched
          off, or the graphics driver is not trusted with it.
        </p>
        <p>
          Everything else works. Plan and sections need none: they are drawn, and things are moved
          in them, as ever; so are the charts, tables and findings, and your room is kept and can be
          saved.
        </p>
        <p>
          To get it, switch graphics acceleration on in the browser’s settings or update the
          graphics driver, and start again. Another browser may have it at once.
        </p>
        <button type="button" onClick={onRetry}>
          Try again
        </button>
      </div>
    </div>
  );
}

function LostDrawing({ onRetry }: { readonly onRetry: () => void }): ReactElement {
  return (
    <div className="no-drawing" role="status">
      <div>
        <strong>The drawing was interrupted</strong>
        <p>
          The system took the graphics away from this window, as it does when the graphics driver
          starts again. The drawing comes back by itself when they are there; everything else works
          meanwhile.
        </p>
        <button type="button" onClick={onRetry}>
          Draw it again now
        </button>
      </div>
    </div>
  );
}
