/**
 * The one act that catches a reflection: the panel that ends just beside its point made wider, the panel
 * that it meets given a finish that absorbs more, or a new panel.
 */

import { faceOf } from '../room/built-face';
import { roundLength, type LengthUnits } from '../quantity/length';
import { faceAxes, FACE_NORMALS, patchSide, type Axis } from '../room/faces';
import { finishLookup } from '../room/finishes';
import { obstaclesOn, overhangM, rectOverlapM } from '../room/free-rect';
import { isTreatment } from '../room/patch-kinds';
import type { Rect } from '../room/patched-area';
import { FACES, type Face, type Patch, type Project } from '../room/project';
import { EARLY_LIMIT, type EarlyLimit, type EarlyReflection } from './early-limit';
import { coveredDb, LEAST_COVER_M, LEAST_GAIN_DB, panelFor, pictureOn } from './panel';
import { practice } from '../room/practice/practice';

export interface Treatment {
  readonly kind: 'widen' | 'finish' | 'panel';
  /** The panel as it then is. */
  readonly patch: Patch;
  /** By how much it is made wider or higher, m; 0 for the other kinds. */
  readonly byM: number;
  /** Which way it is made wider; null for the other kinds. */
  readonly towards: Face | null;
  /** All patches of the room with it among them. */
  readonly patches: readonly Patch[];
  /** Loudest octave of the reflection then, dB against the direct sound. */
  readonly levelDb: number;
  /** True where that keeps the limit. */
  readonly isEnough: boolean;
}

/** A panel is not made wider by more than this, m: then a second one is as good. */
const MOST_WIDER_M = practice('panel-most-wider');
/** Panels are made wider in whole steps of this, m. */
const WIDEN_STEP_M: Readonly<Record<LengthUnits, number>> = practice('panel-widening-step');

type Heard = Pick<EarlyReflection, 'hit' | 'path' | 'levelDb'>;

/**
 * The treatment of `reflection` that takes at least a decibel off; of two that keep the limit the one
 * that needs no new panel. `finishes` are ids, in the order in which they are to be preferred; panels
 * named in `whole` stay as they are. Null where there is none.
 */
export function treatmentFor(
  project: Project,
  reflection: Heard,
  finishes: readonly string[],
  units: LengthUnits,
  whole: readonly string[] = [],
  limit: EarlyLimit = EARLY_LIMIT,
): Treatment | null {
  const { patch: met } = reflection.hit;
  if (met !== null && whole.includes(met)) return null;
  const candidates =
    met === null
      ? [
          widened(project, reflection, units, whole, limit),
          added(project, reflection, finishes, units, limit),
        ]
      : [refinished(project, reflection, met, finishes, limit)];
  const [first, second] = candidates.filter((candidate) => candidate !== null);
  if (!first || !second) return first ?? null;
  return first.isEnough || first.levelDb <= second.levelDb ? first : second;
}

function added(
  project: Project,
  reflection: Heard,
  finishes: readonly string[],
  units: LengthUnits,
  limit: EarlyLimit,
): Treatment | null {
  const panel = panelFor(project, reflection, finishes, limit, units);
  if (!panel) return null;
  return {
    kind: 'panel',
    byM: 0,
    towards: null,
    ...panel,
    patches: [...project.room.patches, panel.patch],
  };
}

/** The patch that the reflection meets, with the finish that absorbs enough, else most. */
function refinished(
  project: Project,
  { hit, path, levelDb }: Heard,
  id: string,
  finishes: readonly string[],
  limit: EarlyLimit,
): Treatment | null {
  const patch = project.room.patches.find((one) => one.id === id);
  if (!patch || !isTreatment(patch)) return null;
  const lookup = finishLookup(project);
  let best: { readonly finish: string; readonly levelDb: number } | null = null;
  for (const finish of finishes) {
    const afterDb = coveredDb({ hit, path }, finish, lookup);
    if (afterDb === null || afterDb >= (best?.levelDb ?? levelDb - LEAST_GAIN_DB)) continue;
    best = { finish, levelDb: afterDb };
    if (afterDb <= limit.levelDb) break;
  }
  if (!best) return null;
  const changed = { ...patch, finish: best.finish };
  return {
    ...{
      kind: 'finish',
      byM: 0,
      towards: null,
      patch: changed,
      patches: replaced(project, changed),
    },
    ...{ levelDb: best.levelDb, isEnough: best.levelDb <= limit.levelDb },
  };
}

