/** Where each loudspeaker looks, and how far off its axis each seat lies. */

import { degrees } from '../quantity/angle';
import { cross, dot, minus } from '../room/point';
import type { PlacedSpeaker, Point, Project } from '../room/project';
import { referencePlace, seatsOf, type ListeningPlace } from '../room/seats';
import { speakerBox } from './box';
import { directionVector } from './direction';

export interface OffAxis {
  readonly row: string;
  /** Null in the middle of the row, between two seats. */
  readonly seat: number | null;
  /** Degrees beside the axis, positive to the left as the loudspeaker looks, -180 to 180. */
  readonly horizontalDeg: number;
  /** Degrees above the axis, -90 to 90. */
  readonly verticalDeg: number;
  /** Angle between the axis and the seat, 0 to 180 degrees. */
  readonly offAxisDeg: number;
}

/**
 * Unit vector along which the baffle looks: as the file says. Where it says nothing, out of its wall for
 * one that is built in, which cannot turn, else at the reference place; there too where the file names
 * a seat that is not there. Along the room where there is no seat at all.
 */
export function aimVector(project: Project, speaker: PlacedSpeaker): Point {
  const { position, aim, mount } = speaker;
  if (!aim && mount === 'in-wall') {
    const { axis, looks } = speakerBox(project, speaker);
    return [axis === 0 ? looks : 0, axis === 1 ? looks : 0, axis === 2 ? looks : 0];
  }
  if (aim && 'azimuthDeg' in aim) return directionVector(aim.azimuthDeg, aim.elevationDeg);
  const named = aim
    ? seatsOf(project).find(({ row, seat }) => row === aim.seat.row && seat === aim.seat.seat)
    : undefined;
  const ears = (named ?? referencePlace(project))?.position;
  const towards = ears && unit(minus(ears, position));
  return towards ?? [0, 1, 0];
}

/** Every place from the axis of one loudspeaker, all seats where none are named; on the axis itself all are 0. */
export function coverage(
  project: Project,
  speaker: PlacedSpeaker,
  places: readonly ListeningPlace[] = seatsOf(project),
): readonly OffAxis[] {
  const axis = aimVector(project, speaker);
  // Straight up or down, the left of the axis is taken to be that of the room.
  const left = unit([axis[1], -axis[0], 0]) ?? [-1, 0, 0];
  const up = cross(left, axis);
  return places.map(({ row, seat, position }): OffAxis => {
    const way = unit(minus(position, speaker.position)) ?? axis;
    const [ahead, beside, above] = [dot(way, axis), dot(way, left), dot(way, up)];
    return {
      row,
      seat,
      horizontalDeg: degrees(Math.atan2(beside, ahead)),
      verticalDeg: degrees(Math.atan2(above, Math.hypot(ahead, beside))),
      offAxisDeg: degrees(Math.acos(Math.min(1, Math.max(-1, ahead)))),
    };
  });
}

function unit(at: Point): Point | null {
  const length = Math.hypot(...at);
  return length < 1e-9 ? null : [at[0] / length, at[1] / length, at[2] / length];
}
