/** What the faces near a loudspeaker and a seat do to its bass: the curve, the notches and what moves them. */

import {
  boundaryCurve,
  faceNotches,
  type BoundaryCurve,
  type FaceNotch,
} from '../reflections/boundary';
import { reflectingRoom } from '../reflections/image-sources';
import { notchRemedy, type NotchRemedy } from '../reflections/notch-remedy';
import { speedOfSoundMS } from '../air/medium';
import { finishLookup } from '../room/finishes';
import type { Point, Project } from '../room/project';

export interface NearFaces {
  readonly notches: readonly NearNotch[];
  readonly curve: BoundaryCurve;
}

export interface NearNotch extends FaceNotch {
  /** True where the face takes part in the curve. */
  readonly inCurve: boolean;
  readonly remedy: NotchRemedy | null;
}

/** Null where `source` or `ears` is outside the free space. */
export function nearFaces(project: Project, source: Point, ears: Point): NearFaces | null {
  const { room } = project;
  const speedMS = speedOfSoundMS(project.air.temperatureC);
  const input = {
    reflecting: reflectingRoom(room),
    source,
    receiver: ears,
    speedMS,
    finish: finishLookup(project),
  };
  const curve = boundaryCurve(input);
  const notches = faceNotches(input);
  if (!curve || !notches) return null;
  return {
    curve,
    notches: notches.map((notch) => ({
      ...notch,
      inCurve: curve.faces.some(({ face }) => face === notch.hit.face),
      remedy: notchRemedy(notch, source, ears, room.size, speedMS),
    })),
  };
}
