import { finish } from '../../../../core/quantity/slices';
import type { ShellSize } from '../../../../core/room/project';
import type { Box } from '../../../../core/room-modes/grid';
import {
  roomModes,
  type RoomModes,
  type RoomModesOptions,
} from '../../../../core/room-modes/room-modes';

/** Speed of sound that the tests of shaped rooms share, m/s. */
export const SPEED_MS = 343.2;

/** The modes of a room that has some; throws on a refusal. */
export function solved(
  size: ShellSize,
  solids: readonly Box[],
  options: RoomModesOptions = {},
  speedMS = SPEED_MS,
): RoomModes {
  const outcome = finish(roomModes({ size, solids, speedMS }, options));
  if (!outcome.ok) throw new Error(`Refused: ${JSON.stringify(outcome.refusal)}`);
  return outcome.modes;
}

/** Shell given as [x, y, z]. */
export const sizeOf = ([width = 1, length = 1, height = 1]: readonly number[]): ShellSize => ({
  width,
  length,
  height,
});
