/**
 * Early reflections against the limit of ITU-R BS.1116: what arrives within 15 ms of the direct sound
 * is at least 10 dB below it, 1 to 8 kHz (from memory; EBU Tech 3276, 2.2, the same; a German survey of
 * listening rooms gives 15 dB). Each path is judged by its loudest octave.
 *
 * The source radiates alike to all sides, which no loudspeaker does at these frequencies. So that the
 * wall behind a box does not count for more than it is, paths that leave the loudspeaker by more than
 * 90 degrees from the way to the seat are left out (a box shadows them), and so is
 * what arrives with the direct sound, from the face that the loudspeaker is set into. Chairs, heads and
 * the screen are not in the way of anything.
 */

import type { OctaveHz } from '../quantity/bands';
import { finishLookup } from '../room/finishes';
import type { Project } from '../room/project';
import { seatsOf, type ListeningPlace } from '../room/seats';
import { placedOf } from '../speakers/judge';
import { layoutOf } from '../speakers/layouts';
import { reflectingRoom, reflectionsBetween, type Hit, type ReflectionPath } from './image-sources';
import { reflectionLevelDb, type FinishLookup } from './reflection-level';
import { practice } from '../room/practice/practice';

export interface EarlyLimit {
  /** Highest level against the direct sound, dB. */
  readonly levelDb: number;
  /** After the direct sound, ms: later reflections are not judged. */
  readonly withinMs: number;
  /** Earlier than this is the loudspeaker's own mounting, ms. */
  readonly leastMs: number;
  /** Widest angle between the way out and the way to the seat that is judged, degrees. */
  readonly widestDeg: number;
}

export const EARLY_LIMIT: EarlyLimit = {
  levelDb: -10,
  withinMs: 15,
  leastMs: practice('early-from'),
  widestDeg: practice('early-widest-angle'),
};

export const EARLY_LIMIT_SOURCE =
  'ITU-R BS.1116-3, 8.2 (10 dB within 15 ms, 1 to 8 kHz: from memory), for loudspeakers that radiate to all sides alike';

/** Octaves that are judged, where the finish has a figure. */
export const EARLY_OCTAVES_HZ: readonly OctaveHz[] = [1000, 2000, 4000, 8000];

/** One first-order reflection of one loudspeaker at one seat. */
export interface EarlyReflection {
  readonly channel: string;
  readonly seat: ListeningPlace;
  readonly hit: Hit;
  readonly path: ReflectionPath;
  /** Loudest octave, and its level against the direct sound, dB. */
  readonly octaveHz: OctaveHz;
  readonly levelDb: number;
}

/**
 * Every judged reflection of every loudspeaker at every seat, over the limit or not. Loudspeakers and
 * seats outside the free space have none, nor have pairs between which a fitting hides the direct sound,
 * nor faces without a figure in any of the octaves. All seats are heard where none are named.
 */
export function earlyReflections(
  project: Project,
  speedMS: number,
  limit: EarlyLimit = EARLY_LIMIT,
  seats: readonly ListeningPlace[] = seatsOf(project),
): readonly EarlyReflection[] {
  const reflecting = reflectingRoom(project.room);
  const finish = finishLookup(project);
  const found: EarlyReflection[] = [];
  const layout = layoutOf(project.speakers.layout) ?? null;
  for (const { channel, position } of placedOf(project, layout)) {
    for (const seat of seats) {
      const reflections = reflectionsBetween(reflecting, position, seat.position, speedMS);
      if (!reflections?.direct.isVisible) continue;
      for (const path of reflections.paths) {
        if (!isJudged(path, limit)) continue;
        const loudest = loudestOctave(path, finish);
        if (loudest) found.push({ channel, seat, hit: path.hits[0], path, ...loudest });
      }
    }
  }
  return found;
}

/** True where the limit has a say on the path. */
export function isJudged(
  path: Pick<ReflectionPath, 'delayMs' | 'departureDeg'>,
  limit: EarlyLimit = EARLY_LIMIT,
): boolean {
  return (
    path.delayMs <= limit.withinMs &&
    path.delayMs >= limit.leastMs &&
    path.departureDeg <= limit.widestDeg
  );
}

/** The judged octave in which the path is loudest; null where no octave has a figure. */
export function loudestOctave(
  path: Pick<ReflectionPath, 'hits' | 'spreadingDb'>,
  finish: FinishLookup,
): { readonly octaveHz: OctaveHz; readonly levelDb: number } | null {
  let loudest: { readonly octaveHz: OctaveHz; readonly levelDb: number } | null = null;
  for (const octaveHz of EARLY_OCTAVES_HZ) {
    const levelDb = reflectionLevelDb(path, octaveHz, finish);
    if (levelDb !== null && levelDb > (loudest?.levelDb ?? -Infinity))
      loudest = { octaveHz, levelDb };
  }
  return loudest;
}

/** dB over the limit; 0 where it is kept. */
export function excessDb(levelDb: number, limit: EarlyLimit = EARLY_LIMIT): number {
  return Math.max(0, levelDb - limit.levelDb);
}

/** The reflections of one face. */
export interface FaceReflections {
  /** A shell face, or `solid-id:face`. */
  readonly face: string;
  readonly worst: EarlyReflection;
  /** Those over the limit, loudest first. */
  readonly over: readonly EarlyReflection[];
  readonly count: number;
}

/** Faces with a reflection over the limit, that of the loudest first. */
export function facesOverLimit(
  reflections: readonly EarlyReflection[],
  limit: EarlyLimit = EARLY_LIMIT,
): readonly FaceReflections[] {
  const byFace = new Map<string, EarlyReflection[]>();
  for (const reflection of reflections) {
    const list = byFace.get(reflection.hit.face);
    if (list) list.push(reflection);
    else byFace.set(reflection.hit.face, [reflection]);
  }
  return [...byFace]
    .flatMap(([face, list]): readonly FaceReflections[] => {
      const over = list
        .filter(({ levelDb }) => excessDb(levelDb, limit) > 0)
        .sort((a, b) => b.levelDb - a.levelDb);
      const [worst] = over;
      return worst ? [{ face, worst, over, count: list.length }] : [];
    })
    .sort((a, b) => b.worst.levelDb - a.worst.levelDb);
}
