/**
 * The cost of a place, in degrees: what the other seats lose by it. The windows at the
 * reference seat are no part of it: they are met or there is no place.
 */

import type { Mount, Point } from '../room/project';
import { directionFrom, type Direction } from '../speakers/direction';
import { degreesOutside } from '../speakers/judge';
import type { Channel } from '../speakers/layouts';
import type { PlacingContext } from './placing-context';
import { practice } from '../room/practice/practice';

/** A decibel that one seat hears more than another counts like so many degrees. */
export const DEGREES_PER_DB = practice('degrees-per-db');
/** A degree by which a pair is uneven counts like so many degrees outside a window. */
export const UNEVEN_WEIGHT = practice('uneven-pair-weight');
/** A degree away from the nominal azimuth, where nothing else decides. */
const NOMINAL_WEIGHT = practice('nominal-azimuth-weight');

/** What a mount costs against a cabinet on the wall, degrees: more work, or floor that is taken. */
const MOUNT_COST: Readonly<Record<Mount, number>> = practice('mount-costs');

export interface Harm {
  /** Sum over the other seats of degrees outside the window. */
  readonly outsideDeg: number;
  /** Loudest minus quietest seat by distance, dB. */
  readonly spreadDb: number;
  readonly cost: number;
}

/** What a place does to the other seats. */
export function harmOf(
  context: PlacingContext,
  channel: Channel,
  position: Point,
  mount: Mount,
  direction: Direction,
): Harm {
  let outsideDeg = 0;
  let [near, far] = [direction.distanceM, direction.distanceM];
  for (const seat of context.others) {
    const heard = directionFrom(seat.position, position);
    outsideDeg += degreesOutside(heard, channel);
    near = Math.min(near, heard.distanceM);
    far = Math.max(far, heard.distanceM);
  }
  const spreadDb = 20 * Math.log10(Math.max(far, 0.01) / Math.max(near, 0.01));
  const cost =
    outsideDeg +
    DEGREES_PER_DB * spreadDb +
    MOUNT_COST[mount] +
    NOMINAL_WEIGHT * Math.abs(direction.azimuthDeg - channel.nominalAzimuth);
  return { outsideDeg, spreadDb, cost };
}

/** How uneven a left and a right loudspeaker are as the reference seat hears them, degrees. */
export function unevenDeg(left: Direction, right: Direction): number {
  const db = Math.abs(
    20 * Math.log10(Math.max(left.distanceM, 0.01) / Math.max(right.distanceM, 0.01)),
  );
  return (
    Math.abs(left.azimuthDeg + right.azimuthDeg) +
    Math.abs(left.elevationDeg - right.elevationDeg) +
    DEGREES_PER_DB * db
  );
}
