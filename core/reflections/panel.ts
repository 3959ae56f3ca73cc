/** A panel at the point of a reflection: where it fits on the face, and of which finish. */

import { faceOf } from '../room/built-face';
import { METRES_PER_FOOT, METRES_PER_INCH, type LengthUnits } from '../quantity/length';
import { freeId } from '../room/free-id';
import { nearestFreeRect, obstaclesOn } from '../room/free-rect';
import { finishLookup } from '../room/finishes';
import type { Rect } from '../room/patched-area';
import { faceAxes, patchSide } from '../room/faces';
import { MOST_PATCHES } from '../room/limits';
import type { Patch, Project } from '../room/project';
import { screenRect } from '../room/screen';
import type { FinishLookup } from './reflection-level';
import { EARLY_LIMIT, loudestOctave, type EarlyLimit, type EarlyReflection } from './early-limit';
import { practice } from '../room/practice/practice';

/** Along the face and up it (or along the room), m: a usual panel of 60 x 120 cm or 2 x 4 ft. */
export const PANEL_SIZE_M: Readonly<Record<LengthUnits, readonly [number, number]>> = {
  metric: [0.6, 1.2],
  imperial: [2 * METRES_PER_FOOT, 4 * METRES_PER_FOOT],
};
/** Least distance from the point to the panel's edge, m. */
export const LEAST_COVER_M = practice('panel-cover');
/** A panel has to take this much off to be worth its place, dB. */
export const LEAST_GAIN_DB = practice('panel-least-gain');
/** Corners are given to this, m: 1 cm or 1/2 in. */
const STEP_M: Readonly<Record<LengthUnits, number>> = {
  metric: 0.01,
  imperial: METRES_PER_INCH / 2,
};

export interface Panel {
  readonly patch: Patch;
  /** Loudest octave of the reflection with the panel, dB against the direct sound. */
  readonly levelDb: number;
  /** True where that keeps the limit. */
  readonly isEnough: boolean;
}

/**
 * A usual panel of `units` that catches `reflection`: centred on its point, moved within the face and clear of
 * other patches, the picture and solids that cover the face. Its finish is the first of `finishes` (ids,
 * in the order in which they are to be preferred) that brings the reflection to the limit, else the one
 * that takes most off. Null where no place holds the point, no finish takes a decibel off, or the room
 * holds as many patches as a file may.
 */
export function panelFor(
  project: Project,
  { hit, path, levelDb }: Pick<EarlyReflection, 'hit' | 'path' | 'levelDb'>,
  finishes: readonly string[],
  limit: EarlyLimit = EARLY_LIMIT,
  units: LengthUnits = 'metric',
): Panel | null {
  if (project.room.patches.length >= MOST_PATCHES) return null;
  const rect = panelRect(project, hit, units);
  if (!rect) return null;
  const lookup = finishLookup(project);
  let best: { readonly finish: string; readonly levelDb: number } | null = null;
  for (const finish of finishes) {
    const afterDb = coveredDb({ hit, path }, finish, lookup);
    if (afterDb === null || afterDb >= (best?.levelDb ?? levelDb - LEAST_GAIN_DB)) continue;
    best = { finish, levelDb: afterDb };
    if (best.levelDb <= limit.levelDb) break;
  }
  if (!best) return null;
  const taken = project.room.patches.map((patch) => patch.id);
  return {
    patch: { id: freeId('panel', taken), kind: 'panel', face: hit.face, rect, finish: best.finish },
    levelDb: best.levelDb,
    isEnough: best.levelDb <= limit.levelDb,
  };
}

/** Loudest octave of the reflection with `finish` at its point, dB; null where there is no figure. */
export function coveredDb(
  { hit, path }: Pick<EarlyReflection, 'hit' | 'path'>,
  finish: string,
  lookup: FinishLookup,
): number | null {
  const covered = { spreadingDb: path.spreadingDb, hits: [{ ...hit, finish }] as const };
  return loudestOctave(covered, lookup)?.levelDb ?? null;
}

/** The nearest free place for a panel that holds the point. */
function panelRect(
  project: Project,
  { face, point }: EarlyReflection['hit'],
  units: LengthUnits,
): Rect | null {
  const [width, height] = PANEL_SIZE_M[units];
  const stepM = STEP_M[units];
  const { room } = project;
  const bounds = faceOf(room, face)?.rect;
  if (!bounds) return null;
  const [u, v] = faceAxes(patchSide(face));
  const start = (at: number, size: number): number => Math.round((at - size / 2) / stepM) * stepM;
  const [u0, v0] = [start(point[u], width), start(point[v], height)];
  const wanted: Rect = [u0, v0, u0 + width, v0 + height];
  const rect = nearestFreeRect(wanted, bounds, [
    ...obstaclesOn(room, face, null),
    ...pictureOn(project, face),
  ]);
  if (!rect) return null;
  // At the edge of its face the panel cannot reach beyond the point.
  const cover = (low: number, high: number, at: number, from: number, to: number): boolean =>
    at - from >= Math.min(LEAST_COVER_M, at - low) - 1e-4 &&
    to - at >= Math.min(LEAST_COVER_M, high - at) - 1e-4;
  return cover(bounds[0], bounds[2], point[u], rect[0], rect[2]) &&
    cover(bounds[1], bounds[3], point[v], rect[1], rect[3])
    ? rect
    : null;
}

/** The picture on the screen wall: no place for a panel. */
export function pictureOn(project: Project, face: string): readonly Rect[] {
  if (face !== 'front') return [];
  const { leftX, rightX, bottomZ, topZ } = screenRect(project);
  return [[leftX, bottomZ, rightX, topZ]];
}
