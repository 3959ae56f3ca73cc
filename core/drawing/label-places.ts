/** Where the lettering of things belongs in each view: the one place that screen and paper ask. */

import { faceOf } from '../room/built-face';
import type { Point, Project, Row } from '../room/project';
import { faceAxes, FACE_NORMALS } from '../room/faces';
import { PATCH_KIND } from '../room/patch-kinds';
import type { Patch, Room } from '../room/project';
import { rowCentreX } from '../room/seats';
import { screenRect } from '../room/screen';
import type { LabelWish } from './label-requests';
import type { FlatViewId } from './views';

/** A view that lettering stands in: flat, or the room in space. */
export type LabelView = FlatViewId | 'room';

export function middleOf(a: Point, b: Point): Point {
  return [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2, (a[2] + b[2]) / 2];
}

/** Of a row of seats; null where a view does not name it. */
export function rowLabelWish({ room }: Project, row: Row, view: LabelView): LabelWish | null {
  if (view !== 'plan' && view !== 'section' && view !== 'room') return null;
  if (view === 'section') return { at: [room.size.width / 2, row.y, -0.15], mayShift: true };
  const outermost = rowCentreX(row, room.size.width) - ((row.seats - 1) / 2) * row.pitchM;
  const at: Point = [outermost - 0.38, row.y - 0.1, row.riserM + 0.45];
  // Beside the outermost seat, away from it, so that no head is covered.
  return { at, awayFrom: [outermost, row.y - 0.1, at[2]], mayShift: true };
}

export function screenLabelWish(project: Project, view: LabelView): LabelWish {
  const rect = screenRect(project);
  if (view === 'section') return { at: [0, 0.05, rect.topZ + 0.1] };
  if (view === 'plan' || view === 'ceiling') {
    // Before the wall that it hangs on, out of the room.
    const x = rect.rightX - 0.15;
    return { at: [x, 0, rect.topZ], awayFrom: [x, 1, rect.topZ] };
  }
  return { at: [(rect.leftX + rect.rightX) / 2, 0.05, rect.topZ - 0.16] };
}

/** Lettering goes outward in plan; in sections the farther of two that coincide goes below. */
export function besideSpeaker(
  { room }: Project,
  ears: Point | null,
  view: LabelView,
  position: Point,
): Point {
  const [x, y, z] = position;
  if (view === 'plan' && ears) return [ears[0], ears[1], z];
  const below =
    (view === 'section' && x > room.size.width / 2 + 0.05) ||
    (view === 'front' && ears !== null && y < ears[1] && Math.abs(x - ears[0]) > 0.05);
  return [x, y, z + (below ? 0.1 : -0.1)];
}

/** The place on the face, m in the room; null where the face is not there. */
export function onFace(room: Room, face: string, at: readonly [number, number]): Point | null {
  const plane = faceOf(room, face);
  if (!plane) return null;
  const [u, v] = faceAxes(plane.side);
  const place: [number, number, number] = [0, 0, 0];
  place[FACE_NORMALS[plane.side].axis] = plane.at;
  place[u] = at[0];
  place[v] = at[1];
  return place;
}

export const patchMiddle = ({ rect: [u0, v0, u1, v1] }: Patch): readonly [number, number] => [
  (u0 + u1) / 2,
  (v0 + v1) / 2,
];

export const patchWord = (patch: Patch): string =>
  patch.kind === 'passage' ? PATCH_KIND.passage.name : patch.id.replace(/-\d+$/, '');
