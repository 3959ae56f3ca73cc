/** Direction and distance of a place as heard from the listening position. */

import { degrees, radians } from '../quantity/angle';
import type { Point } from '../room/project';

export interface Direction {
  /** 0 straight ahead (to the screen), positive to the left, in (-180, 180]. */
  readonly azimuthDeg: number;
  /** Positive upwards, -90 to 90. */
  readonly elevationDeg: number;
  readonly distanceM: number;
}

/**
 * Direction of `place` from `ears`, the listener facing the screen (towards smaller y). Convention of
 * ITU-R BS.2051. At the ears themselves all three are 0.
 */
export function directionFrom(ears: Point, place: Point): Direction {
  const left = ears[0] - place[0];
  const ahead = ears[1] - place[1];
  const up = place[2] - ears[2];
  const level = Math.hypot(left, ahead);
  const azimuthDeg = level === 0 ? 0 : degrees(Math.atan2(left, ahead));
  return {
    azimuthDeg: azimuthDeg === -180 ? 180 : azimuthDeg,
    elevationDeg: degrees(Math.atan2(up, level)),
    distanceM: Math.hypot(level, up),
  };
}

/** Unit vector in room axes of a direction as heard from the listening position. */
export function directionVector(azimuthDeg: number, elevationDeg: number): Point {
  const [az, el] = [radians(azimuthDeg), radians(elevationDeg)];
  return [-Math.sin(az) * Math.cos(el), -Math.cos(az) * Math.cos(el), Math.sin(el)];
}
