/** The nearest place along its surface where a loudspeaker's box is in nothing's way. */

import { roundLength } from '../quantity/length';
import { faceAxes, FACES_BY_AXIS, type Axis } from '../room/faces';
import { mapPoint } from '../room/point';
import type { PlacedSpeaker, Point, Project } from '../room/project';
import { referencePlace } from '../room/seats';
import { isInTheOpen } from '../room/space';
import type { Body } from '../scene/bodies';
import { clearPlace, type Candidate } from '../scene/clear-place';
import { hidesPicture } from '../scene/hidden-picture';
import { peopleOf } from '../scene/people';
import { speakerBox, type SpeakerBox } from './box';
import { directionFrom } from './direction';
import { degreesOutside } from './judge';
import type { Channel } from './layouts';
import { isFree } from './obstacles';
import { practice } from '../room/practice/practice';

/** How far and how finely it looks, m. */
const REACH_M = 1.2;
const STEP_M = 0.1;
/** A degree outside the window weighs as much as this way along the wall, m. */
const DEGREE_M = practice('degree-along-wall');

/**
 * The place nearest to the present one, along the surface that carries it (the floor for a stand),
 * that is clear of everything; of two equally near the one within the window. Null where none is.
 */
export function clearSpeakerPlace(
  project: Project,
  speaker: PlacedSpeaker,
  channel: Channel | undefined,
  bodies: readonly Body[],
  others: readonly SpeakerBox[],
): Point | null {
  const box = speakerBox(project, speaker);
  const [u, v] = box.face ? faceAxes(box.face.side) : faceAxes(FACES_BY_AXIS[2]?.[0] ?? 'floor');
  const ears = referencePlace(project)?.position;
  const steps = Math.round(REACH_M / STEP_M);
  const places: Candidate[] = [];
  for (let i = -steps; i <= steps; i++)
    for (let j = -steps; j <= steps; j++) {
      const place = moved(speaker.position, u, i * STEP_M, v, j * STEP_M);
      const off = ears && channel ? degreesOutside(directionFrom(ears, place), channel) : 0;
      places.push({ place, wayM: Math.hypot(i, j) * STEP_M + off * DEGREE_M });
    }
  const people = peopleOf(project);
  return clearPlace(places, (place) => {
    if (!isInTheOpen(place, project.room)) return false;
    const by = mapPoint(place, (at, n) => at - speaker.position[n]);
    if (!isFree(shifted(box, by), project, bodies, others)) return false;
    // Where it stands decides what carries it: look again with the box of the new place.
    const there = speakerBox(project, { ...speaker, position: place });
    if (!isFree(there, project, bodies, others)) return false;
    const { inRoom, mount } = there;
    return mount === 'behind-screen' || !inRoom || !hidesPicture(inRoom, project, people);
  });
}

function moved(at: Point, u: Axis, du: number, v: Axis, dv: number): Point {
  return mapPoint(at, (value, n) => roundLength(value + (n === u ? du : 0) + (n === v ? dv : 0)));
}

function shifted(box: SpeakerBox, by: Point): SpeakerBox {
  const move = (at: Point): Point => mapPoint(at, (value, n) => value + by[n]);
  const { cabinet, inRoom } = box;
  return {
    ...box,
    cabinet: { min: move(cabinet.min), max: move(cabinet.max) },
    inRoom: inRoom && { min: move(inRoom.min), max: move(inRoom.max) },
  };
}
