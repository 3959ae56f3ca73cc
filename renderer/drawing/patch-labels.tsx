/**
 * Handles of doors, windows, passages and panels: a tag to move each along its face, or from one face of
 * the shell to another, and grips on the edges of the chosen one to stretch it.
 */

import { faceOf } from '../../core/room/built-face';
import type { Ray } from 'three';
import { carpenterStepM } from '../../core/quantity/carpenter-step';
import { roundLength } from '../../core/quantity/length';
import { FACE_NORMALS, faceAxes, faceName, patchSide, solidOfFace } from '../../core/room/faces';
import {
  EDGES,
  movedPatch,
  patchOnFace,
  stretchedPatch,
  type Edge,
} from '../../core/room/move-patch';
import { isOpening } from '../../core/room/patch-kinds';
import { mapPoint } from '../../core/room/point';
import { FACES, type Patch, type Point, type Room } from '../../core/room/project';
import { changePatch } from '../state/change-patches';
import { removeThing } from '../state/remove-thing';
import { selectedId } from '../state/selection';
import { DragHandle } from './DragHandle';
import { DRAG_NORMAL, isMarked, NUDGE_AXES, type LabelContext } from './label-context';
import { onFace, patchMiddle, patchWord } from '../../core/drawing/label-places';
import { RANKS } from '../../core/drawing/label-requests';
import type { PlacedLabel } from './Labels';
import { alongAxis, onPlane } from './stage';

/** Tags of those that `belongs` says belong to the subject, of the chosen one in any case, and its grips. */
export function patchLabels(
  context: LabelContext,
  belongs: (patch: Patch) => boolean,
): readonly PlacedLabel[] {
  const { patches } = context.project.room;
  const chosenId = selectedId(context.session.selected, 'patch');
  const shown = patches.filter((patch) => patch.id === chosenId || belongs(patch));
  const chosen = patches.find((patch) => patch.id === chosenId);
  return [
    ...shown.flatMap((patch) => tag(context, patch)),
    ...(chosen ? EDGES.flatMap((edge) => grip(context, chosen, edge)) : []),
  ];
}

function tag(context: LabelContext, patch: Patch): readonly PlacedLabel[] {
  const { project, units, stage, hold, view, session } = context;
  const thing = { kind: 'patch', id: patch.id } as const;
  const at = onFace(project.room, patch.face, patchMiddle(patch));
  if (!at) return [];
  const marked = isMarked(context, thing);
  const side = patchSide(patch.face);
  const [u, v] = faceAxes(side);
  const what = `place of ${patch.id}`;
  return [
    {
      key: `patch-${patch.id}`,
      at,
      mayShift: true,
      ...(marked ? { rank: RANKS.chosen } : {}),
      node: (
        <DragHandle
          className={marked ? 'row-chip fitting-chip marked' : 'row-chip fitting-chip'}
          label={`${patch.id}, ${faceName(patch.face)}: drag to move, arrow keys step`}
          stage={stage}
          onStart={() => {
            hold(true);
            session.select(thing);
          }}
          onEnd={() => hold(false)}
          onPress={() => session.toggle(thing)}
          onRemove={() => removeThing({ kind: 'patch', id: patch.id })}
          onDrag={(ray, startRay, fine, gesture) => {
            const from = gesture.base.room.patches.find(({ id }) => id === patch.id);
            const moved = from && dragged(context, from, ray, startRay, fine);
            if (moved) changePatch(moved, what, gesture);
          }}
          onNudge={(right, up, fine, gesture) => {
            const stepM = carpenterStepM(units, fine);
            const by: [number, number, number] = [0, 0, 0];
            if (view === 'room') {
              by[u] += right * stepM;
              by[v] += up * stepM;
            } else {
              const [axisRight, signRight, axisUp, signUp] = NUDGE_AXES[view];
              by[axisRight] += right * signRight * stepM;
              by[axisUp] += up * signUp * stepM;
            }
            const next = shifted(project.room, patch, [by[u], by[v]]);
            if (next) changePatch(next, what, gesture);
          }}
        >
          {patchWord(patch)}
        </DragHandle>
      ),
    },
  ];
}

/** An arrow key moves exactly one step, so it does not come to rest on edges; it stays on the face. */
function shifted(room: Room, patch: Patch, by: readonly [number, number]): Patch | null {
  const bounds = faceOf(room, patch.face)?.rect;
  const [u0, v0, u1, v1] = patch.rect;
  const rect = [u0 + by[0], v0 + by[1], u1 + by[0], v1 + by[1]].map(roundLength);
  const [a = 0, b = 0, c = 0, d = 0] = rect;
  if (!bounds || a < bounds[0] || b < bounds[1] || c > bounds[2] || d > bounds[3]) return null;
  return { ...patch, rect: [a, b, c, d] };
}

/** How far past the end of its face the hand goes before the patch leaves it, m. */
const LEAVE_M = 0.4;

