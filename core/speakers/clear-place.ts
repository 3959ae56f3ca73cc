/** The nearest place along its surface where a loudspeaker's box is in nothing's way. */

import { roundLength } from '../quantity/length';
import { faceAxes, FACES_BY_AXIS, type Axis } from '../room/faces';
import { mapPoint } from '../room/point';
import type { PlacedSpeaker, Point, Project } from '../room/project';
import { referencePlace, seatsOf } from '../room/seats';
import { isInTheOpen } from '../room/space';
import { speakerBox, type SpeakerBox } from './box';
import { directionFrom } from './direction';
import { degreesOutside } from './judge';
import type { Channel } from './layouts';
import { hidesPicture } from './hidden-picture';
import { isFree, type Obstacle } from './obstacles';

/** How far and how finely it looks, m. */
const REACH_M = 1.2;
const STEP_M = 0.1;
/** A degree outside the window weighs as much as this way along the wall, m (our own convention). */
const DEGREE_M = 0.05;

/**
 * The place nearest to the present one, along the surface that carries it (the floor for a stand),
 * that is clear of everything; of two equally near the one within the window. Null where none is.
 */
export function clearPlace(
  project: Project,
  speaker: PlacedSpeaker,
  channel: Channel | undefined,
  obstacles: readonly Obstacle[],
  others: readonly SpeakerBox[],
): Point | null {
  const box = speakerBox(project, speaker);
  const [u, v] = box.face ? faceAxes(box.face.side) : faceAxes(FACES_BY_AXIS[2]?.[0] ?? 'floor');
  const ears = referencePlace(project)?.position;
  const steps = Math.round(REACH_M / STEP_M);
  const places: { readonly place: Point; readonly score: number }[] = [];
  for (let i = -steps; i <= steps; i++)
    for (let j = -steps; j <= steps; j++) {
      const place = moved(speaker.position, u, i * STEP_M, v, j * STEP_M);
      const off = ears && channel ? degreesOutside(directionFrom(ears, place), channel) : 0;
      places.push({ place, score: Math.hypot(i, j) * STEP_M + off * DEGREE_M });
    }
  const seats = seatsOf(project);
  places.sort((a, b) => a.score - b.score);
  for (const { place } of places) {
    if (!isInTheOpen(place, project.room)) continue;
    const by = mapPoint(place, (at, n) => at - speaker.position[n]);
    if (!isFree(shifted(box, by), project, obstacles, others, seats)) continue;
    // Where it stands decides what carries it: look again with the box of the new place.
    const there = speakerBox(project, { ...speaker, position: place });
    if (!isFree(there, project, obstacles, others, seats)) continue;
    const hides =
      there.mount !== 'behind-screen' && there.inRoom && hidesPicture(there.inRoom, project, seats);
    if (!hides) return place;
  }
  return null;
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
