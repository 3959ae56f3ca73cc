/**
 * Where a channel goes at first: at its nominal angle on the wall, behind the picture where that lets
 * sound through, else just below or above it.
 */

import { bodiesOf } from '../scene/bodies';
import type { LengthUnits } from '../quantity/length';
import type { PlacedSpeaker, Project } from '../room/project';
import { isBeforePicture, placesBesidePicture } from './beside-picture';
import type { Channel } from './layouts';
import { nominalPlace } from './nominal-place';
import { onTapeInWindow } from './on-tape';

export type FirstPlace = Pick<PlacedSpeaker, 'channel' | 'position' | 'mount'>;

/** Null where no angle can be set out, or the picture leaves no place. */
export function firstPlace(
  project: Project,
  channel: Channel,
  units: LengthUnits,
  own?: PlacedSpeaker,
): FirstPlace | null {
  const { label } = channel;
  const depthM = own?.boxM?.[2];
  const exact = nominalPlace(project, channel, depthM);
  if (!exact) return null;
  const position = onTapeInWindow(project, channel, exact, units, depthM);
  const held = own?.mount === undefined ? {} : { mount: 'on-wall' as const };
  if (!isBeforePicture(project, position)) return { channel: label, position, ...held };
  if (project.screen.soundThrough) return { channel: label, position, mount: 'behind-screen' };
  const [beside] = placesBesidePicture(project, channel, own, bodiesOf(project), [], units);
  return beside ? { channel: label, position: beside.position, mount: 'on-wall' } : null;
}

/** First places for all of the channels that have one. */
export const firstPlaces = (
  project: Project,
  channels: readonly Channel[],
  units: LengthUnits,
): readonly FirstPlace[] =>
  channels.flatMap((channel) => firstPlace(project, channel, units) ?? []);
