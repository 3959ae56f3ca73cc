/** Moves of a loudspeaker that a finding may propose: to a place that can be built, and what is left there. */

import type { Edit } from '../room/edits';
import type { PlacedSpeaker, Point } from '../room/project';
import { isInTheOpen } from '../room/space';
import { isBeforePicture } from '../speakers/beside-picture';
import { defaultMount, speakerBox } from '../speakers/box';
import { clearSpeakerPlace } from '../speakers/clear-speaker-place';
import { directionFrom, type Direction } from '../speakers/direction';
import { hidesPicture } from '../scene/hidden-picture';
import { degreesOutside, placedOf } from '../speakers/judge';
import type { Channel } from '../speakers/layouts';
import { bodiesOf } from '../scene/bodies';
import { peopleOf } from '../scene/people';
import { isFree } from '../speakers/obstacles';
import { onTapeInWindow } from '../speakers/on-tape';
import type { FindingContext } from './context';

export interface Move {
  readonly edit: Edit;
  readonly position: Point;
  readonly direction: Direction;
  /** Degrees outside the window there, azimuth and elevation together. */
  readonly outsideDeg: number;
}

/**
 * The move of `speaker` to `at`, or to the nearest clear place along the same surface. Never onto a
 * picture that lets no sound through, nor into anything else. Null where no such place is near.
 */
export function moveTo(
  context: FindingContext,
  channel: Channel,
  speaker: PlacedSpeaker,
  at: Point,
): Move | null {
  const { project, speakers, measures } = context;
  const ears = speakers.listening;
  if (!ears || !isInTheOpen(at, project.room)) return null;
  const people = peopleOf(project);
  const bodies = bodiesOf(project);
  const others = placedOf(project, speakers.layout)
    .filter((other) => other.channel !== speaker.channel)
    .map((other) => speakerBox(project, other));
  const held = (position: Point): PlacedSpeaker => {
    const { mount: before, ...rest } = { mount: undefined, ...speaker };
    if (project.screen.soundThrough && isBeforePicture(project, position))
      return { ...rest, position, mount: 'behind-screen' };
    // What the nearest surface carries by itself need not be said.
    return before === undefined
      ? { ...rest, position }
      : { ...rest, position, mount: defaultMount(project, position) };
  };
  const isClear = (there: PlacedSpeaker): boolean => {
    const box = speakerBox(project, there);
    if (!isFree(box, project, bodies, others)) return false;
    return (
      box.mount === 'behind-screen' ||
      box.inRoom === null ||
      !hidesPicture(box.inRoom, project, people)
    );
  };
  const taped = (place: Point): PlacedSpeaker =>
    held(onTapeInWindow(project, channel, place, measures.units, speaker.boxM?.[2]));
  const clearAt = (place: Point): PlacedSpeaker | undefined =>
    [taped(place), held(place)].find(isClear);
  let there = clearAt(at);
  if (!there) {
    const near = clearSpeakerPlace(project, held(at), channel, bodies, others);
    there = near ? clearAt(near) : undefined;
    if (!there) return null;
  }
  const direction = directionFrom(ears, there.position);
  return {
    edit: {
      kind: 'speaker',
      channel: speaker.channel,
      position: there.position,
      ...(there.mount === undefined ? {} : { mount: there.mount }),
    },
    position: there.position,
    direction,
    outsideDeg: degreesOutside(direction, channel),
  };
}
