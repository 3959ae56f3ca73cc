/** Lines of things in the room, as pairs of places: for the flat views and for the room in space alike. */

import { faceOf } from '../room/built-face';
import { FACE_NORMALS, faceAxes } from '../room/faces';
import { leafOf } from '../room/openings';
import type { Patch, Point, Room } from '../room/project';
import { directionVector } from '../speakers/direction';
import type { Layout } from '../speakers/layouts';
import { nominalElevation } from '../speakers/nominal-place';
import type { SpaceLines } from './on-paper';

type Line = readonly [Point, Point];

/** The twelve edges of a box. */
export function boxEdges(min: Point, max: Point): SpaceLines {
  const corner = (i: number, j: number, k: number): Point => [
    i ? max[0] : min[0],
    j ? max[1] : min[1],
    k ? max[2] : min[2],
  ];
  const pairs: Line[] = [];
  for (const a of [0, 1]) {
    for (const b of [0, 1]) {
      pairs.push([corner(0, a, b), corner(1, a, b)]);
      pairs.push([corner(a, 0, b), corner(a, 1, b)]);
      pairs.push([corner(a, b, 0), corner(a, b, 1)]);
    }
  }
  return pairs;
}

/** Off the face, into the room, by this much, m: lines that lie in a face flicker in space. */
const OFF_M = 0.01;

/** A rectangle of a face with one diagonal. */
export function patchOutline(room: Room, patch: Patch): SpaceLines {
  const plane = faceOf(room, patch.face);
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

const ARC_STEPS = 16;

/** The open leaf and the quarter circle of its free edge, at the foot of the door; none without a leaf. */
export function leafLines(room: Room, patch: Patch): SpaceLines {
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
  const arc = Array.from({ length: ARC_STEPS }, (_, n): Line => [
    at(n / ARC_STEPS),
    at((n + 1) / ARC_STEPS),
  ]);
  return [[[hinge[0], hinge[1], up], at(1)], ...arc];
}

/** Of the arcs that windows are drawn on, m around the ears. */
const ARC_RADIUS_M = 0.95;

/** An arc at the nominal elevation of each window of a layout, a tick at each of its ends. */
export function windowArcs(layout: Layout, ears: Point): SpaceLines {
  return layout.channels.flatMap((channel) => {
    const at = (azimuth: number, radius: number): Point => {
      const [x, y, z] = directionVector(azimuth, nominalElevation(channel));
      return [ears[0] + x * radius, ears[1] + y * radius, ears[2] + z * radius];
    };
    const [from, to] = channel.azimuth;
    const steps = Math.max(1, Math.ceil((to - from) / 3));
    const arc = Array.from({ length: from === to ? 0 : steps }, (_, i): Line => {
      const angle = (share: number): number => from + ((to - from) * share) / steps;
      return [at(angle(i), ARC_RADIUS_M), at(angle(i + 1), ARC_RADIUS_M)];
    });
    const ticks = [...new Set([from, to])].map((azimuth): Line => [
      at(azimuth, ARC_RADIUS_M - 0.08),
      at(azimuth, ARC_RADIUS_M + 0.08),
    ]);
    return [...arc, ...ticks];
  });
}
