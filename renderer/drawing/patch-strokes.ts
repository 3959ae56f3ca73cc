/** Lines of a door, window or panel: its outline with one diagonal, and the swing of a door's leaf in plan. */

import { FACE_NORMALS, faceAxes } from '../../core/room/faces';
import { leafOf, planeOf } from '../../core/room/openings';
import type { Patch, Point, Room } from '../../core/room/project';

type Stroke = readonly [Point, Point];

/** Off the face, into the room, by this much, m: lines that lie in a face flicker. */
const OFF_M = 0.01;

export function patchOutline(room: Room, patch: Patch): readonly Stroke[] {
  const plane = planeOf(room, patch.face);
  if (!plane) return [];
  const { axis } = FACE_NORMALS[plane.side];
  const [u, v] = faceAxes(plane.side);
  const at = (a: number, b: number): Point => {
    const place: [number, number, number] = [0, 0, 0];
    place[axis] = plane.at + plane.inward * OFF_M;
    place[u] = a;
    place[v] = b;
    return place;
  };
  const [u0, v0, u1, v1] = patch.rect;
  return [
    [at(u0, v0), at(u1, v0)],
    [at(u1, v0), at(u1, v1)],
    [at(u1, v1), at(u0, v1)],
    [at(u0, v1), at(u0, v0)],
    [at(u0, v0), at(u1, v1)],
  ];
}

const ARC_STEPS = 12;

/** The open leaf and the quarter circle of its free edge, at the foot of the door; none without a leaf. */
export function leafStrokes(room: Room, patch: Patch): readonly Stroke[] {
  const leaf = leafOf(room, patch);
  if (!leaf) return [];
  const { hinge, shut, open } = leaf;
  const up = patch.rect[1] + OFF_M;
  const at = (share: number): Point => {
    const [c, s] = [Math.cos((share * Math.PI) / 2), Math.sin((share * Math.PI) / 2)];
    return [
      hinge[0] + c * (shut[0] - hinge[0]) + s * (open[0] - hinge[0]),
      hinge[1] + c * (shut[1] - hinge[1]) + s * (open[1] - hinge[1]),
      up,
    ];
  };
  const arc = Array.from({ length: ARC_STEPS }, (_, n): Stroke => [
    at(n / ARC_STEPS),
    at((n + 1) / ARC_STEPS),
  ]);
  return [[[hinge[0], hinge[1], up], at(1)], ...arc];
}
