/**
 * What a drawing is made of, for every back end alike: lines, fills, hatches, circles, dimensions and
 * lettering, in metres on the paper's plane (right, up), each on a named layer.
 */

import { practice } from '../room/practice/practice';

/** Metres to the right and up on the paper's plane. */
export type PaperPoint = readonly [number, number];

export const LAYERS = [
  'ground',
  'grid',
  'solids',
  'seats',
  'screen',
  'loudspeakers',
  'subwoofers',
  'patches',
  'rays',
  'shell',
  'evidence',
  'dimensions',
  'lettering',
] as const;
export type Layer = (typeof LAYERS)[number];

/** One ground, one ink, one accent, and mixes of the ink for what steps back. */
export const TONES = [
  'raised',
  'ink',
  'ink-soft',
  'hairline',
  'accent',
  'wall',
  'wall-side',
  'floor',
  'solid',
] as const;
export type Tone = (typeof TONES)[number];

/** What is cut is heavier than what is seen; hatches, grids and dimensions are light. */
export type Weight = 'cut' | 'seen' | 'light';

/** Line widths on paper, mm. */
export const WEIGHTS_MM: Readonly<Record<Weight, number>> = practice('line-weights');

interface OnLayer {
  readonly layer: Layer;
}

export interface Look {
  readonly tone: Tone;
  readonly weight: Weight;
  /** What hangs before the cut, is hidden, or is out of its range. */
  readonly dashed?: boolean;
  /** 0 to 1; 1 where it is not given. */
  readonly opacity?: number;
}

export interface Lines extends OnLayer, Look {
  readonly kind: 'lines';
  /** Each a line through its points. */
  readonly paths: readonly (readonly PaperPoint[])[];
  readonly closed?: boolean;
}

export interface Fill extends OnLayer {
  readonly kind: 'fill';
  readonly points: readonly PaperPoint[];
  readonly tone: Tone;
  readonly opacity?: number;
}

export interface Circle extends OnLayer {
  readonly kind: 'circle';
  readonly centre: PaperPoint;
  readonly radiusM: number;
  readonly fill: Tone | null;
  readonly stroke: Look | null;
}

/** Parallel lines over a rectangle: what is cut. */
export interface Hatch extends OnLayer {
  readonly kind: 'hatch';
  readonly rect: PaperRect;
  readonly tone: Tone;
}

/** A measured stretch: extension lines from its ends to a line beside it, with its figure. */
export interface Dimension extends OnLayer {
  readonly kind: 'dimension';
  readonly from: PaperPoint;
  readonly to: PaperPoint;
  /** From the measured ends to the line; along the paper's axes. */
  readonly offset: PaperPoint;
  readonly tone: Tone;
  readonly text: string;
}

/** Lettering around its middle. */
export interface Lettering extends OnLayer {
  readonly kind: 'text';
  readonly middle: PaperPoint;
  readonly text: string;
  /** Size of the letters, and of the place on the paper that is kept for them, m. */
  readonly sizeM: number;
  readonly extentM: PaperPoint;
  readonly tone: Tone;
  readonly bold?: boolean;
  /** Read from the right, along a line that runs up the paper. */
  readonly turned?: boolean;
}

export type Mark = Lines | Fill | Circle | Hatch | Dimension | Lettering;

export interface PaperRect {
  readonly min: PaperPoint;
  readonly max: PaperPoint;
}

export const cornersOf = ({ min, max }: PaperRect): readonly PaperPoint[] => [
  [min[0], min[1]],
  [max[0], min[1]],
  [max[0], max[1]],
  [min[0], max[1]],
];

/** The rectangle around points; null around none. */
export function around(points: readonly PaperPoint[]): PaperRect | null {
  if (points.length === 0) return null;
  let [left, low, right, high] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const [x, y] of points) {
    left = Math.min(left, x);
    right = Math.max(right, x);
    low = Math.min(low, y);
    high = Math.max(high, y);
  }
  return { min: [left, low], max: [right, high] };
}

/** The places that a mark reaches to. */
export function reachOf(mark: Mark): readonly PaperPoint[] {
  switch (mark.kind) {
    case 'lines':
      return mark.paths.flat();
    case 'fill':
      return mark.points;
    case 'circle': {
      const { centre, radiusM } = mark;
      return [
        [centre[0] - radiusM, centre[1] - radiusM],
        [centre[0] + radiusM, centre[1] + radiusM],
      ];
    }
    case 'hatch':
      return [mark.rect.min, mark.rect.max];
    case 'dimension':
      return strokesOfDimension(mark).flat();
    case 'text': {
      const { middle, extentM } = mark;
      return [
        [middle[0] - extentM[0] / 2, middle[1] - extentM[1] / 2],
        [middle[0] + extentM[0] / 2, middle[1] + extentM[1] / 2],
      ];
    }
  }
}

/** How far a dimension line and its extension lines go past each other, m. */
const PAST_M = 0.1;
/** Between the thing and its extension line, m. */
const GAP_M = 0.08;
const TICK_M = 0.09;

/** The lines of a dimension: itself, an extension line at each end, and a tick across each end. */
export function strokesOfDimension({
  from,
  to,
  offset,
}: Pick<Dimension, 'from' | 'to' | 'offset'>): readonly (readonly [PaperPoint, PaperPoint])[] {
  const along = unit([to[0] - from[0], to[1] - from[1]]);
  const reachM = Math.hypot(...offset);
  const out = unit(offset);
  const at = (end: PaperPoint, outM: number, alongM: number): PaperPoint => [
    end[0] + out[0] * outM + along[0] * alongM,
    end[1] + out[1] * outM + along[1] * alongM,
  ];
  return [
    [at(from, reachM, -PAST_M), at(to, reachM, PAST_M)],
    ...[from, to].flatMap((end) => [
      [at(end, Math.min(GAP_M, reachM), 0), at(end, reachM + PAST_M, 0)] as const,
      [at(end, reachM - TICK_M, -TICK_M), at(end, reachM + TICK_M, TICK_M)] as const,
    ]),
  ];
}

function unit([x, y]: PaperPoint): PaperPoint {
  const length = Math.hypot(x, y);
  return length === 0 ? [0, 0] : [x / length, y / length];
}
