/** What the subwoofers make at every seat, 20 to 200 Hz: of the plain shell, or of the room as built. */

import { drivenLevels, type Driven } from '../bass/measure';
import { presentSet } from '../bass/as-subwoofers';
import { bandGrid } from '../bass/transfer';
import { scaled } from '../quantity/slices';
import { seatSpread, type SeatSpread } from '../response/seats';
import type { Project } from '../room/project';
import { seatsOf } from '../room/seats';
import { isInTheOpen } from '../room/space';
import type { ShapeModes } from '../shape-modes/shape-modes';
import { roomTransfer } from './room-transfer';

export const RESPONSE_RANGE_HZ = [20, 200] as const;
/** Points of the curve per octave. */
const PER_OCTAVE = 48;

/** Level at one seat, dB re one source in the free field at 1 m; null where nothing is heard there. */
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
  /** Over the seats that hear something; null without any. */
  readonly spread: SeatSpread | null;
  /** Modes whose decay is a stand-in, since a face has no figure. */
  readonly defaulted: number;
  /** Subwoofers that are not in the free space and so were left out. */
  readonly left: readonly string[];
}

/** Responses of all subwoofers together at every seat. Yields the share done. */
export function* seatResponses(
  project: Project,
  shape: ShapeModes | null,
): Generator<number, SeatResponses> {
  const frequenciesHz = bandGrid(RESPONSE_RANGE_HZ, PER_OCTAVE);
  const { room } = project;
  const subs = project.speakers.subwoofers.filter((sub) => isInTheOpen(sub.position, room));
  const seats = seatsOf(project);
  const heard = subs.length > 0 ? seats.filter((seat) => isInTheOpen(seat.position, room)) : [];
  const { outcome, defaulted } = yield* scaled(
    roomTransfer(
      project,
      shape,
      subs.map((sub) => sub.position),
      heard.map((seat) => seat.position),
      frequenciesHz,
    ),
    0,
    0.95,
  );
  const set: readonly Driven[] = presentSet(subs, 0);
  const levels = outcome.ok ? drivenLevels(outcome.transfer, set) : [];
  return {
    frequenciesHz,
    of: shape ? 'built' : 'shell',
    seats: seats.map((seat) => ({
      row: seat.row,
      seat: seat.seat,
      levelDb: levels[heard.indexOf(seat)] ?? null,
    })),
    spread: seatSpread(levels),
    defaulted,
    left: project.speakers.subwoofers.filter((sub) => !subs.includes(sub)).map((sub) => sub.id),
  };
}
