/**
 * Lettering and handles over the canvas: page elements that are moved, every drawn frame, to where
 * their place in the room appears. They stay sharp, can be focused, and are read by a screen reader.
 */

import { useFrame, useThree } from '@react-three/fiber';
import { type ReactElement, type ReactNode, type RefObject, useEffect, useRef } from 'react';
import { type PerspectiveCamera, Vector3 } from 'three';
import { labelRequest, type LabelWish } from '../../core/drawing/label-requests';
import {
  placeLabels,
  type LabelRequest,
  type PagePoint,
  type PageSize,
} from '../../core/drawing/place-labels';
import type { Point } from '../../core/room/project';
import { toScene } from './axes';
import type { Stage } from './stage';

export interface PlacedLabel extends LabelWish {
  readonly key: string;
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
      return labelRequest(label, (place) => onCanvas(place, camera, size), extent, size);
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

type SizeCache = WeakMap<Element, PageSize>;

const scratch = new Vector3();

/** Where a place of the room is on the canvas; null where it is behind the eye. */
function onCanvas(place: Point, camera: PerspectiveCamera, size: PageSize): PagePoint | null {
  const { x, y, z } = scratch.set(...toScene(place)).project(camera);
  if (z > 1) return null;
  return { x: ((x + 1) / 2) * size.width, y: ((1 - y) / 2) * size.height };
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
