/**
 * The free space of the room: shell minus solids, cut into boxes by every plane of the shell, the
 * solids and the patches, so that volume and exposed areas are exact and nothing counts twice.
 * Overlapping solids are one; what sticks out of the shell is cut off; a covered face has no area.
 * Cost grows with the product of the planes along the three axes.
 */

import { FACES, type Face, type Patch, type Point, type Room } from './project';

/** Area of one finish on one face. */
export interface Surface {
  /** A shell face, or `solid-id:face`. */
  readonly face: string;
  readonly finish: string;
  /** Patch that covers it; null where the face is bare. */
  readonly patch: string | null;
  readonly areaM2: number;
}

export interface FreeSpace {
  readonly volumeM3: number;
  readonly surfaceM2: number;
  readonly surfaces: readonly Surface[];
}

/** Axis that a face is normal to, and on which side of its body it lies. */
export const FACE_NORMALS: Readonly<Record<Face, { axis: 0 | 1 | 2; side: -1 | 1 }>> = {
  left: { axis: 0, side: -1 },
  right: { axis: 0, side: 1 },
  front: { axis: 1, side: -1 },
  back: { axis: 1, side: 1 },
  floor: { axis: 2, side: -1 },
  ceiling: { axis: 2, side: 1 },
};

/** The two axes along which a face's rectangles are measured, in x, y, z order. */
export function faceAxes(face: Face): readonly [0 | 1 | 2, 0 | 1 | 2] {
  const { axis } = FACE_NORMALS[face];
  return axis === 0 ? [1, 2] : axis === 1 ? [0, 2] : [0, 1];
}

const FACE_AT: readonly (readonly [Face, Face])[] = [
  ['left', 'right'],
  ['front', 'back'],
  ['floor', 'ceiling'],
];

/** Volume, total surface and the surfaces by face and finish of the free space of `room`. */
export function freeSpace(room: Room): FreeSpace {
  const size: Point = [room.size.width, room.size.length, room.size.height];
  const planes = cutPlanes(room, size);
  const [nx, ny, nz] = planes.map((p) => p.length - 1) as [number, number, number];
  const counts = [nx, ny, nz] as const;
  const owner = new Int32Array(nx * ny * nz).fill(-1);
  const index = (i: number, j: number, k: number): number => (i * ny + j) * nz + k;
  const middle = (axis: number, i: number): number =>
    ((planes[axis]?.[i] ?? 0) + (planes[axis]?.[i + 1] ?? 0)) / 2;
  const width = (axis: number, i: number): number =>
    (planes[axis]?.[i + 1] ?? 0) - (planes[axis]?.[i] ?? 0);

  const areas = new Map<string, { -readonly [K in keyof Surface]: Surface[K] }>();
  let volumeM3 = 0;

  const eachCell = (visit: (cell: readonly [number, number, number]) => void): void => {
    for (let i = 0; i < nx; i++)
      for (let j = 0; j < ny; j++) for (let k = 0; k < nz; k++) visit([i, j, k]);
  };

  eachCell(([i, j, k]) => {
    const at: Point = [middle(0, i), middle(1, j), middle(2, k)];
    owner[index(i, j, k)] = room.solids.findIndex((solid) => isInside(at, solid.min, solid.max));
  });

  eachCell((cell) => {
    const [i, j, k] = cell;
    if (owner[index(i, j, k)] !== -1) return;
    volumeM3 += width(0, i) * width(1, j) * width(2, k);
    for (const face of FACES) {
      const { axis, side } = FACE_NORMALS[face];
      const next: [number, number, number] = [i, j, k];
      next[axis] += side;
      const beyond = next[axis];
      const outside = beyond < 0 || beyond >= counts[axis];
      const hit = outside ? -1 : (owner[index(...next)] ?? -1);
      if (!outside && hit === -1) continue;
      const [u, v] = faceAxes(face);
      const name = outside
        ? face
        : `${room.solids[hit]?.id ?? ''}:${FACE_AT[axis]?.[side === 1 ? 0 : 1] ?? face}`;
      const at = [middle(u, cell[u]), middle(v, cell[v])] as const;
      const base = outside ? room.finishes[face] : (room.solids[hit]?.finish ?? '');
      const cover = patchAt(room.patches, name, at);
      const patch = cover?.id ?? null;
      const key = `${name}|${patch ?? ''}`;
      const entry = areas.get(key) ?? {
        face: name,
        finish: cover?.finish ?? base,
        patch,
        areaM2: 0,
      };
      entry.areaM2 += width(u, cell[u]) * width(v, cell[v]);
      areas.set(key, entry);
    }
  });

  const surfaces = [...areas.values()];
  return {
    volumeM3,
    surfaceM2: surfaces.reduce((sum, surface) => sum + surface.areaM2, 0),
    surfaces,
  };
}

/** True where the point lies strictly within the box. */
export function isInside(at: Point, min: Point, max: Point): boolean {
  return (
    at[0] > min[0] &&
    at[0] < max[0] &&
    at[1] > min[1] &&
    at[1] < max[1] &&
    at[2] > min[2] &&
    at[2] < max[2]
  );
}

/** True where the point lies in the shell and in none of its solids; on a face counts as in. */
export function isInTheOpen(at: Point, room: Room): boolean {
  const { width, length, height } = room.size;
  const inShell =
    at[0] >= 0 && at[0] <= width && at[1] >= 0 && at[1] <= length && at[2] >= 0 && at[2] <= height;
  return inShell && !room.solids.some((solid) => isInside(at, solid.min, solid.max));
}

/** The last patch of the list that covers the place on the face: later ones lie on top. */
function patchAt(
  patches: readonly Patch[],
  face: string,
  [u, v]: readonly [number, number],
): Patch | undefined {
  return patches.findLast(
    (patch) =>
      patch.face === face &&
      u > patch.rect[0] &&
      u < patch.rect[2] &&
      v > patch.rect[1] &&
      v < patch.rect[3],
  );
}

/** Sorted distinct planes within the shell, per axis. */
function cutPlanes(room: Room, size: Point): readonly (readonly number[])[] {
  const sets: [Set<number>, Set<number>, Set<number>] = [new Set(), new Set(), new Set()];
  const add = (axis: 0 | 1 | 2, at: number): void => {
    if (at > 0 && at < size[axis]) sets[axis].add(at);
  };
  for (const solid of room.solids) {
    for (const axis of [0, 1, 2] as const) {
      add(axis, solid.min[axis]);
      add(axis, solid.max[axis]);
    }
  }
  for (const patch of room.patches) {
    const [u, v] = faceAxes(patchSide(patch.face));
    add(u, patch.rect[0]);
    add(u, patch.rect[2]);
    add(v, patch.rect[1]);
    add(v, patch.rect[3]);
  }
  return sets.map((set, axis) => [0, ...[...set].sort((a, b) => a - b), size[axis] ?? 0]);
}

/** The side that a patch's face name ends with. */
export function patchSide(face: string): Face {
  const side = face.slice(face.lastIndexOf(':') + 1);
  return FACES.find((known) => known === side) ?? 'front';
}
