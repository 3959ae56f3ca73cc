/** First reflections of one loudspeaker at one seat: what the limit judges, and what comes a little later. */

import { finishLookup } from '../room/finishes';
import type { Project } from '../room/project';
import type { ListeningPlace } from '../room/seats';
import {
  EARLY_LIMIT,
  excessDb,
  isJudged,
  loudestOctave,
  type EarlyLimit,
  type EarlyReflection,
} from './early-limit';
import { reflectingRoom, reflectionsBetween } from './image-sources';
import { practice } from '../room/practice/practice';

/** Reflections later than this are not reported, ms. */
export const SHOWN_TO_MS = practice('early-shown-to');

export interface SeatReflection extends EarlyReflection {
  /** dB over the limit; 0 where it is kept, and for what comes later than the limit asks. */
  readonly overDb: number;
}

export type EarlyAtSeat =
  /** No such loudspeaker, or it or the seat is outside the free space. */
  | { readonly kind: 'outside' }
  /** A fitting stands in the way of the direct sound: there is nothing to judge against. */
  | { readonly kind: 'hidden' }
  | {
      readonly kind: 'heard';
      /** Earliest first. */
      readonly reflections: readonly SeatReflection[];
      /** Reflections as early that are not judged: behind the box, of its mounting, without a figure. */
      readonly leftOut: number;
    };

/** First-order reflections of `channel` at `seat` up to `SHOWN_TO_MS`, and how far each is over `limit`. */
export function earlyAtSeat(
  project: Project,
  speedMS: number,
  channel: string,
  seat: ListeningPlace,
  limit: EarlyLimit = EARLY_LIMIT,
): EarlyAtSeat {
  const speaker = project.speakers.placed.find((placed) => placed.channel === channel);
  const found =
    speaker &&
    reflectionsBetween(reflectingRoom(project.room), speaker.position, seat.position, speedMS);
  if (!found) return { kind: 'outside' };
  if (!found.direct.isVisible) return { kind: 'hidden' };
  const finish = finishLookup(project);
  const told = { ...limit, withinMs: Math.max(SHOWN_TO_MS, limit.withinMs) };
  const early = found.paths.filter((path) => path.delayMs <= told.withinMs);
  const reflections = early.flatMap((path): readonly SeatReflection[] => {
    const loudest = isJudged(path, told) ? loudestOctave(path, finish) : null;
    if (!loudest) return [];
    const overDb = isJudged(path, limit) ? excessDb(loudest.levelDb, limit) : 0;
    return [{ channel, seat, hit: path.hits[0], path, ...loudest, overDb }];
  });
  return {
    kind: 'heard',
    reflections: reflections.sort((a, b) => a.path.delayMs - b.path.delayMs),
    leftOut: early.length - reflections.length,
  };
}
