/** A plan or section on the screen: the drawing as SVG under the lettering and handles, zoomed and pulled. */

import {
  useEffect,
  useId,
  useLayoutEffect,
  useRef,
  useState,
  type ReactElement,
  type ReactNode,
  type RefObject,
} from 'react';
import { onPaper } from '../../../core/drawing/on-paper';
import type { PageSize } from '../../../core/drawing/place-labels';
import type { FlatView } from '../../../core/drawing/views';
import type { ShellSize } from '../../../core/room/project';
import { eyeMove } from '../eye-keys';
import { LabelLayer, moveLabels, type PlacedLabel } from '../Labels';
import type { Stage } from '../stage';
import {
  fromPicture,
  keyMoved,
  NO_SHIFT,
  shifted,
  toPicture,
  wholeRoom,
  type EyeShift,
} from './flat-eye';
import { UNITS_PER_M } from './FlatMarks';
import { rayInto } from './flat-stage';
import { useFlatHand } from './use-flat-hand';
import { useGlide } from './use-glide';

/** What its keys are, in words. */
const FLAT_KEYS = 'Arrow keys move the sheet. + and − zoom, Home shows the whole room.';
const FADE_MS = 160;

export interface FlatDrawingProps {
  readonly view: FlatView;
  readonly size: ShellSize;
  /** Name of the picture for a screen reader. */
  readonly label: string;
  readonly labels: readonly PlacedLabel[];
  readonly stage: RefObject<Stage | null>;
  /** True while a drag is on: the paper stays still under the hand. */
  readonly held: boolean;
  /** A new number brings the whole room back into the picture. */
  readonly refit: number;
  readonly onHome: () => void;
  /** Tells that it was drawn. */
  readonly onDrawn: () => void;
  /** SVG in millimetres of the paper. */
  readonly children: ReactNode;
}

export function FlatDrawing(props: FlatDrawingProps): ReactElement {
  const { view, size, label, labels, stage, held, refit, onHome, onDrawn, children } = props;
  const keysId = useId();
  const svg = useRef<SVGSVGElement>(null);
  const layer = useRef<HTMLDivElement>(null);
  const picture = usePictureSize(svg);
  const place = `${view.id} ${refit}`;
  const [moved, setMoved] = useState({ place, shift: NO_SHIFT });
  const shift = moved.place === place ? moved.shift : NO_SHIFT;
  const target = wholeRoom(view, size, picture);
  const whole = useGlide(target, `${place} ${picture.width} ${picture.height}`, held);
  const eye = shifted(whole, shift);
  const move = (change: (shift: EyeShift) => EyeShift): void =>
    setMoved((before) => ({
      place,
      shift: change(before.place === place ? before.shift : NO_SHIFT),
    }));
  const hand = useFlatHand(svg, whole, picture, move);

  const { pxPerM, middle } = eye;
  const [middleX, middleY] = middle;
  const sizes = useRef(new WeakMap<Element, PageSize>());
  useLayoutEffect(() => {
    sizes.current = new WeakMap();
  }, [labels]);
  useLayoutEffect(() => {
    const at = { pxPerM, middle: [middleX, middleY] } as const;
    stage.current = {
      rayThrough: (clientX, clientY) => {
        const box = svg.current?.getBoundingClientRect();
        const on = { x: clientX - (box?.left ?? 0), y: clientY - (box?.top ?? 0) };
        return rayInto(view, fromPicture(at, on, picture));
      },
    };
    const toPage = (of: PlacedLabel['at']) => toPicture(at, onPaper(view, of), picture);
    if (layer.current) moveLabels(layer.current, labels, toPage, picture, sizes.current);
    onDrawn();
  }, [view, labels, pxPerM, middleX, middleY, picture, stage, children, onDrawn]);
  useEffect(() => {
    if (matchMedia('(prefers-reduced-motion: reduce)').matches) return;
    svg.current?.animate([{ opacity: 0 }, { opacity: 1 }], FADE_MS);
  }, [view]);

  const corner = toPicture(eye, [0, 0], picture);
  return (
    <>
      <svg
        ref={svg}
        className="scene flat"
        role="application"
        tabIndex={0}
        aria-label={label}
        aria-describedby={keysId}
        onKeyDown={(event) => {
          if (event.target !== event.currentTarget) return;
          if (event.ctrlKey || event.metaKey || event.altKey) return;
          const step = eyeMove(event.key, event.shiftKey);
          if (event.key === 'Home') onHome();
          else if (step) move((before) => keyMoved(whole, before, step, picture));
          else return;
          event.preventDefault();
        }}
        onPointerDown={hand.onPointerDown}
        onPointerMove={hand.onPointerMove}
        onPointerUp={hand.onPointerUp}
        onPointerCancel={hand.onPointerUp}
        onContextMenu={(event) => event.preventDefault()}
      >
        <g
          transform={`translate(${corner.x.toFixed(2)} ${corner.y.toFixed(2)}) scale(${pxPerM / UNITS_PER_M})`}
        >
          {children}
        </g>
      </svg>
      <p className="scene-keys" id={keysId}>
        {FLAT_KEYS}
      </p>
      <LabelLayer labels={labels} layer={layer} />
    </>
  );
}

const FIRST_GUESS: PageSize = { width: 900, height: 560 };

/** The size of the picture on the page, px. */
function usePictureSize(element: RefObject<SVGSVGElement | null>): PageSize {
  const [size, setSize] = useState(FIRST_GUESS);
  useLayoutEffect(() => {
    const svg = element.current;
    if (!svg) return;
    const measure = (): void => {
      const [width, height] = [svg.clientWidth, svg.clientHeight];
      if (width === 0 || height === 0) return;
      setSize((before) =>
        before.width === width && before.height === height ? before : { width, height },
      );
    };
    measure();
    const watch = new ResizeObserver(measure);
    watch.observe(svg);
    return () => watch.disconnect();
  }, [element]);
  return size;
}