/** Where a patch goes that is dragged from where it was; null where the hand says nothing. */
function dragged(
  context: LabelContext,
  from: Patch,
  ray: Ray,
  startRay: Ray,
  fine: boolean,
): Patch | null {
  const { project, units, view } = context;
  const { room } = project;
  const stepM = carpenterStepM(units, fine);
  const at = onFace(room, from.face, patchMiddle(from));
  if (!at) return null;
  const side = patchSide(from.face);
  const [u, v] = faceAxes(side);
  // In space the hand is on the face itself; in plan and sections on the plane that is looked at.
  const normal = view === 'room' ? FACE_NORMALS[side].axis : DRAG_NORMAL[view];
  const now = onPlane(ray, at, normal);
  const then = onPlane(startRay, at, normal);
  if (now && then) {
    const hand = mapPoint(at, (value, axis) =>
      axis === normal ? value : value + now[axis] - then[axis],
    );
    const other = solidOfFace(from.face) !== null ? null : otherFace(context, from, ray, hand);
    if (other) return patchOnFace(from, other.face, other.middle, room, stepM);
    return movedPatch(from, [hand[u] - at[u], hand[v] - at[v]], room, stepM);
  }
  return null;
}

/** The face of the shell that the hand has gone on to; null while it is on the patch's own. */
function otherFace(
  { project, view }: LabelContext,
  from: Patch,
  ray: Ray,
  hand: Point,
): { readonly face: string; readonly middle: readonly [number, number] } | null {
  const { room } = project;
  const own = patchSide(from.face);
  const upright = isOpening(from);
  const [, keepV] = patchMiddle(from);
  if (view === 'plan') {
    // Nothing says how high it is, so walls alone: the nearest to the hand.
    if (FACE_NORMALS[own].axis === 2) return null;
    const away = (face: (typeof FACES)[number]): number => {
      const plane = faceOf(room, face);
      return plane ? Math.abs(hand[FACE_NORMALS[face].axis] - plane.at) : Infinity;
    };
    const walls = FACES.filter((face) => FACE_NORMALS[face].axis !== 2);
    const nearest = walls.reduce((best, face) => (away(face) < away(best) ? face : best));
    if (nearest === own || away(own) < LEAVE_M) return null;
    return { face: nearest, middle: [hand[faceAxes(nearest)[0]], keepV] };
  }
  if (view !== 'room') return null;
  const bounds = faceOf(room, own)?.rect;
  const [u, v] = faceAxes(own);
  const beyond = bounds
    ? Math.max(bounds[0] - hand[u], hand[u] - bounds[2], bounds[1] - hand[v], hand[v] - bounds[3])
    : 0;
  if (beyond < LEAVE_M) return null;
  for (const face of FACES) {
    const { axis } = FACE_NORMALS[face];
    const plane = faceOf(room, face);
    if (face === own || !plane || (upright && axis === 2)) continue;
    // A face is seen from within the room.
    const towards = axis === 0 ? ray.direction.x : axis === 1 ? ray.direction.z : ray.direction.y;
    if (towards * plane.inward >= 0) continue;
    const on: [number, number, number] = [0, 0, 0];
    on[axis] = plane.at;
    const hit = onPlane(ray, on, axis);
    const [a, b] = faceAxes(face);
    const limits = faceOf(room, face)?.rect;
    if (!hit || !limits) continue;
    if (hit[a] < limits[0] || hit[a] > limits[2] || hit[b] < limits[1] || hit[b] > limits[3])
      continue;
    return { face, middle: [hit[a], upright ? keepV : hit[b]] };
  }
  return null;
}

const EDGE_WORDS: readonly (readonly [string, string])[] = [
  ['left edge', 'right edge'],
  ['edge towards the screen', 'edge towards the back'],
  ['lower edge', 'upper edge'],
];

function grip(context: LabelContext, patch: Patch, edge: Edge): readonly PlacedLabel[] {
  const { project, units, stage, hold, view } = context;
  const side = patchSide(patch.face);
  const along = edge === 0 || edge === 2 ? 0 : 1;
  const axis = faceAxes(side)[along];
  if (view !== 'room' && DRAG_NORMAL[view] === axis) return [];
  const [u, v] = patchMiddle(patch);
  const at = onFace(
    project.room,
    patch.face,
    along === 0 ? [patch.rect[edge], v] : [u, patch.rect[edge]],
  );
  const middle = onFace(project.room, patch.face, [u, v]);
  if (!at || !middle) return [];
  const what = `size of ${patch.id}`;
  return [
    {
      key: `patch-grip-${patch.id}-${edge}`,
      at,
      outwardFrom: middle,
      rank: RANKS.grip,
      node: (
        <DragHandle
          className={`grip fitting-grip patch-grip-${edge}`}
          label={`${patch.id}, ${EDGE_WORDS[axis]?.[edge < 2 ? 0 : 1] ?? 'edge'}: drag to change its size, arrow keys step`}
          stage={stage}
          onStart={() => {
            hold(true);
          }}
          onEnd={() => hold(false)}
          onRemove={() => removeThing({ kind: 'patch', id: patch.id })}
          onDrag={(ray, startRay, fine, gesture) => {
            const from = gesture.base.room.patches.find(({ id }) => id === patch.id);
            const now = alongAxis(ray, at, axis);
            const then = alongAxis(startRay, at, axis);
            if (!from || now === null || then === null) return;
            const to = from.rect[edge] + now - then;
            const stepM = carpenterStepM(units, fine);
            changePatch(stretchedPatch(from, edge, to, project.room, stepM), what, gesture);
          }}
          onNudge={(right, up, fine, gesture) => {
            const stepM = carpenterStepM(units, fine);
            const to = roundLength(patch.rect[edge] + (right !== 0 ? right : up) * stepM);
            changePatch(stretchedPatch(patch, edge, to, project.room, stepM), what, gesture);
          }}
        />
      ),
    },
  ];
}
