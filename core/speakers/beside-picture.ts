/**
 * Places on the front wall just below and just above a picture that lets no sound through: the nearest
 * that a loudspeaker can come to an angle that the picture covers.
 */

import { radians } from '../quantity/angle';
import { roundLength, type LengthUnits } from '../quantity/length';
import { mapPoint } from '../room/point';
import type { PlacedSpeaker, Point, Project } from '../room/project';
import { screenRect } from '../room/screen';
import { referencePlace } from '../room/seats';
import { isInTheOpen } from '../room/space';
import type { Body } from '../scene/bodies';
import { hidesPicture } from '../scene/hidden-picture';
import { peopleOf } from '../scene/people';
import { isOnPicture, speakerBox, USUAL_BOX_M, type SpeakerBox } from './box';
import { directionFrom } from './direction';
import { azimuthOff } from './judge';
import type { Channel } from './layouts';
import { WALL_CLEARANCE_M } from './nominal-place';
import { isFree } from './obstacles';
import { onTape } from './on-tape';
import { practice } from '../room/practice/practice';

export interface BesidePicture {
  readonly side: 'below' | 'above';
  readonly position: Point;
  /** At the reference place, degrees. */
  readonly elevationDeg: number;
}

/** Gap between the box and the picture for a frame, m. */
const GAP_M = practice('picture-frame-gap');
/** How far from the picture's edge, and how finely, it is looked for, m. */
const REACH_M = 0.6;
const STEP_M = 0.02;
/** A place on the front wall is no farther before it than this, m. */
const AT_WALL_M = 0.4;

/** True where a box at the place would stand before or in the picture on the front wall. */
export const isBeforePicture = (project: Project, position: Point): boolean =>
  position[1] < AT_WALL_M && isOnPicture(project, position);

/**
 * Clear places for the channel under its nominal azimuth, the one nearest to ear height first. `own` is
 * the channel as it is placed now, `others` the boxes of the other loudspeakers.
 */
export function placesBesidePicture(
  project: Project,
  channel: Channel,
  own: PlacedSpeaker | undefined,
  bodies: readonly Body[],
  others: readonly SpeakerBox[],
  units: LengthUnits,
): readonly BesidePicture[] {
  const ears = referencePlace(project)?.position;
  const [, heightM, depthM] = own?.boxM ?? USUAL_BOX_M;
  const y = own?.boxM ? depthM : WALL_CLEARANCE_M;
  if (!ears || ears[1] <= y) return [];
  const x = ears[0] - Math.tan(radians(channel.nominalAzimuth)) * (ears[1] - y);
  const { bottomZ, topZ } = screenRect(project);
  const people = peopleOf(project);
  const from = { below: bottomZ - heightM / 2, above: topZ + heightM / 2 };
  return (['below', 'above'] as const)
    .flatMap((side): readonly BesidePicture[] => {
      for (let gap = GAP_M; gap < REACH_M; gap += STEP_M) {
        const z = from[side] + (side === 'below' ? -gap : gap);
        const position = onTape(
          project.room,
          mapPoint([x, y, z], roundLength),
          units,
          own?.boxM?.[2],
        );
        const fits = z - heightM / 2 >= 0 && z + heightM / 2 <= project.room.size.height;
        if (!fits || !isInTheOpen(position, project.room)) return [];
        const box = speakerBox(project, {
          ...own,
          channel: channel.label,
          position,
          mount: 'on-wall',
        });
        if (!isFree(box, project, bodies, others)) continue;
        if (box.inRoom && hidesPicture(box.inRoom, project, people)) continue;
        const { azimuthDeg, elevationDeg } = directionFrom(ears, position);
        return azimuthOff(azimuthDeg, channel) === 0 ? [{ side, position, elevationDeg }] : [];
      }
      return [];
    })
    .sort((a, b) => Math.abs(a.elevationDeg) - Math.abs(b.elevationDeg));
}
