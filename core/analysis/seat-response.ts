/** What the subwoofers make at every seat, 20 to 200 Hz: of the plain shell, or of the room as built. */

import { speedOfSoundMS } from '../air/medium';
import { scaled } from '../quantity/slices';
import { shapedField, shellField, type ModalField } from '../response/field';
import {
  levelDb,
  pathResponse,
  together,
  type Damping,
  type DrivenSource,
  type Tail,
} from '../response/path';
import { seatSpread, type SeatSpread } from '../response/seats';
import { shapedTails, tailOf } from '../response/shaped-tail';
import { shellTail } from '../response/shell-tail';
import type { Project, Subwoofer } from '../room/project';
import { seatsOf } from '../room/seats';
import { freeSpace } from '../room/space';
import type { ShapeModes } from '../shape-modes/shape-modes';
import { builtDamping, shellDamping } from './damping';

export const RESPONSE_RANGE_HZ = [20, 200] as const;
/** Points of the curve per octave. */
const PER_OCTAVE = 48;
/** The plain shell's list ends here, Hz: its tail beyond is smooth over the range. */
const SHELL_LIST_HZ = 300;

/** Level at one seat, dB re one source in the free field at 1 m; null where the seat is in no free space. */
export interface SeatResponse {
  readonly row: string;
  /** From 1. */
  readonly seat: number;
  readonly levelDb: Float64Array | null;
}

export interface SeatResponses {
  readonly frequenciesHz: Float64Array;
  readonly of: 'shell' | 'built';
  readonly seats: readonly SeatResponse[];
  /** Over the seats in the free space; null without any. */
  readonly spread: SeatSpread | null;
  /** Decay of the field's modes, for those who name the ones behind a dip. */
  readonly damping: Damping;
  /** Modes whose decay is a stand-in, since a face has no figure. */
  readonly defaulted: number;
  /** Subwoofers that are not in the free space and so were left out. */
  readonly left: readonly string[];
}

/** A subwoofer as a driven source. */
export function drivenSource({
  position,
  delayMs,
  levelDb: gainDb,
  inverted,
}: Subwoofer): DrivenSource {
  return {
    at: position,
    drive: { delayMs: delayMs ?? 0, gainDb: gainDb ?? 0, inverted: inverted ?? false },
  };
}

/** The modes that pressure is summed from, with their damping. */
export interface RoomField {
  readonly field: ModalField;
  readonly damping: Damping;
  readonly defaulted: number;
}

/** The field of the plain shell, or of the room as built where its modes are given. */
export function roomField(project: Project, shape: ShapeModes | null): RoomField {
  const space = freeSpace(project.room);
  if (shape) return { field: shapedField(shape), ...builtDamping(project, space, shape) };
  const speedMS = speedOfSoundMS(project.air.temperatureC);
  const field = shellField(project.room.size, speedMS, SHELL_LIST_HZ);
  return { field, ...shellDamping(project, space, field) };
}

/** Logarithmic from 20 to 200 Hz, both included. */
export function responseFrequencies(): Float64Array {
  const [low, high] = RESPONSE_RANGE_HZ;
  const steps = Math.round(PER_OCTAVE * Math.log2(high / low));
  return Float64Array.from({ length: steps + 1 }, (_, n) => low * (high / low) ** (n / steps));
}

/** Responses of all subwoofers together at every seat. Yields the share done. */
export function* seatResponses(
  project: Project,
  shape: ShapeModes | null,
): Generator<number, SeatResponses> {
  const { field, damping, defaulted } = roomField(project, shape);
  const frequenciesHz = responseFrequencies();
  const { subwoofers } = project.speakers;
  const seats = seatsOf(project);
  const tails = yield* tailsOf(project, shape, field);
  const inField = subwoofers.map((sub) => field.shapeAt(sub.position) !== null);
  const responses: SeatResponse[] = [];
  for (const [r, { row, seat, position }] of seats.entries()) {
    const paths = subwoofers.flatMap((sub, s) => {
      const tail = tails[s]?.[r] ?? undefined;
      const path = pathResponse(field, sub.position, position, frequenciesHz, damping, tail);
      const { drive } = drivenSource(sub);
      return path ? [{ path, ...(drive ? { drive } : {}) }] : [];
    });
    const sum = together(paths);
    responses.push({ row, seat, levelDb: sum ? levelDb(sum) : null });
    yield 0.5 + (0.5 * (r + 1)) / seats.length;
  }
  return {
    frequenciesHz,
    of: shape ? 'built' : 'shell',
    seats: responses,
    spread: seatSpread(responses.flatMap((response) => response.levelDb ?? [])),
    damping,
    defaulted,
    left: subwoofers.flatMap((sub, s) => (inField[s] ? [] : [sub.id])),
  };
}

/** What lies above the listed modes, `[subwoofer][seat]`; null where it is not to be had. */
function* tailsOf(
  project: Project,
  shape: ShapeModes | null,
  field: ModalField,
): Generator<number, readonly (readonly (Tail | null)[])[]> {
  const sources = project.speakers.subwoofers.map((sub) => sub.position);
  const receivers = seatsOf(project).map((seat) => seat.position);
  if (shape) {
    const standIns = yield* scaled(shapedTails(shape, sources, receivers), 0, 0.5);
    return standIns.map((row) => row.map((one) => (one ? tailOf(one) : null)));
  }
  const { size } = project.room;
  return sources.map((source) =>
    receivers.map((receiver) =>
      field.shapeAt(source) && field.shapeAt(receiver)
        ? shellTail(size, field.speedMS, SHELL_LIST_HZ, source, receiver)
        : null,
    ),
  );
}
