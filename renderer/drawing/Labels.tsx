/**
 * Lettering and handles over the canvas: page elements that are moved, every drawn frame, to where
 * their place in the room appears. They stay sharp, can be focused, and are read by a screen reader.
 */

import { useFrame, useThree } from '@react-three/fiber';
import { type ReactElement, type ReactNode, type RefObject, useEffect, useRef } from 'react';
import { type PerspectiveCamera, Vector3 } from 'three';
import type { Point } from '../../core/room/project';
import { toScene } from './axes';
import { placeLabels, type LabelRequest, type PagePoint, type PageSize } from './place-labels';
import type { Stage } from './stage';

export interface PlacedLabel {
  readonly key: string;
  readonly at: Point;
  /** Place that the lettering keeps away from: it stands beside `at`, on the far side of this. */
  readonly awayFrom?: Point;
  /** Stands at its place, and moves away from this where that is taken. */
  readonly outwardFrom?: Point;
  /** What is placed before it, see `RANKS`; by what it may do where it is not given. */
  readonly rank?: number;
  /** Gives way (is not shown) where it would lie on another label. */
  readonly yields?: boolean;
  /** Lettering that moves aside where it would lie on what is placed before it. */
  readonly mayShift?: boolean;
  readonly node: ReactNode;
}

/** The page side: one element a label, told apart by its key. */
export function LabelLayer({
  labels,
  layer,
}: {
  readonly labels: readonly PlacedLabel[];
  readonly layer: RefObject<HTMLDivElement | null>;
}): ReactElement {
  return (
    <div className="labels" ref={layer}>
      {labels.map((label) => (
        <div key={label.key} className="label-anchor" data-place={label.at.join(' ')}>
          {label.node}
          <i className="leader" aria-hidden="true" />
        </div>
      ))}
    </div>
  );
}

export interface LabelMoverProps {
  readonly layer: RefObject<HTMLDivElement | null>;
  readonly stage: { current: Stage | null };
  readonly labels: readonly PlacedLabel[];
}

/** The scene side: moves the elements before each frame, and lends camera and canvas to the handles. */
export function LabelMover({ layer, stage, labels }: LabelMoverProps): null {
  const camera = useThree((state) => state.camera as PerspectiveCamera);
  const canvas = useThree((state) => state.gl.domElement);
  const invalidate = useThree((state) => state.invalidate);
  const sizes = useRef<SizeCache>(new WeakMap());

  useEffect(() => {
    stage.current = { camera, canvas };
  }, [stage, camera, canvas]);
  useEffect(() => {
    sizes.current = new WeakMap();
    invalidate();
  }, [labels, invalidate]);

  useFrame(({ size }) => {
    const anchors = layer.current?.children;
    if (!anchors) return;
    camera.updateMatrixWorld();
    const requests = labels.map((label, i): LabelRequest => {
      const anchor = anchors[i];
      const extent = anchor instanceof HTMLElement ? sizeOf(anchor, sizes.current) : NO_SIZE;
      const place = placeOnPage(label, camera, size);
      return {
        at: place && { x: place.x, y: place.y },
        size: extent,
        rank:
          label.rank ?? (label.yields ? RANKS.yields : label.mayShift ? RANKS.tag : RANKS.fixed),
        ...(place?.outward ? { outward: place.outward } : {}),
        ...(label.yields ? { yields: true } : {}),
      };
    });
    placeLabels(requests, size).forEach((at, i) => {
      const anchor = anchors[i];
      const wanted = requests[i]?.at;
      if (!(anchor instanceof HTMLElement)) return;
      anchor.style.visibility = at ? 'visible' : 'hidden';
      if (!at || !wanted) return;
      anchor.style.transform = `translate(${at.x.toFixed(1)}px, ${at.y.toFixed(1)}px)`;
      lead(anchor, at, wanted);
    });
  });
  return null;
}

/** What is placed first keeps its place. */
export const RANKS = { fixed: 0, chosen: 1, grip: 2, tag: 3, yields: 4 } as const;

const NO_SIZE: PageSize = { width: 0, height: 0 };

/** A label that stands farther than this from where it belongs is joined to it by a line, px. */
const LEAD_PX = 18;

function lead(anchor: HTMLElement, at: PagePoint, wanted: PagePoint): void {
  const line = anchor.querySelector<HTMLElement>(':scope > .leader');
  if (!line) return;
  const [dx, dy] = [wanted.x - at.x, wanted.y - at.y];
  const far = Math.hypot(dx, dy);
  line.style.width = far > LEAD_PX ? `${far.toFixed(1)}px` : '0';
  line.style.rotate = `${((Math.atan2(dy, dx) * 180) / Math.PI).toFixed(1)}deg`;
}

/** How far lettering stands beside its place; it is wider than high. */
const BESIDE_PX = { x: 46, y: 27 };
/** Labels this far outside the picture are not shown. */
const EDGE_PX = { x: 40, y: 20 };

type SizeCache = WeakMap<Element, PageSize>;

const scratch = { place: new Vector3(), other: new Vector3() };

/** Where a label stands on the canvas, or null where it is out of the picture. */
function placeOnPage(
  label: PlacedLabel,
  camera: PerspectiveCamera,
  size: PageSize,
): (PagePoint & { readonly outward?: PagePoint }) | null {
  const { place, other } = scratch;
  place.set(...toScene(label.at)).project(camera);
  let x = ((place.x + 1) / 2) * size.width;
  let y = ((1 - place.y) / 2) * size.height;
  let outward: PagePoint | null = null;
  const from = label.awayFrom ?? label.outwardFrom;
  if (from) {
    other.set(...toScene(from)).project(camera);
    const dx = (place.x - other.x) * size.width;
    const dy = (other.y - place.y) * size.height;
    const far = Math.hypot(dx, dy);
    if (far > 0.5) outward = { x: dx / far, y: dy / far };
  }
  if (label.awayFrom && outward) {
    x += outward.x * BESIDE_PX.x;
    y += outward.y * BESIDE_PX.y;
  }
  const outside =
    place.z > 1 ||
    x < -EDGE_PX.x ||
    y < -EDGE_PX.y ||
    x > size.width + EDGE_PX.x ||
    y > size.height + EDGE_PX.y;
  return outside ? null : { x, y, ...(outward ? { outward } : {}) };
}

/** Size of a label's element, measured once until the labels change. */
function sizeOf(anchor: HTMLElement, known: SizeCache): PageSize {
  const before = known.get(anchor);
  if (before) return before;
  const child = anchor.firstElementChild as HTMLElement | null;
  const size = { width: child?.offsetWidth ?? 0, height: child?.offsetHeight ?? 0 };
  known.set(anchor, size);
  return size;
}
