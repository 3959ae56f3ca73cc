/** Loudspeakers and subwoofers. */

import { z } from 'zod';
import { DEFAULT_LAYOUT } from '../defaults';
import { MOUNTS } from '../kinds';
import { BOX_SIDE_LIMITS_M, SUBWOOFER_LIMITS } from '../limits';
import {
  choice,
  group,
  id,
  list,
  metres,
  number,
  point,
  says,
  text,
  whole,
  yesOrNo,
} from './fields';
import type { Known } from './known';

const boxSide = () => metres(...BOX_SIDE_LIMITS_M);
const boxSize = () =>
  z.tuple([boxSide(), boxSide(), boxSide()], says('[width, height, depth] in metres'));

const subwoofer = group({
  id: id(),
  position: point(),
  /** Width, height and depth of its box, m; a usual one where it is not given. */
  boxM: boxSize().exactOptional(),
  delayMs: number('a delay in milliseconds', ...SUBWOOFER_LIMITS.delayMs).exactOptional(),
  levelDb: number('a level in decibels', ...SUBWOOFER_LIMITS.levelDb).exactOptional(),
  inverted: yesOrNo().exactOptional(),
});

/** A subwoofer by its acoustic centre, and how it is driven; what is absent is 0, or not inverted. */
export type Subwoofer = Known<z.output<typeof subwoofer>>;

const aim = z.union(
  [
    group({
      azimuthDeg: number('degrees', -180, 180),
      elevationDeg: number('degrees', -90, 90),
    }),
    group({ seat: group({ row: id(), seat: whole('seats from the left', 1, 20) }) }),
  ],
  says('{ "azimuthDeg": ..., "elevationDeg": ... } or { "seat": { "row": ..., "seat": ... } }'),
);

/**
 * Where a baffle looks: a direction of the room (azimuth 0 towards the screen wall, positive to the
 * left of a person who faces it; 180 looks from the screen to the seats), or a seat.
 */
export type Aim = Known<z.output<typeof aim>>;

const placedSpeaker = group({
  channel: id(),
  position: point(),
  /** By the nearest surface where it is not given: see core/speakers/box.ts. */
  mount: choice(MOUNTS).exactOptional(),
  /** True where the program may not move it. */
  pinned: yesOrNo().exactOptional(),
  /** Width, height and depth of the cabinet, m; a usual box where it is not given. */
  boxM: boxSize().exactOptional(),
  /** The reference place where it is not given. */
  aim: aim.exactOptional(),
});

/** A loudspeaker by its acoustic centre in the middle of its baffle; channel as in ITU-R BS.2051. */
export type PlacedSpeaker = Known<z.output<typeof placedSpeaker>>;

export const speakers = group({
  /** Layout label of ITU-R BS.2051 as upper+middle+bottom, for example `0+5+0`. */
  layout: text(20).default(DEFAULT_LAYOUT),
  /** Id of the recommendation that judges; the layout's first where it is not given. */
  recommendation: text(20).exactOptional(),
  /** Layout to come, whose further channels are placed and wired for; none where it is not given. */
  later: text(20).exactOptional(),
  placed: list(placedSpeaker, 40).default([]),
  subwoofers: list(subwoofer, SUBWOOFER_LIMITS.count).default([]),
}).prefault({});

export type Speakers = Known<z.output<typeof speakers>>;
