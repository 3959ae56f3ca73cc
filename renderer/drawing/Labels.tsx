/**
 * Lettering and handles over the canvas: page elements that are moved, every drawn frame, to where
 * their place in the room appears. They stay sharp, can be focused, and are read by a screen reader.
 */

import { useFrame, useThree } from '@react-three/fiber';
import { type ReactElement, type ReactNode, type RefObject, useEffect, useRef } from 'react';
import { type PerspectiveCamera, Vector3 } from 'three';
import type { Point } from '../../core/room/project';
import { toScene } from './axes';
import type { Stage } from './stage';

export interface PlacedLabel {
  readonly key: string;
  readonly at: Point;
  /** Place that the lettering keeps away from: it stands beside `at`, on the far side of this. */
  readonly awayFrom?: Point;
  /** Gives way (is not shown) where it would lie on another label. */
  readonly yields?: boolean;
  /** Moves up or down by its own height where it would lie on another label. */
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
    const taken: Box[] = [];
    const settle = (yielding: boolean): void =>
      labels.forEach((label, i) => {
        const anchor = anchors[i];
        if ((label.yields ?? false) !== yielding || !(anchor instanceof HTMLElement)) return;
        const place = placeOnPage(label, camera, size);
        const extent = sizeOf(anchor, sizes.current);
        const at =
          place && label.mayShift ? shifted(inPicture(place, extent, size), extent, taken) : place;
        const box = at && boxAround(at, extent);
        const shown = box !== null && !(yielding && taken.some((other) => overlap(box, other)));
        if (shown) taken.push(box);
        anchor.style.visibility = shown ? 'visible' : 'hidden';
        if (at) anchor.style.transform = `translate(${at.x.toFixed(1)}px, ${at.y.toFixed(1)}px)`;
      });
    settle(false);
    settle(true);
  });
  return null;
}

/** How far lettering stands beside its place; it is wider than high. */
const BESIDE_PX = { x: 46, y: 27 };
/** Labels this far outside the picture are not shown. */
const EDGE_PX = { x: 40, y: 20 };

interface PagePoint {
  readonly x: number;
  readonly y: number;
}

interface PageSize {
  readonly width: number;
  readonly height: number;
}

type Box = PagePoint & PageSize;
type SizeCache = WeakMap<Element, PageSize>;

const scratch = { place: new Vector3(), other: new Vector3() };

/** Where a label stands on the canvas, or null where it is out of the picture. */
function placeOnPage(
  label: PlacedLabel,
  camera: PerspectiveCamera,
  size: PageSize,
): PagePoint | null {
  const { place, other } = scratch;
  place.set(...toScene(label.at)).project(camera);
  let x = ((place.x + 1) / 2) * size.width;
  let y = ((1 - place.y) / 2) * size.height;
  if (label.awayFrom) {
    other.set(...toScene(label.awayFrom)).project(camera);
    const dx = (place.x - other.x) * size.width;
    const dy = (other.y - place.y) * size.height;
    const far = Math.hypot(dx, dy) || 1;
    x += (dx / far) * BESIDE_PX.x;
    y += (dy / far) * BESIDE_PX.y;
  }
  const outside =
    place.z > 1 ||
    x < -EDGE_PX.x ||
    y < -EDGE_PX.y ||
    x > size.width + EDGE_PX.x ||
    y > size.height + EDGE_PX.y;
  return outside ? null : { x, y };
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

/** The place, moved so that a label of that size lies within the picture. */
function inPicture(at: PagePoint, extent: PageSize, picture: PageSize): PagePoint {
  const held = (value: number, length: number, most: number): number =>
    Math.min(Math.max(value, length / 2 + 2), most - length / 2 - 2);
  return {
    x: held(at.x, extent.width, picture.width),
    y: held(at.y, extent.height, picture.height),
  };
}

/** Tried in this order, in heights of the label. */
const SHIFTS = [0, -1.1, 1.1, -2.2, 2.2];

/** The place, or the nearest above or below it where nothing lies; the place itself where all are taken. */
function shifted(at: PagePoint, extent: PageSize, taken: readonly Box[]): PagePoint {
  for (const shift of SHIFTS) {
    const moved = { x: at.x, y: at.y + shift * extent.height };
    const box = boxAround(moved, extent);
    if (!taken.some((other) => overlap(box, other))) return moved;
  }
  return at;
}

function boxAround(at: PagePoint, size: PageSize): Box {
  return { x: at.x - size.width / 2, y: at.y - size.height / 2, ...size };
}

function overlap(a: Box, b: Box): boolean {
  return a.x < b.x + b.width && b.x < a.x + a.width && a.y < b.y + b.height && b.y < a.y + a.height;
}
