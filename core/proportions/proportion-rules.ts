/** Rules that look only at the proportions of the shell. */

import { farCorner } from '../room/point';
import type { ShellSize } from '../room/project';
import { practice } from '../room/practice/practice';

/** Proportions to the height: the longer floor side counts as the length, whichever way the screen hangs. */
export interface Proportions {
  /** Shorter floor side over height. */
  readonly width: number;
  /** Longer floor side over height. */
  readonly length: number;
}

export function proportionsOf({ width, length, height }: ShellSize): Proportions {
  return { width: Math.min(width, length) / height, length: Math.max(width, length) / height };
}

export const INEQUALITY_SOURCE =
  'ITU-R BS.1116-3, 8.2 and EBU Tech 3276 (after Walker, BBC RD 1993/8; clause from memory)';

/** Proportions of two sides this near to a whole number are to be avoided. */
export const WHOLE_RATIO_SHARE = 0.05;

/**
 * Margin of 1.1 W/H <= L/H <= 4.5 W/H - 4 with W and L under 3 H: the smallest distance to any of its
 * four borders; negative outside. Valid for reference listening rooms.
 */
export function inequalityMargin({ width, length }: Proportions): number {
  return Math.min(length - 1.1 * width, 4.5 * width - 4 - length, 3 - length, 3 - width);
}

/** A ratio this near to a border lies on it: a tenth of a millimetre in two metres. */
const ON_BORDER = 5e-5;

/** True where all four hold: on the first two borders they do, at 3 H of length or width they do not. */
export function keepsInequality(proportions: Proportions): boolean {
  const { width, length } = proportions;
  return (
    inequalityMargin(proportions) >= -ON_BORDER && length < 3 - ON_BORDER && width < 3 - ON_BORDER
  );
}

/** Smallest distance of a ratio of two sides to a whole number from 1 up, as a share of that number. */
export function wholeRatioDistance(size: ShellSize): number {
  const sides = [...farCorner(size)].sort((a, b) => a - b);
  const [low = 1, middle = 1, high = 1] = sides;
  const off = [middle / low, high / low, high / middle].map((ratio) => {
    const whole = Math.max(1, Math.round(ratio));
    return Math.abs(ratio - whole) / whole;
  });
  return Math.min(...off);
}

export const AREA_SOURCE =
  'after the chart of Bolt, JASA 18 (1946) 130; outline redrawn from memory, low confidence';

/** Rough outline of the chart's area on (W/H, L/H); not Bolt's own coordinates. */
export const AREA_OUTLINE: readonly (readonly [number, number])[] = [
  [1.1, 1.25],
  [1.25, 1.35],
  [1.45, 1.55],
  [1.6, 1.85],
  [1.65, 2.2],
  [1.6, 2.5],
  [1.45, 2.55],
  [1.3, 2.15],
  [1.2, 1.8],
  [1.12, 1.5],
];

/** True where the proportions lie within the outline (even-odd rule; on an edge either way). */
export function isInArea({ width, length }: Proportions): boolean {
  let inside = false;
  AREA_OUTLINE.forEach(([x1, y1], i) => {
    const [x0, y0] = AREA_OUTLINE.at(i - 1) ?? [0, 0];
    const crosses = y1 > length !== y0 > length;
    if (crosses && width < ((x0 - x1) * (length - y1)) / (y0 - y1) + x1) inside = !inside;
  });
  return inside;
}

export interface GoodRatio extends Proportions {
  readonly name: string;
  readonly source: string;
}

const LOUDEN = 'Louden, Acustica 24 (1971) 101';
const SEPMEYER = 'Sepmeyer, JASA 37 (1965) 413';
const BOLT = 'Bolt, JASA 18 (1946) 130';

/** Published good ratios, W/H and L/H. Of Louden's ranked list only the first three are sure. */
export const GOOD_RATIOS: readonly GoodRatio[] = [
  { name: 'Sepmeyer A', width: 1.14, length: 1.39, source: SEPMEYER },
  { name: 'Sepmeyer B', width: 1.28, length: 1.54, source: SEPMEYER },
  { name: 'Sepmeyer C', width: 1.6, length: 2.33, source: SEPMEYER },
  { name: 'Louden 1', width: 1.4, length: 1.9, source: LOUDEN },
  { name: 'Louden 2', width: 1.3, length: 1.9, source: LOUDEN },
  { name: 'Louden 3', width: 1.5, length: 2.1, source: LOUDEN },
  { name: 'Bolt 2:3:5', width: 1.5, length: 2.5, source: BOLT },
  { name: 'Bolt cube roots', width: Math.cbrt(2), length: Math.cbrt(4), source: BOLT },
  { name: 'Rindel C', width: 1.48, length: 2.12, source: 'Rindel 2021 (25 to 300 m3)' },
];

/** A ratio within this share of the present one is as good as met. */
export const RATIO_REACH = practice('ratio-reach');

/** The nearest published ratio and how far it is, as the larger of the two relative differences. */
export function nearestGoodRatio(present: Proportions): {
  readonly ratio: GoodRatio;
  readonly distance: number;
} {
  const measured = GOOD_RATIOS.map((ratio) => ({
    ratio,
    distance: Math.max(
      Math.abs(present.width / ratio.width - 1),
      Math.abs(present.length / ratio.length - 1),
    ),
  }));
  return measured.reduce((best, next) => (next.distance < best.distance ? next : best));
}
