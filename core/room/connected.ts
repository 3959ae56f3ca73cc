/** Whether the free space hangs together: a room cut in two by its fittings is two rooms. */

import { AXES } from './faces';
import type { Room } from './project';
import { airCells } from './space';

/** Number of separate parts of the free space; 0 where the fittings fill the shell. */
export function partsOfSpace(room: Room): number {
  const { counts, isAir } = airCells(room);
  const strides = [counts[1] * counts[2], counts[2], 1] as const;
  const seen = new Uint8Array(isAir.length);
  let parts = 0;
  for (let start = 0; start < isAir.length; start++) {
    if (!isAir[start] || seen[start]) continue;
    parts += 1;
    const open = [start];
    seen[start] = 1;
    for (let at = open.pop(); at !== undefined; at = open.pop()) {
      for (const axis of AXES) {
        const index = Math.floor(at / strides[axis]) % counts[axis];
        for (const side of [-1, 1]) {
          const beyond = index + side;
          if (beyond < 0 || beyond >= counts[axis]) continue;
          const next = at + side * strides[axis];
          if (!isAir[next] || seen[next]) continue;
          seen[next] = 1;
          open.push(next);
        }
      }
    }
  }
  return parts;
}

/** Why the fittings of `room` cannot be, as a sentence; null where they can. */
export function fittingsRefusal(room: Room): string | null {
  const parts = partsOfSpace(room);
  if (parts === 0)
    return 'That would fill the whole room. Make it smaller, so that a room is left.';
  if (parts > 1) {
    return 'That would cut the room in two. Leave a passage, or draw only the part that you sit in.';
  }
  return null;
}
