/** Better places for the subwoofers of a project: candidates along its walls, tried at its seats. */

import { presentSet } from '../bass/as-subwoofers';
import { DEFAULT_DRIVES } from '../bass/drives';
import { drivenLevels } from '../bass/measure';
import { subwooferPlaces, type Places } from '../bass/places';
import { searchSubwoofers, type SubwooferSearch } from '../bass/search';
import { seatFigures, type SeatFigures } from '../bass/seat-figures';
import { bandGrid, DEFAULT_PER_OCTAVE, seatsOnly, type Band } from '../bass/transfer';
import { scaled, type Slices } from '../quantity/slices';
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
}

export interface PlaceSearch {
  readonly bandHz: Band;
  readonly boxM: PlaceSearchOptions['boxM'];
  readonly places: Places;
  /** Null where no place is allowed, or nobody sits in the free space. */
  readonly search: SubwooferSearch | null;
  /** What the first set would make at the seats, over the band that was asked for; null without one. */
  readonly best: SeatFigures | null;
  readonly of: 'shell' | 'built';
  /** Modes whose decay is a stand-in, since a face has no figure. */
  readonly defaulted: number;
}

/**
 * Says for which rooms a search proposes the same places: the room, and the loudspeakers that stand in
 * the way. The subwoofers of now are no part of it: sets stay to be taken when one has been.
 */
export const proposalKey = ({
  room,
  air,
  seating,
  screen,
  objects,
  finishesCustom,
  speakers,
}: Project): string => {
  const { layout, recommendation, placed } = speakers;
  return JSON.stringify([
    room,
    air,
    seating,
    screen,
    objects,
    finishesCustom,
    layout,
    recommendation,
    placed,
  ]);
};

/** Search. Yields the share done, and a first answer as soon as there is one. */
export function* searchPlaces(
  project: Project,
  shape: RoomModes | null,
  options: PlaceSearchOptions,
): Slices<PlaceSearch> {
  const of = shape ? 'built' : 'shell';
  const { room, speakers } = project;
  const places = subwooferPlaces(project, options);
  const seats = seatsOf(project).filter((seat) => isInTheOpen(seat.position, room));
  const none = {
    places,
    search: null,
    best: null,
    of,
    bandHz: options.bandHz,
    boxM: options.boxM,
  } as const;
  if (places.allowed.length === 0 || seats.length === 0) return { ...none, defaulted: 0 };
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
  if (!outcome.ok) return { ...none, defaulted };
  const { transfer } = outcome;
  const boxes = places.allowed.map((place) => boxOfSize(project, place, options.boxM));
  const ask = {
    count: options.count,
    candidates: places.allowed.length,
    present: presentSet(now, places.allowed.length),
    fits: (a: number, b: number): boolean => {
      const [one, other] = [boxes[a], boxes[b]];
      return !one || !other || overlapM(one, other) === 0;
    },
    ...(options.drives ? { drives: DEFAULT_DRIVES } : {}),
  };
  const answer = (search: SubwooferSearch): PlaceSearch => {
    const levels = search.sets[0] ? drivenLevels(transfer, search.sets[0].subwoofers) : [];
    const best = seatFigures(
      transfer.frequenciesHz,
      levels.slice(0, seats.length),
      levels[ears.reference] ?? null,
    );
    return { ...none, search, best, defaulted };
  };
  const heard = seatsOnly(transfer, seats.length);
  const first = yield* scaled(searchSubwoofers(heard, { ...ask, mostTried: 0 }), 0.2, 0.25);
  yield { share: 0.25, interim: answer(first) };
  return answer(yield* scaled(searchSubwoofers(heard, ask), 0.25, 1));
}
