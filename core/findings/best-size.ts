/**
 * The one size that is proposed for the sake of the axial modes: of the rooms that the search in the bay
 * finds, the one that mends most. It is looked for in the whole bay and from nothing but the bay, so
 * that it is the same however often it is asked for, and never a chain of smaller and smaller rooms.
 */

import { bayOf } from '../proportions/bay';
import { searchRooms, searchSize, type FoundRoom } from '../proportions/search';
import { smoothnessDb } from '../proportions/smoothness';
import { ASSUMED_DECAY_S } from '../proportions/criteria';
import { finish } from '../quantity/slices';
import { SIDES, type Bay, type ShellSize } from '../room/project';
import type { AxialMatters } from './axial-matters';
import { mattersOfSize } from './axial-matters';
import type { FindingContext } from './context';
import type { Remedy } from './finding';

/** Rooms that are looked at without a worker, at most: some ten milliseconds. */
const MOST_ROOMS = 20_000;
/** The response from corner to corner is told to be rougher from this on, dB. */
const ROUGHER_DB = 0.1;

/** 0 for no matter, 1 for what other modes cover, 2 for what is heard. */
function gravity({ gap, pileUp }: AxialMatters): readonly [number, number] {
  return [gap ? (gap.isFilled ? 1 : 2) : 0, pileUp ? (pileUp.isMasked ? 1 : 2) : 0];
}

/** The remedy, with what it costs; null where no room of the bay mends a matter and makes no other one. */
export function bestSizeRemedy(
  context: FindingContext,
  now: AxialMatters,
  belowHz: number,
): Remedy | null {
  const { project, speedMS } = context;
  const bay = bayOf(project, context.measures.units);
  const best = bestRoom(searchable(bay, project.room.size), context, now, belowHz);
  if (!best) return null;
  const { size } = best;
  const sizes = SIDES.map((side) => context.lengthText(size[side])).join(' by ');
  const text = `Build it ${sizes}: of what the bay allows the evenest room that mends this. ${costText(context, size)}${rougherText(context, size, speedMS)}`;
  // The bay is kept as it was looked at: what it allows does not shrink along with the room.
  const edits = project.room.bay
    ? [{ kind: 'size', size } as const]
    : [{ kind: 'bay', bay } as const, { kind: 'size', size } as const];
  return { text, edit: { kind: 'several', edits, what: 'size of the room' } };
}

/** The bay in whole steps so wide that the search is a matter of milliseconds. */
function searchable(bay: Bay, size: ShellSize): Bay {
  for (let steps = 1; ; steps++) {
    const coarse = { ...bay, stepM: steps * bay.stepM };
    if (searchSize(coarse, size) <= MOST_ROOMS || steps > 100) return coarse;
  }
}

function bestRoom(
  bay: Bay,
  { project, speedMS }: FindingContext,
  now: AxialMatters,
  belowHz: number,
): FoundRoom | null {
  const [gapNow, pileUpNow] = gravity(now);
  const { rooms } = finish(searchRooms(bay, project.room.size, speedMS));
  let best: { readonly room: FoundRoom; readonly left: number } | null = null;
  for (const room of rooms) {
    const [gap, pileUp] = gravity(mattersOfSize(room.size, speedMS, belowHz));
    const left = gap + pileUp;
    if (gap > gapNow || pileUp > pileUpNow || left >= (best?.left ?? gapNow + pileUpNow)) continue;
    best = { room, left };
  }
  return best?.room ?? null;
}

/** `It takes 0.12 m off the width and adds 0.05 m to the length, 0.4 m² of floor.` */
function costText({ project, lengthText, measures }: FindingContext, size: ShellSize): string {
  const old = project.room.size;
  const changes = SIDES.filter((side) => Math.abs(size[side] - old[side]) > 0.0005).map((side) => {
    const length = lengthText(Math.abs(size[side] - old[side]));
    return size[side] < old[side] ? `${length} less ${side}` : `${length} more ${side}`;
  });
  const floorM2 = size.width * size.length - old.width * old.length;
  const floor =
    Math.abs(floorM2) < 0.005
      ? 'the same floor'
      : `${measures.area(Math.abs(floorM2))} ${floorM2 < 0 ? 'less' : 'more'} floor`;
  return `That is ${changes.join(', ')}: ${floor}.`;
}

function rougherText({ project, decay }: FindingContext, size: ShellSize, speedMS: number): string {
  const decayS = decay.midS ?? ASSUMED_DECAY_S;
  const [was, is] = [
    smoothnessDb(project.room.size, speedMS, decayS),
    smoothnessDb(size, speedMS, decayS),
  ];
  return is > was + ROUGHER_DB
    ? ` The response from corner to corner comes out rougher: ${is.toFixed(1)} dB after ${was.toFixed(1)} dB.`
    : '';
}
