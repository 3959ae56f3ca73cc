/** Modes of the room as it will be built, beside those of the plain shell. Slow: in slices. */

import { speedOfSoundMS } from '../air/medium';
import { modeFrequencyHz, type ModeOrder } from '../modes/shell-modes';
import { scaled } from '../quantity/slices';
import type { Project } from '../room/project';
import type { RoomModesRefusal } from '../room-modes/grid';
import { likeShell, shellShareSlices, type ShellShare } from '../room-modes/like-shell';
import {
  roomModes,
  type RoomModes,
  type RoomModesOptions,
  type RoomSpace,
} from '../room-modes/room-modes';

export interface RoomMode {
  readonly frequencyHz: number;
  /** Estimate of the largest relative error, percent. */
  readonly errorPercent: number;
  /** Order of the shell mode that it is most like; null where it is mixed. */
  readonly likeShell: ModeOrder | null;
  /** The shell's modes that it is made of, the largest share first. */
  readonly shares: readonly ShellShare[];
  /** Frequency less that of the shell mode, Hz; null where it is mixed. */
  readonly shiftHz: number | null;
}

export interface NamedModes {
  /** Rising, to the limit that was asked for. */
  readonly modes: readonly RoomMode[];
  /** Estimate of the largest relative error of all, percent. */
  readonly errorPercent: number;
  /** What the pressure anywhere in the room is computed from. */
  readonly shape: RoomModes;
}

export type NamedModesOutcome =
  | { readonly ok: true; readonly built: NamedModes }
  | { readonly ok: false; readonly refusal: RoomModesRefusal };

/** What the modes of a project depend on, and nothing else. */
export function spaceOf({ room, air }: Pick<Project, 'room' | 'air'>): RoomSpace {
  const { width, length, height } = room.size;
  return {
    size: { width, length, height },
    solids: room.solids.map(({ min, max }) => ({ min, max })),
    speedMS: speedOfSoundMS(air.temperatureC),
  };
}

/** Solve the free space and name its modes. Yields the share done every few milliseconds. */
export function* namedModes(
  space: RoomSpace,
  options: RoomModesOptions = {},
): Generator<number, NamedModesOutcome> {
  const outcome = yield* scaled(roomModes(space, options), 0, 0.97);
  if (!outcome.ok) return outcome;
  const shape = outcome.modes;
  const shares = yield* scaled(shellShareSlices(shape, space.size), 0.97, 1);
  const names = likeShell(shares);
  const modes = Array.from(shape.frequenciesHz, (frequencyHz, n): RoomMode => {
    const order = names[n] ?? null;
    return {
      frequencyHz,
      errorPercent: shape.errorsPercent[n] ?? 0,
      likeShell: order,
      shares: shares[n] ?? [],
      shiftHz: order ? frequencyHz - modeFrequencyHz(order, space.size, space.speedMS) : null,
    };
  });
  return { ok: true, built: { modes, errorPercent: shape.errorPercent, shape } };
}

/** Why there are no such modes, and what to do, as a sentence. */
export function refusalSentence(refusal: RoomModesRefusal): string {
  switch (refusal.reason) {
    case 'no-air':
      return 'The fittings fill the whole shell: no room is left to compute.';
    case 'separate-parts':
      return `The fittings cut the room into ${refusal.parts} parts. Open a passage between them, or leave the part that nobody sits in out of the shell.`;
    case 'too-large':
      if (refusal.because === 'size') {
        return `The room is too large to compute its modes as built (${refusal.count.toLocaleString('en')} ${refusal.what}, at most ${refusal.most.toLocaleString('en')}), whatever stands in it. Choose a lower limit if there is one, and go by the modes of the plain shell.`;
      }
      return `The fittings are too many or too crooked to compute the modes as built (${refusal.count.toLocaleString('en')} ${refusal.what}, at most ${refusal.most.toLocaleString('en')}). Draw neighbours as one box and line their faces up.`;
    case 'not-converged':
      return 'The modes as built did not settle. Move one fitting by a step and try again.';
  }
}
