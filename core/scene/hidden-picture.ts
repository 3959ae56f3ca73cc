/**
 * How much of the picture a box hides from the seats. A ray tells of one point; here the corners of the box
 * are cast onto the wall, since it is asked how much.
 */

import type { Project } from '../room/project';
import { screenRect } from '../room/screen';
import type { Box } from './box';
import type { Person } from './people';
import { practice } from '../room/practice/practice';

export interface HiddenPicture {
  readonly person: Person;
  /** Width or height of the hidden part, the smaller of the two, m on the picture. */
  readonly depthM: number;
}

/**
 * The seat from which `box` hides most of the picture; null where it hides nothing of it. The box's
 * corners are cast from the eyes onto the front wall, and the rectangle around them taken for its
 * shadow: a little more than the box itself.
 */
export function hiddenPicture(
  box: Box,
  project: Project,
  people: readonly Person[],
): HiddenPicture | null {
  const picture = screenRect(project);
  let worst: HiddenPicture | null = null;
  for (const person of people) {
    const eye = person.eyes;
    if (box.max[1] >= eye[1] - LEAST_AHEAD_M) continue;
    // What stays below the eye and the picture stays below every line between them.
    if (box.max[2] <= Math.min(eye[2], picture.bottomZ)) continue;
    let [left, right, low, high] = [Infinity, -Infinity, Infinity, -Infinity];
    for (const x of [box.min[0], box.max[0]])
      for (const y of [box.min[1], box.max[1]])
        for (const z of [box.min[2], box.max[2]]) {
          const stretch = eye[1] / (eye[1] - Math.max(y, 0));
          left = Math.min(left, eye[0] + (x - eye[0]) * stretch);
          right = Math.max(right, eye[0] + (x - eye[0]) * stretch);
          low = Math.min(low, eye[2] + (z - eye[2]) * stretch);
          high = Math.max(high, eye[2] + (z - eye[2]) * stretch);
        }
    const wide = Math.min(right, picture.rightX) - Math.max(left, picture.leftX);
    const tall = Math.min(high, picture.topZ) - Math.max(low, picture.bottomZ);
    const depthM = Math.min(wide, tall);
    if (depthM > (worst?.depthM ?? 0)) worst = { person, depthM };
  }
  return worst;
}

/** Less of the picture than this may be hidden from a seat, m. */
const HIDDEN_M = practice('picture-hidden');

/** True where the box hides more of the picture from one of the seats than it may. */
export const hidesPicture = (box: Box, project: Project, people: readonly Person[]): boolean =>
  (hiddenPicture(box, project, people)?.depthM ?? 0) > HIDDEN_M;

/** What stands nearer before the eyes than this is no box of this kind, m. */
const LEAST_AHEAD_M = 0.1;
