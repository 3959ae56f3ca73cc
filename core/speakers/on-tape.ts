/** Places of loudspeakers that were computed from angles, moved to what a carpenter reads off a tape. */

import { carpenterStepM, snapLength } from '../quantity/carpenter-step';
import { roundLength, type LengthUnits } from '../quantity/length';
import type { Axis } from '../room/faces';
import { fromNearerEnd } from '../room/nearer-end';
import { farCorner, mapPoint } from '../room/point';
import type { Point, Project, Room } from '../room/project';
import { referencePlace } from '../room/seats';
import { isInTheOpen } from '../room/space';
import { directionFrom } from './direction';
import { degreesOutside } from './judge';
import type { Channel } from './layouts';
import { facesOf, nearestFace } from '../scene/faces';

/**
 * `at` on the carpenter's step of `units`, 5 mm or 1/4 in, measured from the nearer wall; how far it is
 * before its surface too, but where `depthM`, the stated depth of its box, says that. Axes in `kept` stay.
 */
export function onTape(
  room: Room,
  at: Point,
  units: LengthUnits,
  depthM?: number,
  kept: readonly Axis[] = [],
): Point {
  const stepM = carpenterStepM(units);
  const far = farCorner(room.size);
  const face = nearestFace(facesOf(room), at);
  return mapPoint(at, (value, axis) => {
    if (kept.includes(axis)) return value;
    if (face?.axis !== axis) return fromNearerEnd(value, far[axis], far[axis], stepM);
    const beforeM = Math.abs(value - face.at);
    if (beforeM === 0 || (depthM !== undefined && Math.abs(beforeM - depthM) < stepM)) return value;
    return roundLength(face.at + Math.sign(value - face.at) * snapLength(beforeM, stepM));
  });
}

/** `onTape` where that lies in the open and no farther outside the channel's window, else the exact place. */
export function onTapeInWindow(
  project: Project,
  channel: Channel,
  exact: Point,
  units: LengthUnits,
  depthM?: number,
): Point {
  const ears = referencePlace(project)?.position;
  if (!ears) return exact;
  const place = onTape(project.room, exact, units, depthM);
  const outside = (at: Point): number => degreesOutside(directionFrom(ears, at), channel);
  const isRight = isInTheOpen(place, project.room) && outside(place) <= outside(exact);
  return isRight ? place : exact;
}
