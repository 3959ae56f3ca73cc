/** Degrees and radians, and the wrap of an azimuth into -180 (excluded) to 180 (included). */

export const degrees = (radians: number): number => (radians * 180) / Math.PI;
export const radians = (angleDeg: number): number => (angleDeg * Math.PI) / 180;

/** The same direction as an angle in degrees above -180 and up to 180. */
export function wrapDeg(angleDeg: number): number {
  const turned = ((angleDeg % 360) + 360) % 360;
  return turned > 180 ? turned - 360 : turned;
}
