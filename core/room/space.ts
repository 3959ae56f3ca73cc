/**
 * The free space of the room: shell minus solids, cut into boxes by every plane of the shell and the
 * solids, so that volume and exposed areas are exact and nothing counts twice. Overlapping solids are
 * one; what sticks out of the shell is cut off; a covered face has no area. Layers and faces too small
 * for anything to be built there are dust, and count as none: without volume no formula has a decay.
 * Cost grows with the product of the planes along the three axes.
 */

import { AXES, type Axis, FACE_NORMALS, faceAxes, faceText, oppositeOf } from './faces';
import { patchedAreas, type Rect } from './patched-area';
import { farCorner } from './point';
import { type Face, FACES, type Point, type Room, type ShellSize } from './project';

/** Planes nearer to each other than this are one, m. */
const ONE_PLANE_M = 1e-9;
/** A smaller area is no surface, m2. */
const LEAST_AREA_M2 = 1e-9;

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

/** Volume, total surface and the surfaces by face and finish of the free space of `room`. */
export function freeSpace(room: Room): FreeSpace {
  const cells = cutCells(room);
  const exposed = exposedRects(cells, room);
  const surfaces = [...exposed].flatMap(([name, { finish, rects }]): readonly Surface[] => {
    const patches = room.patches.filter((patch) => patch.face === name);
    const areas = patchedAreas(rects, patches);
    const bare: Surface = { face: name, finish, patch: null, areaM2: areas.at(-1) ?? 0 };
    const covered = patches.map((patch, i): Surface => {
      return { face: name, finish: patch.finish, patch: patch.id, areaM2: areas[i] ?? 0 };
    });
    return [bare, ...covered].filter((surface) => surface.areaM2 >= LEAST_AREA_M2);
  });
  return {
    volumeM3: cells.volumeM3,
    surfaceM2: surfaces.reduce((sum, surface) => sum + surface.areaM2, 0),
    surfaces,
  };
}

/** The shell cut along all planes; each cell is air (-1) or belongs to the solid of that number. */
interface Cells {
  readonly planes: readonly [readonly number[], readonly number[], readonly number[]];
  readonly counts: readonly [number, number, number];
  readonly owner: Int32Array;
  readonly volumeM3: number;
}

function cutCells(room: Room): Cells {
  const size = farCorner(room.size);
  const cuts = (axis: Axis): readonly number[] => {
    const inside = room.solids
      .flatMap((solid) => [solid.min[axis], solid.max[axis]])
      .filter((at) => at < size[axis] - ONE_PLANE_M)
      .sort((a, b) => a - b);
    const planes = [0];
    for (const at of inside) if (at > (planes.at(-1) ?? 0) + ONE_PLANE_M) planes.push(at);
    return [...planes, size[axis]];
  };
  const planes = [cuts(0), cuts(1), cuts(2)] as const;
  const counts = [planes[0].length - 1, planes[1].length - 1, planes[2].length - 1] as const;
  const owner = new Int32Array(counts[0] * counts[1] * counts[2]).fill(-1);

  const fill = (from: readonly number[], to: readonly number[], value: number): void => {
    for (let i = from[0] ?? 0; i < (to[0] ?? 0); i++)
      for (let j = from[1] ?? 0; j < (to[1] ?? 0); j++) {
        const row = (i * counts[1] + j) * counts[2];
        owner.fill(value, row + (from[2] ?? 0), row + (to[2] ?? 0));
      }
  };
  // Backwards, so that where solids overlap the first of the list owns the cell.
  for (let n = room.solids.length - 1; n >= 0; n--) {
    const solid = room.solids[n];
    if (!solid) continue;
    const index = (corner: Point, axis: Axis): number =>
      planes[axis].findLastIndex((plane) => plane <= Math.max(corner[axis], 0) + ONE_PLANE_M);
    const from = AXES.map((axis) => index(solid.min, axis));
    const to = AXES.map((axis) => index(solid.max, axis));
    fill(from, to, n);
  }

  let volumeM3 = 0;
  for (let i = 0, at = 0; i < counts[0]; i++)
    for (let j = 0; j < counts[1]; j++) {
      const area = span(planes[0], i) * span(planes[1], j);
      for (let k = 0; k < counts[2]; k++, at++)
        if (owner[at] === -1) volumeM3 += area * span(planes[2], k);
    }
  return { planes, counts, owner, volumeM3 };
}

/** Which cells of the cut-up shell are air, in the order x, y, z with z fastest. */
export function airCells(room: Room): {
  readonly counts: readonly [number, number, number];
  readonly isAir: readonly boolean[];
} {
  const { counts, owner } = cutCells(room);
  return { counts, isAir: Array.from(owner, (solid) => solid === -1) };
}

const span = (planes: readonly number[], i: number): number =>
  (planes[i + 1] ?? 0) - (planes[i] ?? 0);

type Exposed = Map<string, { readonly finish: string; readonly rects: Rect[] }>;

/** Every side of an air cell that is not air beyond, gathered by the face that it lies on. */
function exposedRects({ planes, counts, owner }: Cells, room: Room): Exposed {
  const exposed: Exposed = new Map();
  const strides = [counts[1] * counts[2], counts[2], 1] as const;
  const entry = (face: Face, hit: number): { readonly rects: Rect[] } => {
    const solid = room.solids[hit];
    // Looking up, the eye meets a solid's underside: the opposite side of the one looked towards.
    const name = solid ? faceText({ solid: solid.id, side: oppositeOf(face) }) : face;
    const known = exposed.get(name);
    if (known) return known;
    const made = { finish: solid?.finish ?? room.finishes[face], rects: [] };
    exposed.set(name, made);
    return made;
  };
  for (const face of FACES) {
    const { axis, side } = FACE_NORMALS[face];
    const [u, v] = faceAxes(face);
    const [uPlanes, vPlanes] = [planes[u], planes[v]];
    for (let n = 0; n < counts[axis]; n++) {
      const atShell = side === 1 ? n === counts[axis] - 1 : n === 0;
      for (let i = 0; i < counts[u]; i++)
        for (let j = 0; j < counts[v]; j++) {
          const at = n * strides[axis] + i * strides[u] + j * strides[v];
          if (owner[at] !== -1) continue;
          const hit = atShell ? -1 : (owner[at + side * strides[axis]] ?? -1);
          if (!atShell && hit === -1) continue;
          entry(face, hit).rects.push([
            uPlanes[i] ?? 0,
            vPlanes[j] ?? 0,
            uPlanes[i + 1] ?? 0,
            vPlanes[j + 1] ?? 0,
          ]);
        }
    }
  }
  return exposed;
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

/**
 * How far a box with corners `low` and `high` reaches out of the shell, m: along the axis (of `axes`)
 * where it does so most; negative by how far it keeps within. A place is a box of one corner.
 */
export function outsideShellM(
  size: ShellSize,
  low: Point,
  high: Point = low,
  axes: readonly Axis[] = AXES,
): number {
  const far = farCorner(size);
  return axes.reduce((out, axis) => Math.max(out, -low[axis], high[axis] - far[axis]), -Infinity);
}
