/**
 * The order of elimination: the box of elements is cut in two again and again at the plane with the
 * fewest points on it. A point can go as soon as all elements that touch it are in; so each box
 * leaves only the points of its outer sides, and the fronts of the factorisation stay small.
 * Source: A. George, SIAM J. Numer. Anal. 10 (1973) 345 (nested dissection).
 */

import type { Axis } from '../room/faces';
import { AXES } from '../room/faces';
import { latticeSize, type Elements } from './elements';

/** An element, as its number along each axis. */
export type Place = readonly [number, number, number];

/** A box of the tree. Points are numbered in the order in which they go. */
export interface Front {
  /** Points that go here are numbered from `first` on. */
  readonly first: number;
  readonly going: number;
  /** Numbers of the points that stay, rising (but see `cell`). */
  readonly staying: Int32Array;
  /** Elements whose outer points are added here. */
  readonly elements: readonly Place[];
  readonly children: readonly Front[];
  /**
   * The element whose inside goes here, if it is one; its points then stay in the order of
   * `cells.ts`, face after face.
   */
  readonly cell: Place | null;
}

export interface Tree {
  /** Children before parents. */
  readonly fronts: readonly Front[];
  /** Points in the air. */
  readonly count: number;
  /** Number of each lattice point; -1 within solids. The last axis runs fastest. */
  readonly numberOf: Int32Array;
}

/** A box is not cut further where it has this many points or fewer. */
const LEAF_POINTS = 100;

type Range = readonly [number, number];
type Ranges = readonly [Range, Range, Range];

interface Draft {
  readonly going: Int32Array;
  readonly staying: Int32Array;
  readonly elements: readonly Place[];
  readonly children: readonly Draft[];
  readonly cell: Place | null;
}

export function eliminationTree(elements: Elements): Tree {
  const { axes, air } = elements;
  const counts = axes.map((axis) => axis.degrees.length) as [number, number, number];
  const lattice = axes.map((axis) => axis.points.length) as [number, number, number];
  const touched = touchedRanges(elements);

  const airIn = (box: Ranges): boolean => {
    for (let i = box[0][0]; i < box[0][1]; i++)
      for (let j = box[1][0]; j < box[1][1]; j++)
        for (let k = box[2][0]; k < box[2][1]; k++)
          if (air[(i * counts[1] + j) * counts[2] + k]) return true;
    return false;
  };
  const firstOf = (axis: Axis, element: number): number =>
    axes[axis].firsts[element] ?? (lattice[axis] || 1) - 1;
  const pointsOf = (box: Ranges): number =>
    AXES.reduce<number>(
      (product, axis) => product * (firstOf(axis, box[axis][1]) - firstOf(axis, box[axis][0]) + 1),
      1,
    );

  const seen = new Int32Array(latticeSize(elements)).fill(-1);
  let stamp = 0;
  const draft = (
    box: Ranges,
    points: number[],
    children: readonly Draft[],
    inside: readonly Place[],
  ): Draft => {
    const isDone = (point: number): boolean => {
      for (let axis = 0; axis < 3; axis++) {
        const range = box[axis as Axis];
        if (touched[point * 6 + 2 * axis]! < range[0]) return false;
        if (touched[point * 6 + 2 * axis + 1]! >= range[1]) return false;
      }
      return true;
    };
    const going = points.filter(isDone);
    const staying = points.filter((point) => !isDone(point));
    return {
      going: Int32Array.from(going),
      staying: Int32Array.from(staying),
      elements: inside,
      children,
      cell: null,
    };
  };

  const build = (box: Ranges): Draft | null => {
    if (!airIn(box)) return null;
    const cut = pointsOf(box) > LEAF_POINTS ? bestCut(elements, box) : null;
    const points: number[] = [];
    const mark = (point: number, round: number): void => {
      if (seen[point] === round) return;
      seen[point] = round;
      points.push(point);
    };
    if (!cut) {
      const inside: Place[] = [];
      const cells: Draft[] = [];
      const round = stamp++;
      for (let i = box[0][0]; i < box[0][1]; i++)
        for (let j = box[1][0]; j < box[1][1]; j++)
          for (let k = box[2][0]; k < box[2][1]; k++) {
            if (!air[(i * counts[1] + j) * counts[2] + k]) continue;
            inside.push([i, j, k]);
            cells.push(cellDraft(elements, [i, j, k], (point) => mark(point, round)));
          }
      return draft(box, points, cells, inside);
    }
    const halves = [0, 1].map((half): Ranges => {
      const part = box.map((range, axis): Range => {
        if (axis !== cut.axis) return range;
        return half === 0 ? [range[0], cut.at] : [cut.at, range[1]];
      });
      return part as unknown as Ranges;
    });
    const children = halves.map(build).filter((child) => child !== null);
    const round = stamp++;
    for (const child of children) for (const point of child.staying) mark(point, round);
    return draft(box, points, children, []);
  };
  const root = build([
    [0, counts[0]],
    [0, counts[1]],
    [0, counts[2]],
  ]);
  return numbered(root, latticeSize(elements));
}

