import { finish } from '../../../../core/quantity/slices';
import type { ShellSize } from '../../../../core/room/project';
import type { Box } from '../../../../core/shape-modes/grid';
import {
  shapeModes,
  type ShapeModes,
  type ShapeOptions,
} from '../../../../core/shape-modes/shape-modes';

/** Speed of sound that the tests of shaped rooms share, m/s. */
export const SPEED_MS = 343.2;

/** The modes of a room that has some; throws on a refusal. */
export function solved(
  size: ShellSize,
  solids: readonly Box[],
  options: ShapeOptions = {},
  speedMS = SPEED_MS,
): ShapeModes {
  const outcome = finish(shapeModes({ size, solids, speedMS }, options));
  if (!outcome.ok) throw new Error(`Refused: ${JSON.stringify(outcome.refusal)}`);
  return outcome.modes;
}

/** Shell given as [x, y, z]. */
export const sizeOf = ([width = 1, length = 1, height = 1]: readonly number[]): ShellSize => ({
  width,
  length,
  height,
});
