/** The modes that pressure is summed from, with their damping: of the plain shell, or of the room as built. */

import { speedOfSoundMS } from '../air/medium';
import type { ModeOrder } from '../modes/shell-modes';
import { roomModesField, shellField, type ModalField } from '../response/field';
import type { DrivenSource } from '../response/drive';
import { DEFAULT_DECAY_S, type Damping } from '../response/path';
import type { Subwoofer } from '../room/project';
import { freeSpace } from '../room/space';
import type { RoomModes } from '../room-modes/room-modes';
import { builtDamping, shellDamping } from './field-damping';
import type { Sounding } from './modal-room';

/** The plain shell's modes are listed to here for the pressure, Hz. */
export const SHELL_LIST_HZ = 320;

export interface RoomField {
  readonly field: ModalField;
  /** Of the plain shell's modes, in the field's order; null of the room as built. */
  readonly orders: readonly ModeOrder[] | null;
  readonly damping: Damping;
  /** Modes whose decay is a stand-in, since a face has no figure. */
  readonly defaulted: number;
}

/** What to say where `defaulted` modes have the stand-in decay. */
export const assumedText = (defaulted: number): string =>
  `${defaulted} modes with an assumed ${DEFAULT_DECAY_S} s, as a face has no figures`;

/** The field of the plain shell to `limitHz`, or of the room as built where its modes are given. */
export function roomField(
  project: Sounding,
  shape: RoomModes | null,
  limitHz = SHELL_LIST_HZ,
): RoomField {
  const space = freeSpace(project.room);
  if (shape) {
    return { field: roomModesField(shape), orders: null, ...builtDamping(project, space, shape) };
  }
  const speedMS = speedOfSoundMS(project.air.temperatureC);
  const field = shellField(project.room.size, speedMS, limitHz);
  return { field, orders: field.orders, ...shellDamping(project, space, field) };
}

/** A subwoofer as a driven source. */
export function drivenSource(sub: Subwoofer): DrivenSource {
  const { position, delayMs, levelDb, inverted } = sub;
  return {
    at: position,
    drive: { delayMs: delayMs ?? 0, levelDb: levelDb ?? 0, inverted: inverted ?? false },
  };
}