/** The inside of an element; every outer point is told to `outer`. */
function cellDraft({ axes }: Elements, cell: Place, outer: (point: number) => void): Draft {
  const degrees = cell.map((at, axis) => axes[axis]?.degrees[at] ?? 2) as [number, number, number];
  const firsts = cell.map((at, axis) => axes[axis]?.firsts[at] ?? 0) as [number, number, number];
  const steps = [axes[1].points.length * axes[2].points.length, axes[2].points.length, 1] as const;
  const start = firsts[0] * steps[0] + firsts[1] * steps[1] + firsts[2];
  const going: number[] = [];
  for (let a = 0; a <= degrees[0]; a++)
    for (let b = 0; b <= degrees[1]; b++)
      for (let c = 0; c <= degrees[2]; c++) {
        const point = start + a * steps[0] + b * steps[1] + c;
        const isInner =
          a > 0 && a < degrees[0] && b > 0 && b < degrees[1] && c > 0 && c < degrees[2];
        if (isInner) going.push(point);
        else outer(point);
      }
  const staying: number[] = [];
  for (const axis of AXES) {
    const [u, v] =
      axis === 0 ? ([1, 2] as const) : axis === 1 ? ([0, 2] as const) : ([0, 1] as const);
    for (const end of [0, degrees[axis]])
      for (let i = 1; i < degrees[u]; i++)
        for (let j = 1; j < degrees[v]; j++) {
          staying.push(start + end * steps[axis] + i * steps[u] + j * steps[v]);
        }
  }
  return {
    going: Int32Array.from(going),
    staying: Int32Array.from(staying),
    elements: [],
    children: [],
    cell,
  };
}

/** Number the points in the order in which they go and write the fronts down children first. */
function numbered(root: Draft | null, size: number): Tree {
  const numberOf = new Int32Array(size).fill(-1);
  let count = 0;
  const number = (draft: Draft): void => {
    draft.children.forEach(number);
    for (const point of draft.going) numberOf[point] = count++;
  };
  if (root) number(root);
  const fronts: Front[] = [];
  let next = 0;
  const write = (draft: Draft): Front => {
    const children = draft.children.map(write);
    const first = next;
    next += draft.going.length;
    const staying = draft.staying.map((point) => numberOf[point]!);
    const front: Front = {
      first,
      going: draft.going.length,
      staying: draft.cell ? staying : staying.sort(),
      elements: draft.elements,
      children,
      cell: draft.cell,
    };
    fronts.push(front);
    return front;
  };
  if (root) write(root);
  return { fronts, count, numberOf };
}

/** Lowest and highest element with air, along each axis, of those that touch each lattice point. */
function touchedRanges({ axes, air }: Elements): Int32Array {
  const lattice = axes.map((axis) => axis.points.length) as [number, number, number];
  const touched = new Int32Array(6 * lattice[0] * lattice[1] * lattice[2]);
  for (let at = 0; at < touched.length; at += 2) {
    touched[at] = 1 << 30;
    touched[at + 1] = -1;
  }
  let cell = 0;
  const [x, y, z] = axes;
  for (let i = 0; i < x.degrees.length; i++)
    for (let j = 0; j < y.degrees.length; j++)
      for (let k = 0; k < z.degrees.length; k++) {
        if (!air[cell++]) continue;
        for (let a = 0; a <= x.degrees[i]!; a++)
          for (let b = 0; b <= y.degrees[j]!; b++)
            for (let c = 0; c <= z.degrees[k]!; c++) {
              const ix = x.firsts[i]! + a;
              const iy = y.firsts[j]! + b;
              const iz = z.firsts[k]! + c;
              const at = 6 * ((ix * lattice[1] + iy) * lattice[2] + iz);
              touched[at] = Math.min(touched[at]!, i);
              touched[at + 1] = Math.max(touched[at + 1]!, i);
              touched[at + 2] = Math.min(touched[at + 2]!, j);
              touched[at + 3] = Math.max(touched[at + 3]!, j);
              touched[at + 4] = Math.min(touched[at + 4]!, k);
              touched[at + 5] = Math.max(touched[at + 5]!, k);
            }
      }
  return touched;
}

/** The plane with the fewest points, held towards the middle; null where there is none. */
function bestCut(
  { axes }: Elements,
  box: Ranges,
): { readonly axis: number; readonly at: number } | null {
  const first = (axis: Axis, element: number): number =>
    axes[axis].firsts[element] ?? axes[axis].points.length - 1;
  const lengths = AXES.map((axis) => first(axis, box[axis][1]) - first(axis, box[axis][0]) + 1);
  const whole = lengths.reduce((product, length) => product * length, 1);
  let best: { axis: number; at: number } | null = null;
  let least = Infinity;
  for (const axis of AXES) {
    const length = lengths[axis]!;
    for (let at = box[axis][0] + 1; at < box[axis][1]; at++) {
      const share = (first(axis, at) - first(axis, box[axis][0])) / (length - 1);
      const larger = Math.max(share, 1 - share);
      const cost = (whole / length) * (1 + 3 * (2 * (larger - 0.5)) ** 2);
      if (cost < least) [least, best] = [cost, { axis, at }];
    }
  }
  return best;
}
