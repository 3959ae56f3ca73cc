/** Where a loudspeaker goes by angle: the ray from the ears, stopped a little before the shell. */

import { roundLength } from '../quantity/length';
import { AXES } from '../room/faces';
import { farCorner, mapPoint } from '../room/point';
import type { Point, Project, Solid } from '../room/project';
import { referencePlace } from '../room/seats';
import { isInTheOpen } from '../room/space';
import { directionVector } from './direction';
import type { Channel } from './layouts';
import { practice } from '../room/practice/practice';

/** Acoustic centre in front of the wall that carries the box, m. */
export const WALL_CLEARANCE_M = practice('wall-clearance');

/** Nominal elevation within the channel's window: level with the ears where that is allowed. */
export function nominalElevation(channel: Channel): number {
  const [low, high] = channel.elevation;
  return Math.min(Math.max(0, low), high);
}

/**
 * Place seen from the reference seat under `azimuthDeg` and `elevationDeg`, as far out as walls and
 * fittings allow for a box of `depthM`. Null where the ears are not in the open, or nearer to a face than
 * the box is deep.
 */
export function placeAtAngle(
  project: Project,
  azimuthDeg: number,
  elevationDeg: number,
  depthM = WALL_CLEARANCE_M,
): Point | null {
  const ears = referencePlace(project)?.position;
  if (!ears || !isInTheOpen(ears, project.room)) return null;
  const ray = directionVector(azimuthDeg, elevationDeg);
  const reachM = Math.min(
    toWall(ears, ray, project, depthM),
    ...project.room.solids.map((solid) => toSolid(ears, ray, solid, depthM)),
  );
  if (!(reachM > LEAST_REACH_M) || !Number.isFinite(reachM)) return null;
  return mapPoint(ears, (at, axis) => roundLength(at + ray[axis] * reachM));
}

/** A loudspeaker nearer than this to the ears is no loudspeaker place, m. */
const LEAST_REACH_M = 0.1;

/** Metres along the ray until a box against the shell's inner faces. */
function toWall(ears: Point, ray: Point, project: Project, depthM: number): number {
  const far = farCorner(project.room.size);
  const reaches = AXES.map((axis) => {
    const step = ray[axis];
    if (Math.abs(step) < 1e-9) return Infinity;
    const edge = step > 0 ? far[axis] - depthM : depthM;
    return (edge - ears[axis]) / step;
  });
  return Math.min(...reaches);
}

/** Metres along the ray until a box against the solid; infinite where the ray passes it by. */
function toSolid(ears: Point, ray: Point, solid: Solid, depthM: number): number {
  let enter = 0;
  let leave = Infinity;
  for (const axis of AXES) {
    const low = solid.min[axis] - depthM;
    const high = solid.max[axis] + depthM;
    const step = ray[axis];
    if (Math.abs(step) < 1e-9) {
      if (ears[axis] <= low || ears[axis] >= high) return Infinity;
      continue;
    }
    const [a, b] = [(low - ears[axis]) / step, (high - ears[axis]) / step];
    enter = Math.max(enter, Math.min(a, b));
    leave = Math.min(leave, Math.max(a, b));
  }
  return enter < leave ? enter : Infinity;
}

/** The channel's nominal place on the wall, whatever hangs there. */
export function nominalPlace(project: Project, channel: Channel, depthM?: number): Point | null {
  return placeAtAngle(project, channel.nominalAzimuth, nominalElevation(channel), depthM);
}
