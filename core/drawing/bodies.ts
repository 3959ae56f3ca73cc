/**
 * Things in the room as they stand on the paper: boxes that are cut are hatched under heavy edges, what
 * lies beyond the cut is seen, what lies before it is dashed. The nearest is drawn last.
 */

import { isSamePlace, referencePlace, seatsOf } from '../room/seats';
import type { Point, Project } from '../room/project';
import { screenRect } from '../room/screen';
import { cornersOf, type Layer, type Mark, type Tone } from './marks';
import type { Box } from '../scene/box';
import { depthOf, depthsOf, hiddenAxis, onPaper, rectOnPaper } from './on-paper';
import type { FlatView } from './views';

/** A thing with what it is drawn by. */
export interface Body {
  /** Depth of its nearest point, m. */
  readonly nearM: number;
  /** Depth that says whether it lies before the cut: of what is built in its farthest, else of its middle, m. */
  readonly placeM: number;
  readonly marks: readonly Mark[];
}

/** Marks of all bodies, the farthest first; what a view leaves out before its cut is not among them. */
export function drawnBodies(
  view: FlatView,
  cutM: number,
  bodies: readonly Body[],
): readonly Mark[] {
  const cutDepthM = view.looks.sign * cutM;
  return bodies
    .filter(({ placeM }) => view.beforeCut === 'dashed' || placeM > cutDepthM + DUST_M)
    .map((body, n) => ({ body, n }))
    .sort((a, b) => b.body.nearM - a.body.nearM || a.n - b.n)
    .flatMap(({ body }) => body.marks);
}

/** Nearer than this a face lies in the cut, and is not cut, m. */
const DUST_M = 1e-4;

export type Position = 'cut' | 'beyond' | 'before';

/** Where a box lies to the cut of a view. */
export function positionOf(view: FlatView, cutM: number, box: Box): Position {
  const [nearM, farM] = depthsOf(view, box);
  const cutDepthM = view.looks.sign * cutM;
  if (farM <= cutDepthM + DUST_M) return 'before';
  return nearM < cutDepthM - DUST_M ? 'cut' : 'beyond';
}

const BEFORE_OPACITY = 0.3;

/**
 * What is built in, in its kinds of line. `bare` leaves out the fill of what is not cut, so that what is
 * painted on it shows.
 */
export function solidBody(view: FlatView, cutM: number, solid: Box, bare: boolean): Body {
  const rect = rectOnPaper(view, solid);
  const points = cornersOf(rect);
  const [nearM, farM] = depthsOf(view, solid);
  const position = positionOf(view, cutM, solid);
  const layer = 'solids';
  const topTone: Tone = hiddenAxis(view) === 2 ? 'floor' : 'solid';
  const fill = (tone: Tone, opacity?: number): readonly Mark[] =>
    bare && position !== 'cut'
      ? []
      : [{ kind: 'fill', layer, points, tone, ...(opacity === undefined ? {} : { opacity }) }];
  const edge = (tone: Tone, weight: 'cut' | 'seen', dashed = false): Mark => ({
    kind: 'lines',
    layer,
    paths: [points],
    closed: true,
    tone,
    weight,
    ...(dashed ? { dashed } : {}),
  });
  const marks: Readonly<Record<Position, readonly Mark[]>> = {
    cut: [...fill('solid'), { kind: 'hatch', layer, rect, tone: 'ink-soft' }, edge('ink', 'cut')],
    beyond: [...fill(topTone), edge('ink', 'seen')],
    before: [...fill(topTone, BEFORE_OPACITY), edge('ink-soft', 'seen', true)],
  };
  return { nearM, placeM: farM, marks: marks[position] };
}

/** A piece of equipment or furniture: never cut, its top and its sides in tones of their own. */
export function boxBody(
  view: FlatView,
  layer: Layer,
  box: Box,
  tones: { readonly top: Tone; readonly side: Tone },
): Body {
  const points = cornersOf(rectOnPaper(view, box));
  const [nearM, farM] = depthsOf(view, box);
  return {
    nearM,
    placeM: (nearM + farM) / 2,
    marks: [
      { kind: 'fill', layer, points, tone: hiddenAxis(view) === 2 ? tones.top : tones.side },
      { kind: 'lines', layer, paths: [points], closed: true, tone: 'ink', weight: 'seen' },
    ],
  };
}

/** Depth of the picture's frame, m. */
const SCREEN_M = [0.005, 0.04] as const;

/** Corners of the screen with its frame. */
export function screenBox(project: Project): Box {
  const { leftX, rightX, bottomZ, topZ } = screenRect(project);
  return { min: [leftX, SCREEN_M[0], bottomZ], max: [rightX, SCREEN_M[1], topZ] };
}

const SEAT_WIDTH_M = 0.6;
const HEAD_M = 0.1;
/** Of the head that stands for the ears between two seats, m. */
const BETWEEN_M = 0.07;

/** The two boxes of a seat, its seat and its back, and the place of its ears. */
export interface SeatShape {
  readonly row: string;
  readonly seat: number;
  readonly ears: Point;
  readonly boxes: readonly [Box, Box];
  readonly isReference: boolean;
}

export function seatShapes(project: Project): readonly SeatShape[] {
  const reference = referencePlace(project);
  return seatsOf(project).map((seat): SeatShape => {
    const row = project.seating.rows.find(({ id }) => id === seat.row);
    const floor = row?.riserM ?? 0;
    const [x, y, z] = seat.position;
    const wide = Math.max(0.1, Math.min(SEAT_WIDTH_M, (row?.pitchM ?? 1) - 0.06)) / 2;
    return {
      row: seat.row,
      seat: seat.seat,
      ears: seat.position,
      boxes: [
        { min: [x - wide, y - 0.5, floor], max: [x + wide, y + 0.08, floor + 0.42] },
        {
          min: [x - wide, y + 0.08, floor],
          max: [x + wide, y + 0.24, Math.max(floor + 0.5, z - 0.22)],
        },
      ],
      isReference: reference !== null && isSamePlace(seat, reference),
    };
  });
}

/** Seats with their heads, rings; the one at the reference place is not among them. */
export function seatBodies(view: FlatView, project: Project): readonly Body[] {
  return seatShapes(project).flatMap(({ boxes, ears, isReference }) => [
    ...boxes.map((box) => boxBody(view, 'seats', box, { top: 'raised', side: 'solid' })),
    ...(isReference ? [] : [headBody(view, ears)]),
  ]);
}

function headBody(view: FlatView, ears: Point): Body {
  const atM = depthOf(view, ears);
  return { nearM: atM - HEAD_M, placeM: atM, marks: [head(view, ears, HEAD_M, 'raised')] };
}

const head = (view: FlatView, ears: Point, radiusM: number, fill: Tone): Mark => ({
  kind: 'circle',
  layer: 'seats',
  centre: onPaper(view, ears),
  radiusM,
  fill,
  stroke: { tone: 'ink', weight: 'seen' },
});

/** The head at the reference place, filled: where the rays meet, so that nothing may hide it. */
export function referenceMarks(view: FlatView, project: Project): readonly Mark[] {
  const reference = referencePlace(project);
  if (!reference) return [];
  return [head(view, reference.position, reference.seat === null ? BETWEEN_M : HEAD_M, 'ink')];
}
