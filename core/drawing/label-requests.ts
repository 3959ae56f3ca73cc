/**
 * From a label with its place in the room to what `placeLabels` is asked for: where on the page it wants
 * to be, which way it moves, what is placed before it. The page is in pixels, whatever view or camera
 * brings places of the room onto it.
 */

import type { Point } from '../room/project';
import type { LabelRequest, PagePoint, PageSize } from './place-labels';

/** What is placed first keeps its place. */
export const RANKS = { fixed: 0, chosen: 1, grip: 2, tag: 3, yields: 4 } as const;

/** Where a label belongs, and what it may do where that is taken. */
export interface LabelWish {
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
}

/** A place of the room on the page; null where it is behind the eye. */
export type ToPage = (place: Point) => PagePoint | null;

/** Around a place what stands there must be seen, px: lettering beside it keeps off so far. */
const CLEAR_PX = 13;
/** Labels this far outside the picture are not shown, px. */
const EDGE_PX = { x: 40, y: 20 };

export function labelRequest(
  label: LabelWish,
  toPage: ToPage,
  size: PageSize,
  picture: PageSize,
): LabelRequest {
  const wanted = wantedOnPage(label, toPage, size, picture);
  return {
    at: wanted && { x: wanted.x, y: wanted.y },
    size,
    rank: label.rank ?? (label.yields ? RANKS.yields : label.mayShift ? RANKS.tag : RANKS.fixed),
    ...(wanted?.outward ? { outward: wanted.outward } : {}),
    ...(label.yields ? { yields: true } : {}),
  };
}

function wantedOnPage(
  label: LabelWish,
  toPage: ToPage,
  size: PageSize,
  picture: PageSize,
): (PagePoint & { readonly outward?: PagePoint }) | null {
  const place = toPage(label.at);
  if (!place) return null;
  const from = label.awayFrom ?? label.outwardFrom;
  const outward = from ? wayBetween(toPage(from), place) : null;
  const byPx = label.awayFrom && outward ? clearBy(outward, size) : 0;
  const x = place.x + (outward?.x ?? 0) * byPx;
  const y = place.y + (outward?.y ?? 0) * byPx;
  const outside =
    x < -EDGE_PX.x ||
    y < -EDGE_PX.y ||
    x > picture.width + EDGE_PX.x ||
    y > picture.height + EDGE_PX.y;
  return outside ? null : { x, y, ...(outward ? { outward } : {}) };
}

/** How far out lettering of a size goes until it is beside the place, or over or under it, px. */
function clearBy(outward: PagePoint, { width, height }: PageSize): number {
  const beside = (width / 2 + CLEAR_PX) / Math.abs(outward.x);
  const above = (height / 2 + CLEAR_PX) / Math.abs(outward.y);
  return Math.min(beside, above);
}

/** Unit vector on the page; null where both are in the same place. */
function wayBetween(from: PagePoint | null, to: PagePoint): PagePoint | null {
  if (!from) return null;
  const [dx, dy] = [to.x - from.x, to.y - from.y];
  const far = Math.hypot(dx, dy);
  return far > 0.5 ? { x: dx / far, y: dy / far } : null;
}
