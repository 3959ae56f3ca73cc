/**
 * A room that was drawn in centimetres, redrawn in inches: for a person who builds in feet, so that no
 * length of an example comes out in sixteenths. What touches keeps touching, what mirrors keeps mirroring.
 */

import { snapLength } from '../quantity/carpenter-step';
import { METRES_PER_INCH } from '../quantity/length';
import { faceAxes, patchSide, type Axis } from './faces';
import { fromNearerEnd } from './nearer-end';
import { farCorner, mapPoint, mapSides } from './point';
import type {
  Bay,
  Patch,
  PlacedSpeaker,
  Point,
  Project,
  Row,
  Screen,
  Solid,
  Subwoofer,
} from './project';
import { readBack } from './read-back';

/** Steps that places are moved to, the handiest first: half inches, down to sixteenths. */
const STEPS_M = [2, 4, 8, 16].map((parts) => METRES_PER_INCH / parts);

/**
 * `project` with the shell, the picture and the pitch of the seats in whole inches and all else in half
 * ones, or in the coarsest parts of an inch with which it still is a room that opens; as it is where there
 * are none.
 */
export function inInches(project: Project): Project {
  for (const stepM of STEPS_M) {
    const moved = onSteps(project, stepM);
    if (readBack(moved).ok) return moved;
  }
  return project;
}

function onSteps(project: Project, stepM: number): Project {
  const { room, seating, screen, projector, speakers } = project;
  const far = farCorner(room.size);
  // Twice the step, so that the middle of the room is on a step.
  const whole = (lengthM: number): number => snapLength(lengthM, 2 * stepM);
  const size = (lengthM: number): number => Math.max(snapLength(lengthM, stepM), stepM);
  const along = (axis: Axis, placeM: number): number =>
    fromNearerEnd(placeM, far[axis], whole(far[axis]), stepM);
  const place = (at: Point): Point => mapPoint(at, (value, axis) => along(axis, value));

  const solid = (was: Solid): Solid => ({ ...was, min: place(was.min), max: place(was.max) });
  const patch = (was: Patch): Patch => {
    const [u, v] = faceAxes(patchSide(was.face));
    const [u0, v0, u1, v1] = was.rect;
    return { ...was, rect: [along(u, u0), along(v, v0), along(u, u1), along(v, v1)] };
  };
  const row = (was: Row): Row => ({
    ...was,
    y: along(1, was.y),
    ...(was.x === undefined ? {} : { x: along(0, was.x) }),
    pitchM: whole(was.pitchM),
    riserM: along(2, was.riserM),
    earHeightM: size(was.earHeightM),
    eyeHeightM: size(was.eyeHeightM),
  });
  const picture = (was: Screen): Screen => ({
    ...was,
    widthM: whole(was.widthM),
    bottomM: along(2, was.bottomM),
    ...(was.centreX === undefined ? {} : { centreX: along(0, was.centreX) }),
  });
  const boxed = <T extends PlacedSpeaker | Subwoofer>(was: T): T => ({
    ...was,
    position: place(was.position),
    ...(was.boxM === undefined ? {} : { boxM: mapPoint(was.boxM, size) }),
  });
  const bay = (was: Bay): Bay => ({
    ...was,
    largest: mapSides(was.largest, whole),
    least: mapSides(was.least, whole),
    stepM: size(was.stepM),
  });

  return {
    ...project,
    room: {
      ...room,
      size: mapSides(room.size, whole),
      solids: room.solids.map(solid),
      patches: room.patches.map(patch),
      ...(room.bay === undefined ? {} : { bay: bay(room.bay) }),
    },
    seating: { ...seating, rows: seating.rows.map(row) },
    screen: picture(screen),
    ...(projector === undefined
      ? {}
      : { projector: { ...projector, position: place(projector.position) } }),
    speakers: {
      ...speakers,
      placed: speakers.placed.map(boxed),
      subwoofers: speakers.subwoofers.map(boxed),
    },
  };
}
