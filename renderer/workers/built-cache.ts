/**
 * The modes as built, kept from one task to the next: the response, the search for subwoofers and the
 * page all need them, and the room changes seldom against what is asked of it. Lives in the worker.
 */

import { namedModes, spaceOf, type NamedModesOutcome } from '../../core/analysis/named-modes';
import type { Project } from '../../core/room/project';
import type { Quality } from '../../core/room-modes/elements';
import type { RoomModes, RoomSpace } from '../../core/room-modes/room-modes';

let last: { readonly key: string; readonly outcome: NamedModesOutcome } | null = null;

/** The modes of `space` with the factor that the response needs; at once where they are known. */
function* fineModes(space: RoomSpace, limitHz: number): Generator<number, NamedModesOutcome> {
  const key = JSON.stringify([space, limitHz]);
  if (last?.key === key) return last.outcome;
  const outcome = yield* namedModes(space, { limitHz, keepFactor: true });
  last = { key, outcome };
  return outcome;
}

/** The modes for the page, which has no use for the factor. */
export function* builtForPage(
  space: RoomSpace,
  limitHz: number,
  quality: Quality,
): Generator<number, NamedModesOutcome> {
  if (quality === 'coarse') return yield* namedModes(space, { limitHz, quality });
  const outcome = yield* fineModes(space, limitHz);
  if (!outcome.ok) return outcome;
  const { built } = outcome;
  return { ok: true, built: { ...built, shape: { ...built.shape, factor: null } } };
}

/** The room's shape for the response; null where it is the plain shell, or cannot be solved. */
export function* solvedShape(
  project: Project,
  limitHz: number,
): Generator<number, RoomModes | null> {
  if (project.room.solids.length === 0) return null;
  const outcome = yield* fineModes(spaceOf(project), limitHz);
  return outcome.ok ? outcome.built.shape : null;
}
