/** Angles under which a picture is seen, and the distances that go with them. Metres and degrees. */

import { degrees, radians } from '../quantity/angle';
import type { ScreenRect } from '../room/screen';
import type { Point } from '../room/project';

/** Horizontal angle at the eye between the left and the right edge of a picture on y = 0, degrees. */
export function viewingAngleDeg([x, y]: Point, { leftX, rightX }: ScreenRect): number {
  return degrees(Math.atan2(rightX - x, y) - Math.atan2(leftX - x, y));
}

/** Angle from level up to the top of the picture, in the upright plane through its middle, degrees. */
export function topAngleDeg([x, y, z]: Point, { leftX, rightX, topZ }: ScreenRect): number {
  return degrees(Math.atan2(topZ - z, Math.hypot((leftX + rightX) / 2 - x, y)));
}

/** Distance on the axis at which a picture `widthM` wide fills `angleDeg`: d = w / (2 tan(a/2)). */
export const distanceForAngleM = (widthM: number, angleDeg: number): number =>
  widthM / (2 * Math.tan(radians(angleDeg) / 2));

/** Horizontal angle on the axis: a = 2 atan(w / (2 d)), degrees. */
export const angleAtDistanceDeg = (widthM: number, distanceM: number): number =>
  degrees(2 * Math.atan(widthM / (2 * distanceM)));

/**
 * Where a picture fills a given angle, in plan: the arc of a circle through both of its edges (the
 * inscribed angle is alike everywhere on it). `centre` is in front of the picture for less than 90
 * degrees, on it for 90, behind it for more.
 */
export function equalAngleCircle(
  { leftX, rightX }: ScreenRect,
  angleDeg: number,
): { readonly centre: readonly [x: number, y: number]; readonly radiusM: number } {
  const widthM = rightX - leftX;
  const angle = radians(angleDeg);
  return {
    centre: [(leftX + rightX) / 2, widthM / (2 * Math.tan(angle))],
    radiusM: widthM / (2 * Math.sin(angle)),
  };
}

/** Pixels that a degree in the middle of the picture holds, for an eye on its axis. */
export const pixelsPerDegree = (pixels: number, widthM: number, distanceM: number): number =>
  (pixels / widthM) * distanceM * radians(1);

/** Distance at which a line of the picture fills one minute of arc, in picture heights (BT.500). */
export const minuteDistanceInHeights = (lines: number): number =>
  1 / (lines * Math.tan(radians(1 / 60)));
