/** The room itself: its shell, what fills it, what is on its faces, and the bay that it is built into. */

import { z } from 'zod';
import { DEFAULT_FINISHES, DEFAULT_SOLID_FINISH } from '../defaults';
import { HINGES, PATCH_KINDS, SIDES, SOLID_KINDS, SWINGS, type Face } from '../kinds';
import { MOST_PATCHES, SIZE_LIMITS_M } from '../limits';
import { choice, coordinate, group, id, list, metres, number, point, says, text } from './fields';
import type { Known } from './known';

const size = group({
  width: metres(...SIZE_LIMITS_M.width),
  length: metres(...SIZE_LIMITS_M.length),
  height: metres(...SIZE_LIMITS_M.height),
});

/** Finished inner size of the shell in metres: width along x, length along y, height along z. */
export type ShellSize = Known<z.output<typeof size>>;

const bay = group({
  largest: size,
  least: size,
  /** Step in which the carpenter can set a lining, m. */
  stepM: metres(0.001, 0.5),
  /** Sides that stay as they are. */
  fixed: list(choice(SIDES), 3).default([]),
  /** Least floor area, m2. */
  leastFloorM2: number('an area in square metres', 0, 900).default(0),
}).refine(
  ({ largest, least }) =>
    least.width <= largest.width &&
    least.length <= largest.length &&
    least.height <= largest.height,
  { error: 'must have no side of least above the same side of largest.' },
);

/** What can be built: the limits of the bay that the finished room has to stay within, m. */
export type Bay = Known<z.output<typeof bay>>;

const solid = group({
  id: id(),
  kind: choice(SOLID_KINDS),
  min: point(),
  max: point(),
  /** Finish id of its exposed sides. */
  finish: id().default(DEFAULT_SOLID_FINISH),
}).refine(({ min, max }) => min.every((low, axis) => low < (max[axis] ?? low)), {
  error: 'must have every part of min below the same part of max.',
});

/** A box that fills part of the shell, corners in metres. */
export type Solid = Known<z.output<typeof solid>>;

const patch = group({
  id: id(),
  kind: choice(PATCH_KINDS).default('other'),
  /** A shell face, or `solid-id:face`. */
  face: text(80),
  rect: z
    .tuple(
      [coordinate(), coordinate(), coordinate(), coordinate()],
      says('[u0, v0, u1, v1] in metres'),
    )
    .refine(
      ([u0, v0, u1, v1]) => u0 < u1 && v0 < v1,
      says('[u0, v0, u1, v1] with u0 below u1 and v0 below v1'),
    ),
  finish: id(),
  /** Of a door; at the nearer end of its wall where it is not given. */
  hinge: choice(HINGES).exactOptional(),
  /** Of a door; into the room where it is not given. */
  swing: choice(SWINGS).exactOptional(),
});

/** A rectangle of another finish on a face: [u0, v0, u1, v1] in metres along the face's two axes. */
export type Patch = Known<z.output<typeof patch>>;

const finishOf = (face: Face) => id().default(DEFAULT_FINISHES[face]);

export const room = group({
  size,
  solids: list(solid, 60).default([]),
  /** Finish id of each face. */
  finishes: group({
    front: finishOf('front'),
    back: finishOf('back'),
    left: finishOf('left'),
    right: finishOf('right'),
    floor: finishOf('floor'),
    ceiling: finishOf('ceiling'),
  }).prefault({}),
  patches: list(patch, MOST_PATCHES).default([]),
  /** Absent until the person has said what the bay allows. */
  bay: bay.exactOptional(),
});

export type Room = Known<z.output<typeof room>>;
