/** Where a loudspeaker goes by angle: the ray from the ears, stopped a little before the shell. */

import { roundLength } from '../quantity/length';
import type { Point, Project } from '../room/project';
import { referenceSeat } from '../room/seats';
import { directionVector } from './direction';
import type { Channel } from './layouts';

/** Acoustic centre in front of the wall that carries the box, m (a shallow box; common practice). */
export const WALL_CLEARANCE_M = 0.12;

/** Nominal elevation within the channel's window: level with the ears where that is allowed. */
export function nominalElevation(channel: Channel): number {
  const [low, high] = channel.elevation;
  return Math.min(Math.max(0, low), high);
}

/**
 * Place in the shell seen from the reference seat under `azimuthDeg` and `elevationDeg`, as far out
 * as the walls allow. Null where there is no seat inside the shell.
 */
export function placeAtAngle(
  project: Project,
  azimuthDeg: number,
  elevationDeg: number,
): Point | null {
  const ears = referenceSeat(project)?.position;
  if (!ears) return null;
  const { width, length, height } = project.room.size;
  const far: Point = [width, length, height];
  const ray = directionVector(azimuthDeg, elevationDeg);
  let reachM = Infinity;
  for (const axis of [0, 1, 2] as const) {
    const step = ray[axis];
    if (Math.abs(step) < 1e-9) continue;
    const edge = step > 0 ? far[axis] - WALL_CLEARANCE_M : WALL_CLEARANCE_M;
    reachM = Math.min(reachM, (edge - ears[axis]) / step);
  }
  if (!(reachM > 0) || !Number.isFinite(reachM)) return null;
  return [
    roundLength(ears[0] + ray[0] * reachM),
    roundLength(ears[1] + ray[1] * reachM),
    roundLength(ears[2] + ray[2] * reachM),
  ];
}

/** The channel's nominal place. */
export function nominalPlace(project: Project, channel: Channel): Point | null {
  return placeAtAngle(project, channel.nominalAzimuth, nominalElevation(channel));
}
