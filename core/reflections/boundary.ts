/**
 * Boundary interference of one loudspeaker at one seat: what the near faces return cancels the direct
 * sound where the paths part by half a wave. A rigid face returns the pressure in phase, so the first
 * notch of a face lies at c / (2 x path difference); for a loudspeaker at distance d before the wall
 * behind it, far away on axis, at c / (4 d). Kuttruff, Room Acoustics (from memory); Allison, J. Audio
 * Eng. Soc. 22 (1974) 314 (from memory).
 *
 * Coefficients are those of the octaves 125, 250 and 500 Hz, held below and above, between them by the
 * logarithm of frequency; all of a face's loss is taken as loss of level, none as shift of phase. What a
 * room does below its Schroeder frequency is the sum of its modes: here are the near faces alone.
 */

import type { OctaveHz } from '../quantity/bands';
import { absorptionAt } from '../room/finishes';
import type { Axis } from '../room/faces';
import type { Point } from '../room/project';
import {
  distanceM,
  LEAST_DIRECT_M,
  reflectionsBetween,
  type Hit,
  type ReflectingRoom,
} from './image-sources';
import { LEAST_REFLECTED, type FinishLookup } from './reflection-level';
import { mirrored } from './mirrors';

/** No notch is told deeper than this, dB: a full cancellation is not found in rooms. */
export const DEEPEST_DB = -60;

/** Where the interference is looked at: a source and a seat in a prepared room. */
export interface BoundaryInput {
  readonly reflecting: ReflectingRoom;
  readonly source: Point;
  readonly receiver: Point;
  readonly speedMS: number;
  readonly finish: FinishLookup;
}

/** The notch that one face makes. */
export interface FaceNotch {
  readonly hit: Hit;
  /** Of the source before the plane of the face, m. */
  readonly fromFaceM: number;
  /** Longer than the direct path by this, m. */
  readonly differenceM: number;
  /** First notch; null where the paths are equally long (source in the face). */
  readonly notchHz: number | null;
  /** Pressure of the reflection at the notch against the direct sound, 0 to 1. */
  readonly ratio: number;
  /** 20 lg(1 - ratio), at least `DEEPEST_DB`: this face alone against the free field. */
  readonly depthDb: number;
}

/** The visible first-order reflection of a face, with what it returns. */
interface NearFace {
  readonly hit: Hit;
  readonly fromFaceM: number;
  readonly differenceM: number;
  readonly spreading: number;
  readonly returned: (frequencyHz: number) => number;
}

/**
 * The first notch of every face with a visible reflection, nearest path first; null where source or
 * receiver is outside the free space. Faces without a figure in any of the octaves count as hard, and a
 * fitting in the direct path is no matter at these frequencies.
 */
export function faceNotches(input: BoundaryInput): readonly FaceNotch[] | null {
  const faces = nearFaces(input);
  if (!faces) return null;
  return faces.map(({ hit, fromFaceM, differenceM, spreading, returned }): FaceNotch => {
    const notchHz = differenceM > 1e-9 ? input.speedMS / (2 * differenceM) : null;
    const ratio = spreading * returned(notchHz ?? LOWEST_FIGURE_HZ);
    return { hit, fromFaceM, differenceM, notchHz, ratio, depthDb: notchDepthDb(ratio) };
  });
}

function nearFaces({
  reflecting,
  source,
  receiver,
  speedMS,
  finish,
}: BoundaryInput): readonly NearFace[] | null {
  const found = reflectionsBetween(reflecting, source, receiver, speedMS);
  if (!found) return null;
  const directM = found.direct.lengthM;
  return found.paths
    .map(({ hits: [hit], lengthM }): NearFace => ({
      hit,
      fromFaceM: Math.abs(source[hit.axis] - hit.atM),
      differenceM: Math.max(0, lengthM - directM),
      spreading: spreadingOf(directM, lengthM),
      returned: pressureReturned(hit.finish, finish),
    }))
    .sort((a, b) => a.differenceM - b.differenceM);
}

/** Pressure by distance alone against the direct sound, 0 to 1. */
function spreadingOf(directM: number, lengthM: number): number {
  const nearM = Math.max(directM, LEAST_DIRECT_M);
  return nearM / Math.max(lengthM, nearM);
}

/** Depth in dB of the notch of a reflection of this pressure against the direct sound. */
export function notchDepthDb(ratio: number): number {
  return Math.max(DEEPEST_DB, 20 * Math.log10(Math.max(0, 1 - ratio)));
}

/** First notch in Hz of the wall `fromWallM` behind a loudspeaker, heard far away on its axis. */
export function quarterWaveHz(fromWallM: number, speedMS: number): number {
  return speedMS / (4 * fromWallM);
}

