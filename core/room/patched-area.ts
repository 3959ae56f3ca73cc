/** How much of a face's exposed part each patch covers. Patches later in the list lie on top. */

import type { Patch } from './project';

/** [u0, v0, u1, v1] in metres along the face's two axes. */
export type Rect = readonly [number, number, number, number];

/**
 * Exact areas in m2 of `exposed` (rectangles that do not overlap) under each patch, by its place in
 * the list, and of what stays bare (last entry).
 */
export function patchedAreas(
  exposed: readonly Rect[],
  patches: readonly Patch[],
): readonly number[] {
  const rects = [...exposed, ...patches.map((patch) => patch.rect)];
  const us = sortedCuts(rects.flatMap(([u0, , u1]) => [u0, u1]));
  const vs = sortedCuts(rects.flatMap(([, v0, , v1]) => [v0, v1]));
  const uIndex = new Map(us.map((u, i) => [u, i]));
  const vIndex = new Map(vs.map((v, i) => [v, i]));
  const bare = patches.length;
  const cover = new Int32Array(us.length * vs.length).fill(bare);

  const each = ([u0, v0, u1, v1]: Rect, visit: (i: number, j: number) => void): void => {
    const [iEnd, jEnd] = [uIndex.get(u1) ?? 0, vIndex.get(v1) ?? 0];
    for (let i = uIndex.get(u0) ?? 0; i < iEnd; i++)
      for (let j = vIndex.get(v0) ?? 0; j < jEnd; j++) visit(i, j);
  };

  patches.forEach((patch, n) => each(patch.rect, (i, j) => (cover[i * vs.length + j] = n)));
  const areas = Array.from({ length: patches.length + 1 }, () => 0);
  for (const rect of exposed) {
    each(rect, (i, j) => {
      const n = cover[i * vs.length + j] ?? bare;
      const area = ((us[i + 1] ?? 0) - (us[i] ?? 0)) * ((vs[j + 1] ?? 0) - (vs[j] ?? 0));
      areas[n] = (areas[n] ?? 0) + area;
    });
  }
  return areas;
}

function sortedCuts(values: readonly number[]): readonly number[] {
  return [...new Set(values)].sort((a, b) => a - b);
}
