/**
 * Where the lettering of the drawing stands on the page: no two labels over each other, all of them within
 * the picture, each as near to its place as that allows. Pixels, from the picture's upper left corner.
 */

export interface PagePoint {
  readonly x: number;
  readonly y: number;
}

export interface PageSize {
  readonly width: number;
  readonly height: number;
}

export interface LabelRequest {
  /** Where its middle wants to be; null where its place is out of the picture. */
  readonly at: PagePoint | null;
  readonly size: PageSize;
  /** Lower ranks are placed first. */
  readonly rank: number;
  /** Moves this way first where its place is taken; any way where it is not given. */
  readonly outward?: PagePoint;
  /** Is not shown where its place is taken, and never moves. */
  readonly yields?: boolean;
}

/** The middle of the label; null where it is not shown. */
export type LabelPlace = PagePoint | null;

/** Free space around each label, px: what stands close by must still be told apart. */
const GAP_PX = 2;
const STEP_PX = 7;
/** So far a label goes straight outward before it tries other ways, px. */
const STRAIGHT_PX = 70;
/** Tried around the outward direction, in parts of a turn: straight on, then to both sides. */
const TURNS = [0, 1, -1, 2, -2, 3, -3, 4, -4, 5, -5, 6].map((n) => n / 12);

/** A place for every request, in their order. */
export function placeLabels(
  requests: readonly LabelRequest[],
  picture: PageSize,
): readonly LabelPlace[] {
  const places: LabelPlace[] = requests.map(() => null);
  const taken: Box[] = [];
  const order = requests
    .map((request, n) => ({ request, n }))
    .sort((a, b) => a.request.rank - b.request.rank || a.n - b.n);
  for (const { request, n } of order) {
    const place = placeFor(request, picture, taken);
    if (!place) continue;
    places[n] = place;
    taken.push(boxAround(place, request.size));
  }
  return places;
}

function placeFor(
  { at, size, outward, yields }: LabelRequest,
  picture: PageSize,
  taken: readonly Box[],
): LabelPlace {
  if (!at || size.width + 2 * GAP_PX > picture.width || size.height + 2 * GAP_PX > picture.height)
    return null;
  const free = (place: PagePoint): boolean => {
    const box = boxAround(place, size);
    return !taken.some((other) => overlap(box, other));
  };
  const start = inPicture(at, size, picture);
  if (free(start)) return start;
  if (yields) return null;
  const moved = (reach: number, angle: number): PagePoint =>
    inPicture(
      { x: start.x + reach * Math.cos(angle), y: start.y + reach * Math.sin(angle) },
      size,
      picture,
    );
  const first = outward ? Math.atan2(outward.y, outward.x) : -Math.PI / 2;
  const most = Math.hypot(picture.width, picture.height);
  for (let reach = STEP_PX; outward && reach <= STRAIGHT_PX; reach += STEP_PX) {
    const place = moved(reach, first);
    if (free(place)) return place;
  }
  for (let reach = STEP_PX; reach < most; reach += STEP_PX) {
    for (const turn of TURNS) {
      const place = moved(reach, first + turn * 2 * Math.PI);
      if (free(place)) return place;
    }
  }
  return null;
}

/** The place, moved so that a label of that size lies within the picture. */
function inPicture(at: PagePoint, size: PageSize, picture: PageSize): PagePoint {
  const held = (value: number, length: number, most: number): number =>
    Math.min(Math.max(value, length / 2 + GAP_PX), most - length / 2 - GAP_PX);
  return {
    x: held(at.x, size.width, picture.width),
    y: held(at.y, size.height, picture.height),
  };
}

type Box = PagePoint & PageSize;

function boxAround(at: PagePoint, size: PageSize): Box {
  return { x: at.x - size.width / 2, y: at.y - size.height / 2, ...size };
}

function overlap(a: Box, b: Box): boolean {
  return (
    a.x < b.x + b.width + GAP_PX &&
    b.x < a.x + a.width + GAP_PX &&
    a.y < b.y + b.height + GAP_PX &&
    b.y < a.y + a.height + GAP_PX
  );
}
