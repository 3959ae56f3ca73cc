/**
 * Elements: each box of air is one polynomial box, or several where it is long against the wave.
 * Along an axis all boxes between the same two planes share widths and degree, so the points form a
 * rectilinear lattice of which the solids cut out a part.
 */

import type { AirGrid } from './grid';
import { gllRule } from './gll';

/** How one axis is divided. */
export interface ElementAxis {
  /** Ends of the elements, rising, m. */
  readonly ends: Float64Array;
  readonly degrees: Int32Array;
  /** Number of each element's first lattice point. */
  readonly firsts: Int32Array;
  /** Coordinates of the lattice points, m. */
  readonly points: Float64Array;
}

export interface Elements {
  readonly axes: readonly [ElementAxis, ElementAxis, ElementAxis];
  /** 1 where an element is air; the last axis runs fastest. */
  readonly air: Uint8Array;
}

const LOWEST_DEGREE = 2;
const HIGHEST_DEGREE = 6;
const MOST_PARTS = 24;

/**
 * Largest wave number times width, by degree from 2, for which no standing wave in a row of equal
 * elements is off by more than the share named, whatever its phase against the elements. Read off
 * the eigenvalues of rows of 1 to 12 elements with free and held ends. (The dispersion formula for
 * waves that travel is kinder: it misses that at whole half waves per element a pattern can be even
 * where the top polynomial is odd, and be served by one degree less. Degree 5 of the fine row is held
 * at 6 instead of 6.25, clear of one whole wave per element: a room with a closet showed 0.26 % there.)
 */
const REACH = {
  /** Within 0.15 %. */
  fine: [1.42, 2.97, 4.86, 6, 8.53],
  /** Within 1 %. */
  coarse: [2.19, 4.3, 5.9, 8.21, 9.38],
} as const;
export type Quality = keyof typeof REACH;

export interface Division {
  readonly parts: number;
  readonly degree: number;
}

/** Equal parts and degree of an interval, with the fewest points. */
export function division(widthM: number, waveNumber: number, quality: Quality): Division {
  let best = { parts: MOST_PARTS, degree: HIGHEST_DEGREE };
  for (let parts = 1; parts <= MOST_PARTS; parts++) {
    for (let degree = LOWEST_DEGREE; degree <= HIGHEST_DEGREE; degree++) {
      if ((waveNumber * widthM) / parts > REACH[quality][degree - LOWEST_DEGREE]!) continue;
      if (parts * degree <= best.parts * best.degree) best = { parts, degree };
      break;
    }
  }
  return best;
}

function divideAxis(planes: Float64Array, divisions: readonly Division[]) {
  const ends = [0];
  const degrees: number[] = [];
  const firsts: number[] = [];
  const points = [0];
  const owner: number[] = [];
  for (let i = 0; i + 1 < planes.length; i++) {
    const [low, high] = [planes[i]!, planes[i + 1]!];
    const { parts, degree } = divisions[i] ?? { parts: 1, degree: 1 };
    for (let part = 0; part < parts; part++) {
      const from = low + ((high - low) * part) / parts;
      const to = part === parts - 1 ? high : low + ((high - low) * (part + 1)) / parts;
      firsts.push(points.length - 1);
      degrees.push(degree);
      owner.push(i);
      ends.push(to);
      gllRule(degree).points.forEach((x, a) => {
        if (a > 0) points.push(a === degree ? to : from + ((to - from) * (x + 1)) / 2);
      });
    }
  }
  const axis: ElementAxis = {
    ends: Float64Array.from(ends),
    degrees: Int32Array.from(degrees),
    firsts: Int32Array.from(firsts),
    points: Float64Array.from(points),
  };
  return { axis, owner };
}

/** Divide the grid for waves up to `waveNumber` (1/m) in the given quality. */
export function elementsIn(grid: AirGrid, waveNumber: number, quality: Quality): Elements {
  const divisions = grid.planes.map((planes) =>
    Array.from(planes.subarray(1), (high, i) => division(high - planes[i]!, waveNumber, quality)),
  );
  return elementsWith(grid, divisions);
}

/** Divide the grid as told, axis by axis and interval by interval. */
export function elementsWith(grid: AirGrid, divisions: readonly (readonly Division[])[]): Elements {
  const [x, y, z] = grid.planes;
  const along = [
    divideAxis(x, divisions[0] ?? []),
    divideAxis(y, divisions[1] ?? []),
    divideAxis(z, divisions[2] ?? []),
  ] as const;
  const counts = [y.length - 1, z.length - 1] as const;
  const air = new Uint8Array(along[0].owner.length * along[1].owner.length * along[2].owner.length);
  let at = 0;
  for (const i of along[0].owner)
    for (const j of along[1].owner)
      for (const k of along[2].owner) {
        air[at++] = grid.air[(i * counts[0] + j) * counts[1] + k]!;
      }
  return { axes: [along[0].axis, along[1].axis, along[2].axis], air };
}

/** How many lattice points there are, those within solids included. */
export function latticeSize(elements: Elements): number {
  return elements.axes.reduce((product, axis) => product * axis.points.length, 1);
}
