/**
 * Moving a wall takes along what hangs on it. Along the width, what stands in the middle keeps its
 * distance from the centre line, so that pairs stay pairs; along the length it keeps its distance
 * from the screen wall; along the height, from the floor.
 */

import { roundLength } from '../quantity/length';
import { type Axis, faceAxes, patchSide } from './faces';
import { farCorner, mapPoint } from './point';
import type { Patch, Point, Project, ShellSize, Solid } from './project';

/** What lies this close to a wall is taken to hang on it, m. */
const ON_WALL_M = 0.5;
const TOUCH_M = 1e-4;

/** The coordinate after its axis has grown from `before` to `after` metres. */
function moved(at: number, axis: number, before: number, after: number): number {
  const grown = after - before;
  // Both walls are asked in the same way, so that a mirrored pair is always answered alike.
  const onWall = (distance: number): boolean =>
    distance > -TOUCH_M && distance < Math.min(ON_WALL_M, before / 2) - TOUCH_M;
  if (onWall(before - at)) return at + grown;
  if (axis === 0 && !onWall(at)) return at + grown / 2;
  return at;
}

/** A span along an axis: from wall to wall it stretches, on a wall it goes along, else as any thing. */
function movedSpan(
  [low, high]: readonly [number, number],
  axis: number,
  before: number,
  after: number,
): readonly [number, number] {
  const grown = after - before;
  const atNear = low <= TOUCH_M;
  const atFar = high >= before - TOUCH_M;
  const middle = (low + high) / 2;
  const shift = atNear ? 0 : atFar ? grown : moved(middle, axis, before, after) - middle;
  return [roundLength(low + shift), roundLength(high + (atNear && atFar ? grown : shift))];
}

function moveSolid(solid: Solid, before: Point, after: Point): Solid {
  const span = (axis: Axis): readonly [number, number] =>
    movedSpan([solid.min[axis], solid.max[axis]], axis, before[axis], after[axis]);
  const spans = [span(0), span(1), span(2)] as const;
  const corner = (end: 0 | 1): Point => mapPoint(solid.min, (_, axis) => spans[axis][end]);
  return { ...solid, min: corner(0), max: corner(1) };
}

function movePatch(patch: Patch, before: Point, after: Point): Patch {
  const [u, v] = faceAxes(patchSide(patch.face));
  const [u0, v0, u1, v1] = patch.rect;
  const [left, right] = movedSpan([u0, u1], u, before[u], after[u]);
  const [low, high] = movedSpan([v0, v1], v, before[v], after[v]);
  return { ...patch, rect: [left, low, right, high] };
}

/** `project` with a shell of the given size in metres and everything in it moved along. */
export function resizeShell(project: Project, size: ShellSize): Project {
  const old = project.room.size;
  const before = farCorner(old);
  const after = farCorner(size);
  const place = (at: Point): Point =>
    mapPoint(at, (value, axis) => roundLength(moved(value, axis, before[axis], after[axis])));
  const row = (y: number): number => roundLength(moved(y, 1, before[1], after[1]));
  return {
    ...project,
    room: {
      ...project.room,
      size,
      solids: project.room.solids.map((solid) => moveSolid(solid, before, after)),
      patches: project.room.patches.map((patch) => movePatch(patch, before, after)),
    },
    seating: {
      ...project.seating,
      rows: project.seating.rows.map((r) => ({
        ...r,
        y: row(r.y),
        ...(r.x === undefined ? {} : { x: place([r.x, 0, 0])[0] }),
      })),
    },
    screen:
      project.screen.centreX === undefined
        ? project.screen
        : { ...project.screen, centreX: place([project.screen.centreX, 0, 0])[0] },
    ...(project.projector
      ? { projector: { ...project.projector, position: place(project.projector.position) } }
      : {}),
    speakers: {
      ...project.speakers,
      placed: project.speakers.placed.map((s) => ({ ...s, position: place(s.position) })),
      subwoofers: project.speakers.subwoofers.map((s) => ({ ...s, position: place(s.position) })),
    },
  };
}
