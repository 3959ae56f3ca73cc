/**
 * The rooms with the evenest modes that can be built in a bay: a full scan on the carpenter's step,
 * ranked by unevenness. It goes in slices, so that a worker can tell its progress and be stopped.
 */

import { roundLength } from '../quantity/length';
import { SIDES, type Bay, type ShellSize, type Side } from '../room/project';
import { unevennessHz, unevennessSpace } from './unevenness';

export interface FoundRoom {
  readonly size: ShellSize;
  readonly unevennessHz: number;
  readonly floorM2: number;
}

export interface SearchResult {
  /** Best first: none is beaten in evenness, floor area and height at once. */
  readonly rooms: readonly FoundRoom[];
  /** Rooms that were looked at. */
  readonly tried: number;
  /** Share of the search that was done: less than 1 where it was stopped. */
  readonly share: number;
}

/** Side lengths from least to largest in whole steps, both ends kept; the present one where fixed. */
export function sideSteps(bay: Bay, present: ShellSize, side: Side): readonly number[] {
  if (bay.fixed.includes(side)) return [present[side]];
  const [low, high] = [bay.least[side], bay.largest[side]];
  const steps = [low];
  for (let n = Math.floor(low / bay.stepM + 1e-6) + 1; n * bay.stepM < high - 1e-6; n++) {
    steps.push(roundLength(n * bay.stepM));
  }
  if (high > low) steps.push(high);
  return steps;
}

/** Rooms that a search in this bay would look at. */
export function searchSize(bay: Bay, present: ShellSize): number {
  return SIDES.reduce((product, side) => product * sideSteps(bay, present, side).length, 1);
}

/** Rooms between two reports of progress: some milliseconds. */
const ROOMS_PER_SLICE = 4000;

/** A room wins its place in the list within cells of this share of the range of floor area and height. */
const AREA_CELLS = 6;
const HEIGHT_CELLS = 3;

/**
 * Scan the bay, the narrowest rooms first. Yields the share done every few thousand rooms; returns the
 * best rooms, at once those found so far where it is told to stop (`next(true)`). Runs empty (no rooms)
 * where no room of the bay has the least floor area.
 */
export function* searchRooms(
  bay: Bay,
  present: ShellSize,
  speedMS: number,
): Generator<number, SearchResult, boolean | undefined> {
  const widths = sideSteps(bay, present, 'width');
  const lengths = sideSteps(bay, present, 'length');
  const heights = sideSteps(bay, present, 'height');
  const space = unevennessSpace();
  const cells = new Map<number, FoundRoom>();
  const largestM2 = (widths.at(-1) ?? 0) * (lengths.at(-1) ?? 0);
  const leastM2 = Math.max(bay.leastFloorM2, (widths[0] ?? 0) * (lengths[0] ?? 0));
  let tried = 0;
  let sinceYield = 0;
  for (const [i, width] of widths.entries()) {
    for (const [j, length] of lengths.entries()) {
      if (sinceYield >= ROOMS_PER_SLICE) {
        sinceYield = 0;
        const share = (i + j / lengths.length) / widths.length;
        const stop = yield share;
        if (stop === true) return { rooms: unbeaten([...cells.values()]), tried, share };
      }
      const floorM2 = width * length;
      if (floorM2 < bay.leastFloorM2) continue;
      const areaCell = cellOf(floorM2, leastM2, largestM2, AREA_CELLS);
      for (const height of heights) {
        tried += 1;
        sinceYield += 1;
        const found = unevennessHz(width, length, height, speedMS, space);
        const heightCell = cellOf(height, heights[0] ?? 0, heights.at(-1) ?? 0, HEIGHT_CELLS);
        const key = areaCell * HEIGHT_CELLS + heightCell;
        const best = cells.get(key);
        // Of rooms that are equally even the larger is the better.
        const better =
          best === undefined ||
          found < best.unevennessHz - 1e-9 ||
          (found < best.unevennessHz + 1e-9 && floorM2 * height > best.floorM2 * best.size.height);
        if (better) {
          cells.set(key, { size: { width, length, height }, unevennessHz: found, floorM2 });
        }
      }
    }
  }
  return { rooms: unbeaten([...cells.values()]), tried, share: 1 };
}

/** Which of `count` equal parts of the range the value lies in. */
function cellOf(value: number, low: number, high: number, count: number): number {
  if (high <= low) return 0;
  return Math.min(count - 1, Math.max(0, Math.floor(((value - low) / (high - low)) * count)));
}

/** Rooms that no other one beats in evenness, floor area and height together; evenest first. */
function unbeaten(rooms: readonly FoundRoom[]): readonly FoundRoom[] {
  const beats = (a: FoundRoom, b: FoundRoom): boolean =>
    a !== b &&
    a.unevennessHz <= b.unevennessHz &&
    a.floorM2 >= b.floorM2 &&
    a.size.height >= b.size.height;
  return rooms
    .filter((room) => !rooms.some((other) => beats(other, room)))
    .sort((a, b) => a.unevennessHz - b.unevennessHz);
}
