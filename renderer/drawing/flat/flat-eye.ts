/**
 * The eye over a plan or a section: how large the paper's metre is and which place of it is in the middle
 * of the picture. Pixels from the picture's upper left corner.
 */

import { OFFSET_M } from '../../../core/drawing/dimensions';
import type { PaperPoint, PaperRect } from '../../../core/drawing/marks';
import type { PagePoint, PageSize } from '../../../core/drawing/place-labels';
import { hiddenAxis, rectOnPaper } from '../../../core/drawing/on-paper';
import type { FlatView } from '../../../core/drawing/views';
import { farCorner } from '../../../core/room/point';
import type { ShellSize } from '../../../core/room/project';
import type { EyeMove } from '../eye-keys';

export interface FlatEye {
  readonly pxPerM: number;
  /** What is in the middle of the picture, m on the paper. */
  readonly middle: PaperPoint;
}

/** How the person has moved the eye from where it shows the whole room. */
export interface EyeShift {
  /** 1 shows the whole room, more is nearer. */
  readonly zoom: number;
  /** m on the paper. */
  readonly by: PaperPoint;
}

export const NO_SHIFT: EyeShift = { zoom: 1, by: [0, 0] };
export const ZOOM_LIMITS = [0.25, 16] as const;

/** Share of the picture that the room with its dimension lines may take. */
const FILL = 0.92;
/** Lettering stands outside the dimension lines by about this, m. */
const LETTERING_M = 0.2;

/** The shell with the ground of its dimension lines, which stand on every side of a plan. */
function framed(view: FlatView, size: ShellSize): PaperRect {
  const { min, max } = rectOnPaper(view, { min: [0, 0, 0], max: farCorner(size) });
  const out = OFFSET_M + LETTERING_M;
  const above = hiddenAxis(view) === 2 ? out : LETTERING_M;
  return { min: [min[0] - out, min[1] - out], max: [max[0] + out, max[1] + above] };
}

/** The eye that shows the whole room. */
export function wholeRoom(view: FlatView, size: ShellSize, picture: PageSize): FlatEye {
  const { min, max } = framed(view, size);
  const [wide, high] = [max[0] - min[0], max[1] - min[1]];
  return {
    pxPerM: FILL * Math.max(1e-3, Math.min(picture.width / wide, picture.height / high)),
    middle: [(min[0] + max[0]) / 2, (min[1] + max[1]) / 2],
  };
}

export const shifted = ({ pxPerM, middle }: FlatEye, { zoom, by }: EyeShift): FlatEye => ({
  pxPerM: pxPerM * zoom,
  middle: [middle[0] + by[0], middle[1] + by[1]],
});

/** Where a place of the paper is in the picture. */
export const toPicture = (eye: FlatEye, [x, y]: PaperPoint, picture: PageSize): PagePoint => ({
  x: picture.width / 2 + (x - eye.middle[0]) * eye.pxPerM,
  y: picture.height / 2 - (y - eye.middle[1]) * eye.pxPerM,
});

/** Which place of the paper is there in the picture. */
export const fromPicture = (eye: FlatEye, at: PagePoint, picture: PageSize): PaperPoint => [
  eye.middle[0] + (at.x - picture.width / 2) / eye.pxPerM,
  eye.middle[1] - (at.y - picture.height / 2) / eye.pxPerM,
];

/** Zoomed by a factor with the place under `at` kept where it is. */
export function zoomedAt(
  whole: FlatEye,
  shift: EyeShift,
  factor: number,
  at: PagePoint,
  picture: PageSize,
): EyeShift {
  const [least, most] = ZOOM_LIMITS;
  const zoom = Math.min(most, Math.max(least, shift.zoom * factor));
  const before = fromPicture(shifted(whole, shift), at, picture);
  const after = fromPicture(shifted(whole, { ...shift, zoom }), at, picture);
  return {
    zoom,
    by: [shift.by[0] + before[0] - after[0], shift.by[1] + before[1] - after[1]],
  };
}

/** The paper pulled along by so many pixels. */
export function pulled(whole: FlatEye, shift: EyeShift, dx: number, dy: number): EyeShift {
  const perPx = 1 / (whole.pxPerM * shift.zoom);
  return { ...shift, by: [shift.by[0] - dx * perPx, shift.by[1] + dy * perPx] };
}

const KEY_ZOOM = 1.12;
/** Part of the picture's height that a key moves the eye by. */
const KEY_SLIDE = 0.06;

/** After a key: the eye goes the way of the key, so that the room goes the other way. */
export function keyMoved(
  whole: FlatEye,
  shift: EyeShift,
  { right, up, nearer }: EyeMove,
  picture: PageSize,
): EyeShift {
  const stepPx = KEY_SLIDE * picture.height;
  const slid = pulled(whole, shift, -right * stepPx, up * stepPx);
  const middle = { x: picture.width / 2, y: picture.height / 2 };
  return nearer === 0 ? slid : zoomedAt(whole, slid, KEY_ZOOM ** nearer, middle, picture);
}
