/** Unevenness over the plane of proportions, width over height against length over height. */

import type { ShellSize } from '../room/project';
import { unevennessHz, unevennessSpace } from './unevenness';

/** What the map covers: proportions to the height of floor sides along x and y. */
export interface MapRange {
  readonly width: readonly [number, number];
  readonly length: readonly [number, number];
}

export const MAP_RANGE: MapRange = { width: [1, 2.6], length: [1.2, 3.4] };

export interface ProportionMap {
  readonly range: MapRange;
  readonly columns: number;
  readonly rows: number;
  readonly heightM: number;
  /** Unevenness in Hz, row by row from the least length, columns from the least width. */
  readonly values: Float32Array;
}

/**
 * The map at a ceiling height of `heightM`, cell by cell at its middle. Yields the share done after
 * each row.
 */
export function* proportionMap(
  heightM: ShellSize['height'],
  speedMS: number,
  columns: number,
  rows: number,
  range: MapRange = MAP_RANGE,
): Generator<number, ProportionMap> {
  const values = new Float32Array(columns * rows);
  const space = unevennessSpace();
  const at = ([low, high]: readonly [number, number], i: number, count: number): number =>
    low + ((i + 0.5) / count) * (high - low);
  for (let row = 0; row < rows; row++) {
    const length = at(range.length, row, rows) * heightM;
    for (let column = 0; column < columns; column++) {
      const width = at(range.width, column, columns) * heightM;
      values[row * columns + column] = unevennessHz(width, length, heightM, speedMS, space);
    }
    yield (row + 1) / rows;
  }
  return { range, columns, rows, heightM, values };
}
