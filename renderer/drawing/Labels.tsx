/**
 * Lettering and handles over the drawing: page elements that are moved, every time that it is drawn, to
 * where their place in the room appears. They stay sharp, can be focused, and are read by a screen reader.
 */

import type { ReactElement, ReactNode, RefObject } from 'react';
import { labelRequest, type LabelWish, type ToPage } from '../../core/drawing/label-requests';
import {
  placeLabels,
  type LabelRequest,
  type PagePoint,
  type PageSize,
} from '../../core/drawing/place-labels';

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

/** Move the elements in `layer` to where their places appear on a picture of that size. */
export function moveLabels(
  layer: HTMLElement,
  labels: readonly PlacedLabel[],
  toPage: ToPage,
  picture: PageSize,
  sizes: SizeCache,
): void {
  const anchors = layer.children;
  const requests = labels.map((label, i): LabelRequest => {
    const anchor = anchors[i];
    const size = anchor instanceof HTMLElement ? sizeOf(anchor, sizes) : NO_SIZE;
    return labelRequest(label, toPage, size, picture);
  });
  placeLabels(requests, picture).forEach((at, i) => {
    const anchor = anchors[i];
    const wanted = requests[i]?.at;
    if (!(anchor instanceof HTMLElement)) return;
    anchor.style.visibility = at ? 'visible' : 'hidden';
    if (!at || !wanted) return;
    anchor.style.transform = `translate(${at.x.toFixed(1)}px, ${at.y.toFixed(1)}px)`;
    lead(anchor, at, wanted);
  });
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

export type SizeCache = WeakMap<Element, PageSize>;

/** Size of a label's element, measured once until the labels change. */
function sizeOf(anchor: HTMLElement, known: SizeCache): PageSize {
  const before = known.get(anchor);
  if (before) return before;
  const child = anchor.firstElementChild as HTMLElement | null;
  const size = { width: child?.offsetWidth ?? 0, height: child?.offsetHeight ?? 0 };
  known.set(anchor, size);
  return size;
}