const replaced = (project: Project, changed: Patch): readonly Patch[] =>
  project.room.patches.map((patch) => (patch.id === changed.id ? changed : patch));

/** The panel whose edge has to move least to catch the reflection, where its finish helps. */
function widened(
  project: Project,
  { hit, path, levelDb }: Heard,
  units: LengthUnits,
  whole: readonly string[],
  limit: EarlyLimit,
): Treatment | null {
  const { room } = project;
  const lookup = finishLookup(project);
  const bounds = faceOf(room, hit.face)?.rect;
  if (!bounds) return null;
  const [u, v] = faceAxes(patchSide(hit.face));
  let best: Treatment | null = null;
  for (const patch of room.patches) {
    if (patch.face !== hit.face || !isTreatment(patch)) continue;
    if (whole.includes(patch.id)) continue;
    const reach = reaching(patch.rect, [hit.point[u], hit.point[v]], bounds, WIDEN_STEP_M[units]);
    if (!reach || reach.byM >= (best?.byM ?? Infinity)) continue;
    const blocked = [...obstaclesOn(room, hit.face, patch.id), ...pictureOn(project, hit.face)];
    if (overhangM(reach.rect, bounds) > 0) continue;
    if (blocked.some((other) => rectOverlapM(reach.rect, other) > 0)) continue;
    const afterDb = coveredDb({ hit, path }, patch.finish, lookup);
    if (afterDb === null || afterDb > levelDb - LEAST_GAIN_DB) continue;
    const changed = { ...patch, rect: reach.rect };
    best = {
      ...{
        kind: 'widen',
        byM: reach.byM,
        towards: sideAt(reach.edge < 2 ? -1 : 1, [u, v][reach.edge % 2]),
      },
      ...{ patch: changed, patches: replaced(project, changed) },
      ...{ levelDb: afterDb, isEnough: afterDb <= limit.levelDb },
    };
  }
  return best;
}

/** `rect` with one edge moved out in whole steps until it covers `at`; null where it is not near. */
function reaching(
  [u0, v0, u1, v1]: Rect,
  at: readonly [number, number],
  bounds: Rect,
  stepM: number,
): { readonly rect: Rect; readonly byM: number; readonly edge: number } | null {
  const outward = (distanceM: number): number => Math.ceil((distanceM - 1e-9) / stepM) * stepM;
  const low = (edge: number, point: number, bound: number): number =>
    Math.max(bound, edge - outward(Math.max(0, edge - (point - LEAST_COVER_M))));
  const high = (edge: number, point: number, bound: number): number =>
    Math.min(bound, edge + outward(Math.max(0, point + LEAST_COVER_M - edge)));
  const rect: Rect = [
    roundLength(low(u0, at[0], bounds[0])),
    roundLength(low(v0, at[1], bounds[1])),
    roundLength(high(u1, at[0], bounds[2])),
    roundLength(high(v1, at[1], bounds[3])),
  ];
  const moves = [u0 - rect[0], v0 - rect[1], rect[2] - u1, rect[3] - v1];
  const byM = Math.max(...moves);
  const moved = [0, 1, 2, 3].filter((edge) => Math.abs(moves[edge] ?? 0) > 1e-6);
  const [edge] = moved;
  return edge !== undefined && moved.length === 1 && byM > 0 && byM <= MOST_WIDER_M + 1e-9
    ? { rect, byM, edge }
    : null;
}

/** The shell face that lies at this end of an axis. */
const sideAt = (end: -1 | 1, axis: Axis | undefined): Face | null =>
  FACES.find((face) => FACE_NORMALS[face].axis === axis && FACE_NORMALS[face].side === end) ?? null;
