/** The values and lines of a painting. Computed by core; here it is only asked for what is drawn. */

import type { RoomField } from '../../core/analysis/room-field';
import { contour, type Stretch } from '../../core/response/contour';
import type { DrivenSource } from '../../core/response/drive';
import { fieldWeights, levelOver } from '../../core/response/pressure-plane';
import type { PressurePlane } from './planes';

/** Levels are painted in steps of this, dB, down from the loudest. */
export const BAND_DB = 3;
export const BANDS = 8;

export interface PaintedPlane {
  readonly plane: PressurePlane;
  /**
   * Of a mode: pressure over its largest, -1 to 1. Of a frequency: level below the loudest, dB, 0 and
   * down. NaN outside the free space.
   */
  readonly values: Float32Array;
  /** Nodal lines of a mode; lines of equal level of a frequency. */
  readonly lines: readonly Stretch[];
}

export interface Painting {
  readonly kind: 'mode' | 'frequency';
  readonly planes: readonly PaintedPlane[];
}

const largest = (list: readonly Float32Array[], of: (value: number) => number): number => {
  let most = -Infinity;
  for (const values of list) for (const value of values) if (of(value) > most) most = of(value);
  return most;
};

/** One mode of the field on every plane. */
export function paintMode(
  { field }: Pick<RoomField, 'field'>,
  mode: number,
  planes: readonly PressurePlane[],
): Painting {
  const values = planes.map(({ axis, atM, us, vs }) =>
    field.planeMap(axis, atM, us, vs).shape(mode),
  );
  const most = largest(values, Math.abs) || 1;
  return {
    kind: 'mode',
    planes: planes.map((plane, n) => {
      const over = (values[n] ?? new Float32Array()).map((value) => value / most);
      return { plane, values: over, lines: contour(over, plane.us, plane.vs, 0) };
    }),
  };
}

/** What the sources make at one frequency on every plane; null where none is in the free space. */
export function paintFrequency(
  { field, damping }: RoomField,
  sources: readonly DrivenSource[],
  frequencyHz: number,
  planes: readonly PressurePlane[],
): Painting | null {
  if (!sources.some((source) => field.shapeAt(source.at))) return null;
  const weights = fieldWeights(field, sources, frequencyHz, damping);
  const levels = planes.map(({ axis, atM, us, vs }) =>
    levelOver(field.planeMap(axis, atM, us, vs), weights),
  );
  const most = largest(levels, (level) => level);
  return {
    kind: 'frequency',
    planes: planes.map((plane, n) => {
      const below = (levels[n] ?? new Float32Array()).map((level) => level - most);
      const lines = Array.from({ length: BANDS }, (_, band) =>
        contour(below, plane.us, plane.vs, -BAND_DB * (band + 1)),
      ).flat();
      return { plane, values: below, lines };
    }),
  };
}
