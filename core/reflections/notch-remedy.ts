/** What moves a boundary notch out of the way: another distance to the face, or a very thick absorber. */

import { AXES } from '../room/faces';
import { farCorner } from '../room/point';
import type { Point, ShellSize } from '../room/project';
import type { FaceNotch } from './boundary';
import { practice } from '../room/practice/practice';

/** Where a notch in the bass matters most, Hz. */
export const NOTCH_BAND_HZ: readonly [number, number] = practice('notch-band');

export interface NotchRemedy {
  /** At this distance to the face, or nearer, the notch lies above the band, m. */
  readonly closerThanM: number;
  /** At this distance or farther it lies below the band, m; null where the room is too small. */
  readonly fartherThanM: number | null;
  /** Whichever of the two is the shorter way from where the source stands, m. */
  readonly nearestM: number;
  /**
   * A quarter wave at the notch, m: the order of magnitude of the porous layer that takes it away. Usual
   * panels are a small part of that and do little.
   */
  readonly layerM: number;
}

/**
 * Distances to the face of `notch` that move it out of `bandHz`, the source moved along the normal of the
 * face and the seat staying where it is. Null where the notch lies outside the band as it is. The places
 * with one path difference 2a are a hyperbola about the seat and its image, at distance b from the face:
 * d = a sqrt(1 + l^2 / (b^2 - a^2)) at a sideways distance l, which far away on axis is c / (4 f).
 */
export function notchRemedy(
  notch: FaceNotch,
  source: Point,
  receiver: Point,
  size: ShellSize,
  speedMS: number,
  bandHz: readonly [number, number] = NOTCH_BAND_HZ,
): NotchRemedy | null {
  const { notchHz, fromFaceM, hit } = notch;
  if (notchHz === null || notchHz < bandHz[0] || notchHz > bandHz[1]) return null;
  const seatM = Math.abs(receiver[hit.axis] - hit.atM);
  const sidewaysM = Math.hypot(
    ...AXES.filter((axis) => axis !== hit.axis).map((axis) => receiver[axis] - source[axis]),
  );
  const closerThanM = distanceForNotch(bandHz[1], seatM, sidewaysM, speedMS);
  const farther = distanceForNotch(bandHz[0], seatM, sidewaysM, speedMS);
  if (closerThanM === null) return null;
  const shell = farCorner(size)[hit.axis];
  // Air lies on the source's side of the face: so much of it is left before the far shell face.
  const roomM = source[hit.axis] > hit.atM ? shell - hit.atM : hit.atM;
  const fartherThanM = farther !== null && farther <= roomM ? farther : null;
  const isFartherNearer =
    fartherThanM !== null && fartherThanM - fromFaceM < fromFaceM - closerThanM;
  return {
    closerThanM,
    fartherThanM,
    nearestM: isFartherNearer ? fartherThanM : closerThanM,
    layerM: speedMS / (4 * notchHz),
  };
}

/**
 * Distance of a source from a face, m, at which its first notch lies at `frequencyHz` for a seat `seatM`
 * before the same face and `sidewaysM` along it; null where the notch stays above it at any distance.
 */
export function distanceForNotch(
  frequencyHz: number,
  seatM: number,
  sidewaysM: number,
  speedMS: number,
): number | null {
  const a = speedMS / (4 * frequencyHz);
  return a < seatM ? a * Math.sqrt(1 + sidewaysM ** 2 / (seatM ** 2 - a ** 2)) : null;
}

/** The remedy in sentences; `lengthText` is a length in the units that the person reads. */
export function notchAdvice(
  { closerThanM, fartherThanM, layerM }: NotchRemedy,
  lengthText: (lengthM: number) => string,
  bandHz: readonly [number, number] = NOTCH_BAND_HZ,
): readonly string[] {
  return [
    `Closer than ${lengthText(closerThanM)} to this face the notch lies above ${bandHz[1]} Hz.`,
    fartherThanM === null
      ? `No distance in this room brings it below ${bandHz[0]} Hz.`
      : `Farther than ${lengthText(fartherThanM)} it lies below ${bandHz[0]} Hz.`,
    `An absorber that takes it away is of the order of a quarter wave thick, ${lengthText(layerM)}; usual panels do little here.`,
  ];
}