const FIGURES_HZ: readonly OctaveHz[] = [125, 250, 500];
const LOWEST_FIGURE_HZ = 125;

/** sqrt(1 - coefficient) as a function of frequency; what has no figure takes that of the next octave. */
function pressureReturned(id: string, finish: FinishLookup): (frequencyHz: number) => number {
  const covering = finish(id);
  const known = FIGURES_HZ.flatMap((hz) => {
    const coefficient = covering ? absorptionAt(covering, hz) : null;
    return coefficient === null ? [] : [{ hz, coefficient }];
  });
  return (frequencyHz) => {
    const above = known.findIndex(({ hz }) => hz >= frequencyHz);
    const high = above === -1 ? known.at(-1) : known[above];
    const low = above > 0 ? known[above - 1] : high;
    if (!high || !low) return 1;
    const share =
      high.hz === low.hz ? 0 : Math.log(frequencyHz / low.hz) / Math.log(high.hz / low.hz);
    const coefficient = low.coefficient + share * (high.coefficient - low.coefficient);
    return Math.sqrt(Math.min(1, Math.max(LEAST_REFLECTED, 1 - coefficient)));
  };
}

export interface CurveOptions {
  /** Faces at most per image: 2 where it is not given; 3 for all eight sources of a corner. */
  readonly order?: 1 | 2 | 3;
  /** Only these of the near faces take part; all where it is not given. */
  readonly only?: readonly string[];
  readonly fromHz?: number;
  readonly toHz?: number;
  readonly stepsPerOctave?: number;
}

export interface BoundaryCurve {
  /** The near faces along each axis that take part, where some are visible. */
  readonly faces: readonly Hit[];
  readonly frequenciesHz: readonly number[];
  /** Level re the direct sound alone (free field) at each frequency, dB. */
  readonly levelsDb: readonly number[];
}

/** Faces across the room are taken together where neither is farther than this many times the other. */
const ALIKE = 1.05;

/**
 * Complex sum of the direct sound and the images in the nearest visible face along each axis (usually
 * floor, wall behind, side wall; both side walls halfway between them), with their products up to `order`, from 20 to 500 Hz in steps of
 * 1/24 octave where nothing else is given. Products are taken as though the faces met in an edge, whole.
 * Null where source or receiver is outside the free space.
 */
export function boundaryCurve(
  input: BoundaryInput,
  { order = 2, only, fromHz = 20, toHz = 500, stepsPerOctave = 24 }: CurveOptions = {},
): BoundaryCurve | null {
  const near = nearFaces(input);
  if (!near) return null;
  const faces = ([0, 1, 2] as Axis[]).flatMap((axis) => {
    const along = near.filter(({ hit }) => hit.axis === axis);
    const nearestM = Math.min(...along.map(({ fromFaceM }) => fromFaceM));
    return along.filter(
      ({ hit, fromFaceM }) =>
        fromFaceM <= ALIKE * nearestM + 1e-9 && (only?.includes(hit.face) ?? true),
    );
  });
  const { source, receiver, speedMS } = input;
  const directM = distanceM(source, receiver);
  const images = subsets(faces)
    .filter((set) => set.length > 0 && set.length <= order)
    .map((set) => {
      const image = set.reduce<Point>((at, { hit }) => mirrored(at, hit), source);
      const lengthM = distanceM(image, receiver);
      return { set, laterM: lengthM - directM, spreading: spreadingOf(directM, lengthM) };
    });
  const steps = Math.floor(Math.log2(toHz / fromHz) * stepsPerOctave + 1e-9);
  const frequenciesHz = Array.from(
    { length: steps + 1 },
    (_, i) => fromHz * 2 ** (i / stepsPerOctave),
  );
  const levelsDb = frequenciesHz.map((hz) => {
    let [real, imaginary] = [1, 0];
    for (const { set, laterM, spreading } of images) {
      const pressure = set.reduce((p, { returned }) => p * returned(hz), spreading);
      const phase = (2 * Math.PI * hz * laterM) / speedMS;
      real += pressure * Math.cos(phase);
      imaginary -= pressure * Math.sin(phase);
    }
    return Math.max(DEEPEST_DB, 20 * Math.log10(Math.hypot(real, imaginary)));
  });
  return { faces: faces.map(({ hit }) => hit), frequenciesHz, levelsDb };
}

function subsets<T>(list: readonly T[]): readonly (readonly T[])[] {
  return list.reduce<readonly (readonly T[])[]>(
    (sets, item) => [...sets, ...sets.map((set) => [...set, item])],
    [[]],
  );
}
