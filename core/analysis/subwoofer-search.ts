/** Better places for the subwoofers of a project: candidates along its walls, tried at its seats. */

import { presentSet } from '../bass/as-subwoofers';
import { DEFAULT_DRIVES } from '../bass/drives';
import { drivenLevels } from '../bass/measure';
import { subwooferPlaces, type Places } from '../bass/places';
import { searchSubwoofers, type SubwooferSearch } from '../bass/search';
import { seatFigures, type SeatFigures } from '../bass/seat-figures';
import { bandGrid, DEFAULT_PER_OCTAVE, seatsOnly, type Band } from '../bass/transfer';
import { scaled } from '../quantity/slices';
import type { Point, Project } from '../room/project';
import { seatsOf } from '../room/seats';
import { isInTheOpen } from '../room/space';
import type { RoomModes } from '../room-modes/room-modes';
import { overlapM } from '../scene/box';
import { boxOfSize } from '../scene/subwoofer-box';
import { roomTransfer } from './room-transfer';
import { withReference } from './seat-response';

export interface PlaceSearchOptions {
  readonly count: 1 | 2 | 4;
  /** Between neighbouring candidates along a wall, m. */
  readonly stepM: number;
  /** Width, height and depth of the box, m. */
  readonly boxM: Point;
  /** Also try a delay and a level for each. */
  readonly drives: boolean;
  readonly bandHz: Band;
  /** A first answer only. */
  readonly quick?: boolean;
}

export interface PlaceSearch {
  readonly places: Places;
  /** Null where no place is allowed, or nobody sits in the free space. */
  readonly search: SubwooferSearch | null;
  /** What the first set would make at the seats, over the band that was asked for; null without one. */
  readonly best: SeatFigures | null;
  readonly of: 'shell' | 'built';
  /** Modes whose decay is a stand-in, since a face has no figure. */
  readonly defaulted: number;
}

/** Search. Yields the share done. */
export function* searchPlaces(
  project: Project,
  shape: RoomModes | null,
  options: PlaceSearchOptions,
): Generator<number, PlaceSearch> {
  const of = shape ? 'built' : 'shell';
  const { room, speakers } = project;
  const places = subwooferPlaces(project, options);
  const seats = seatsOf(project).filter((seat) => isInTheOpen(seat.position, room));
  if (places.allowed.length === 0 || seats.length === 0)
    return { places, search: null, best: null, of, defaulted: 0 };
  const now = speakers.subwoofers.filter((sub) => isInTheOpen(sub.position, room));
  const ears = withReference(project, seats);
  const { outcome, defaulted } = yield* scaled(
    roomTransfer(
      project,
      shape,
      [...places.allowed, ...now.map((sub) => sub.position)],
      ears.places,
      bandGrid(options.bandHz, DEFAULT_PER_OCTAVE),
    ),
    0,
    0.2,
  );
  if (!outcome.ok) return { places, search: null, best: null, of, defaulted };
  const { transfer } = outcome;
  const boxes = places.allowed.map((place) => boxOfSize(project, place, options.boxM));
  const search = yield* scaled(
    searchSubwoofers(seatsOnly(transfer, seats.length), {
      count: options.count,
      candidates: places.allowed.length,
      present: presentSet(now, places.allowed.length),
      fits: (a, b) => {
        const [one, other] = [boxes[a], boxes[b]];
        return !one || !other || overlapM(one, other) === 0;
      },
      ...(options.drives ? { drives: DEFAULT_DRIVES } : {}),
      ...(options.quick ? { mostTried: 0 } : {}),
    }),
    0.2,
    1,
  );
  const first = search.sets[0];
  const levels = first ? drivenLevels(transfer, first.subwoofers) : [];
  const best = seatFigures(
    transfer.frequenciesHz,
    levels.slice(0, seats.length),
    levels[ears.reference] ?? null,
  );
  return { places, search, best, of, defaulted };
}
