/** What the placer works with: the room, its seats and obstacles, and what the person allows. */

import type { LengthUnits } from '../quantity/length';
import { FACE_NORMALS, patchSide } from '../room/faces';
import { mapPoint } from '../room/point';
import { MOUNTS, type Mount, type Point, type Project } from '../room/project';
import {
  isSamePlace,
  referencePlace,
  seatsOf,
  type ListeningPlace,
  type Seat,
} from '../room/seats';
import { speakerBox, type SpeakerBox } from '../speakers/box';
import { placedOf } from '../speakers/judge';
import { layoutOf, type Layout } from '../speakers/layouts';
import { bodiesOf, type Body } from '../scene/bodies';
import { peopleOf, type Person } from '../scene/people';
import { practice } from '../room/practice/practice';

/** Usual spacing of studs, m. */
export const STUD_PITCHES_M = practice('stud-pitch');

export interface PlacerOptions {
  /**
   * Mounts that may be used; all where not given. `behind-screen` is left out where the room says that
   * its picture lets no sound through: then the picture is in the way.
   */
  readonly mounts?: readonly Mount[];
  /** Studs on centres so far apart, counted from the left corner of front and back, the front corner
   * of the sides. A cabinet hangs on a stud; what is built in goes between two. */
  readonly studPitchM?: number;
}

export interface PlacingContext {
  readonly project: Project;
  readonly layout: Layout;
  readonly reference: ListeningPlace;
  /** All seats but one that is the reference place. */
  readonly others: readonly Seat[];
  readonly bodies: readonly Body[];
  readonly people: readonly Person[];
  /** What stays where it is. */
  readonly pinned: readonly SpeakerBox[];
  readonly mounts: readonly Mount[];
  readonly studPitchM: number | null;
  /** Whose carpenter's step the places are on. */
  readonly units: LengthUnits;
}

/** Null where the layout is not known or there is no seat. */
export function placingContext(
  project: Project,
  options: PlacerOptions,
  units: LengthUnits = 'metric',
): PlacingContext | null {
  const layout = layoutOf(project.speakers.layout, project.speakers.recommendation);
  const reference = referencePlace(project);
  if (!layout || !reference) return null;
  return {
    project,
    layout,
    reference,
    others: seatsOf(project).filter((seat) => !isSamePlace(seat, reference)),
    bodies: bodiesOf(project),
    people: peopleOf(project),
    pinned: placedOf(project, layout)
      .filter((speaker) => speaker.pinned === true)
      .map((speaker) => speakerBox(project, speaker)),
    mounts: (options.mounts ?? MOUNTS).filter(
      (mount) => project.screen.soundThrough || mount !== 'behind-screen',
    ),
    studPitchM: options.studPitchM ?? null,
    units,
  };
}

/** The place moved along its wall to the nearest stud, or for a built-in one between two of them. */
export function onStuds(place: Point, face: string, mount: Mount, pitchM: number): Point {
  const along = FACE_NORMALS[patchSide(face)].axis === 0 ? 1 : 0;
  const shift = mount === 'in-wall' ? 0.5 : 0;
  const at = (Math.round(place[along] / pitchM - shift) + shift) * pitchM;
  return mapPoint(place, (value, axis) => (axis === along ? at : value));
}
