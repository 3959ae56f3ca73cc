/** What the subwoofers make at every seat, 20 to 200 Hz: of the plain shell, or of the room as built. */

import { drivenLevels, type Driven } from '../bass/measure';
import { presentSet } from '../bass/as-subwoofers';
import { seatFigures, type SeatFigures } from '../bass/seat-figures';
import { bandGrid, DEFAULT_BAND_HZ } from '../bass/transfer';
import { scaled } from '../quantity/slices';
import { levelSpread, type LevelSpread } from '../response/level-spread';
import type { Point, Project } from '../room/project';
import { listeningPlaces, referencePlace, type ListeningPlace } from '../room/seats';
import { isInTheOpen } from '../room/space';
import type { RoomModes } from '../room-modes/room-modes';
import { roomTransfer } from './room-transfer';

export const RESPONSE_RANGE_HZ = [20, 200] as const;
/** Points of the curve per octave: twice those of the search for places. */
const PER_OCTAVE = 48;

/** Level at one seat, dB re one source in the free field at 1 m; null where nothing is heard there. */
export interface SeatResponse {
  readonly row: string;
  /** From 1; null in the middle of the row, between two seats. */
  readonly seat: number | null;
  readonly levelDb: Float64Array | null;
}

export interface SeatResponses {
  readonly frequenciesHz: Float64Array;
  readonly of: 'shell' | 'built';
  /** Every seat, the reference place among them where that is none of the seats. */
  readonly seats: readonly SeatResponse[];
  /** Over the seats that hear something; null without any. A place without a seat does not count. */
  readonly spread: LevelSpread | null;
  /** Over the band and the frequencies of the search for places, so that both agree; null likewise. */
  readonly figures: SeatFigures | null;
  /** Modes whose decay is a stand-in, since a face has no figure. */
  readonly defaulted: number;
  /** Subwoofers that are not in the free space and so were left out. */
  readonly left: readonly string[];
}

/** Responses of all subwoofers together at every seat. Yields the share done. */
export function* seatResponses(
  project: Project,
  shape: RoomModes | null,
): Generator<number, SeatResponses> {
  const { frequenciesHz, judged } = responseGrid();
  const { room } = project;
  const subs = project.speakers.subwoofers.filter((sub) => isInTheOpen(sub.position, room));
  const seats = listeningPlaces(project);
  const heard = subs.length > 0 ? seats.filter((seat) => isInTheOpen(seat.position, room)) : [];
  const ears = withReference(project, heard);
  const { outcome, defaulted } = yield* scaled(
    roomTransfer(
      project,
      shape,
      subs.map((sub) => sub.position),
      ears.places,
      frequenciesHz,
    ),
    0,
    0.95,
  );
  const set: readonly Driven[] = presentSet(subs, 0);
  const all = outcome.ok ? drivenLevels(outcome.transfer, set) : [];
  const levels = all.slice(0, heard.length);
  const ofSeats = levels.filter((_, i) => heard[i]?.seat !== null);
  const inBand = (level: Float64Array): Float64Array =>
    Float64Array.from(judged, (f) => level[f] ?? 0);
  const atReference = all[ears.reference];
  return {
    frequenciesHz,
    of: shape ? 'built' : 'shell',
    seats: seats.map((seat) => ({
      row: seat.row,
      seat: seat.seat,
      levelDb: levels[heard.indexOf(seat)] ?? null,
    })),
    spread: levelSpread(ofSeats),
    figures: seatFigures(
      inBand(frequenciesHz),
      ofSeats.map(inBand),
      atReference ? inBand(atReference) : null,
    ),
    defaulted,
    left: project.speakers.subwoofers.filter((sub) => !subs.includes(sub)).map((sub) => sub.id),
  };
}

/**
 * The frequencies of the curves, 20 to 200 Hz, and the numbers of those that the search for places
 * uses: every second one up to 120 Hz.
 */
function responseGrid(): {
  readonly frequenciesHz: Float64Array;
  readonly judged: readonly number[];
} {
  const [lowHz, highHz] = DEFAULT_BAND_HZ;
  const low = bandGrid([lowHz, highHz], PER_OCTAVE);
  const high = bandGrid([highHz, RESPONSE_RANGE_HZ[1]], PER_OCTAVE);
  const frequenciesHz = Float64Array.of(...low, ...high.slice(1));
  return { frequenciesHz, judged: [...low.keys()].filter((f) => f % 2 === 0) };
}

/** The ears of `seats`, and those of the reference place where it is none of them; its number, or -1. */
export function withReference(
  project: Project,
  seats: readonly ListeningPlace[],
): { readonly places: readonly Point[]; readonly reference: number } {
  const places = seats.map((seat) => seat.position);
  const at = referencePlace(project)?.position;
  if (!at || seats.length === 0 || !isInTheOpen(at, project.room)) return { places, reference: -1 };
  const known = places.findIndex((place) => place.every((value, n) => value === at[n]));
  return known >= 0
    ? { places, reference: known }
    : { places: [...places, at], reference: places.length };
}
