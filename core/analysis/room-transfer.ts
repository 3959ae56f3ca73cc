/** What seats hear of places over frequency: one way for the response and for the search of places. */

import {
  roomModesTransfer,
  shellLimitHz,
  shellTransfer,
  type TransferOutcome,
} from '../bass/transfer';
import type { Point, Project } from '../room/project';
import type { RoomModes } from '../room-modes/room-modes';
import { roomField, type RoomField } from './room-field';

export interface RoomTransfer extends RoomField {
  readonly outcome: TransferOutcome;
}

/** Of the plain shell, or of the room as built where its modes are given. Yields the share done. */
export function* roomTransfer(
  project: Project,
  shape: RoomModes | null,
  places: readonly Point[],
  seats: readonly Point[],
  frequenciesHz: Float64Array,
): Generator<number, RoomTransfer> {
  const whole = roomField(project, shape, shellLimitHz(frequenciesHz));
  const options = { frequenciesHz, damping: whole.damping };
  const { size } = project.room;
  const outcome = shape
    ? yield* roomModesTransfer(shape, places, seats, options)
    : yield* shellTransfer(size, whole.field.speedMS, places, seats, options);
  return { ...whole, outcome };
}
