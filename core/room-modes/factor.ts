/**
 * A - shift = L D LT, front by front. A is the stiffness of the elements with the mass taken to one:
 * A = M^-1/2 K M^-1/2. By Sylvester's law as many pivots are negative as A has eigenvalues below
 * the shift, so the count is a proof, not an estimate.
 * Source: I. S. Duff, J. K. Reid, ACM Trans. Math. Softw. 9 (1983) 302 (multifrontal elimination).
 */

import { addElement, degreesOf, widthsOf } from './assembly';
import { eliminateCell } from './cells';
import { eliminate, panelSpace } from './eliminate';
import type { Elements } from './elements';
import type { Front, Tree } from './tree';

/** Plain data: what is needed to solve with the factor. */
export interface Factor {
  readonly shift: number;
  readonly count: number;
  /**
   * Per front: first number, going, staying, start in `entries`, start in `stays`, and of the inside of an
   * element its three degrees (0 of other fronts).
   */
  readonly fronts: Int32Array;
  /** Numbers of the points that stay, front after front. */
  readonly stays: Int32Array;
  readonly entries: Float64Array;
  readonly pivots: Float64Array;
  /** Eigenvalues below the shift. */
  readonly below: number;
  /** Smallest pivot by size against the largest. */
  readonly leastPivot: number;
}

/** Numbers for each front in `Factor.fronts`. */
export const FIELDS = 8;

/** Entries of the factor: 8 bytes each. */
export function factorSize(tree: Tree): number {
  return tree.fronts.reduce((sum, front) => sum + entriesOf(front), 0);
}

const entriesOf = ({ cell, going, staying }: Front): number =>
  cell ? staying.length : (going + staying.length) * going;

/** Unknowns of the largest front. */
export function largestFront(tree: Tree): number {
  return tree.fronts.reduce(
    (most, { cell, going, staying }) => (cell ? most : Math.max(most, going + staying.length)),
    0,
  );
}

/** Factorise; yields the share done now and then. */
export function* factorise(
  elements: Elements,
  tree: Tree,
  scale: Float64Array,
  shift: number,
): Generator<number, Factor> {
  const { fronts } = tree;
  const entries = new Float64Array(factorSize(tree));
  const pivots = new Float64Array(tree.count);
  const stays = new Int32Array(fronts.reduce((sum, f) => sum + f.staying.length, 0));
  const table = new Int32Array(fronts.length * FIELDS);
  const most = largestFront(tree);
  const front = new Float64Array(most * most);
  const place = new Int32Array(tree.count);
  const complements = new Map<Front, Float64Array>();
  const space = panelSpace();
  let [entry, stay, work] = [0, 0, 0];
  for (const [n, now] of fronts.entries()) {
    const { first, going, staying } = now;
    const size = going + staying.length;
    table.set([first, going, staying.length, entry, stay], n * FIELDS);
    stays.set(staying, stay);
    stay += staying.length;
    if (now.cell) {
      const degrees = degreesOf(elements, now.cell);
      table.set(degrees, n * FIELDS + 5);
      const complement = eliminateCell(
        degrees,
        widthsOf(elements, now.cell),
        shift,
        Float64Array.from(staying, (point) => scale[point]!),
        pivots.subarray(first, first + going),
        entries.subarray(entry, entry + staying.length),
      );
      complements.set(now, complement);
      entry += staying.length;
      continue;
    }
    for (let i = 0; i < going; i++) place[first + i] = i;
    for (let i = 0; i < staying.length; i++) place[staying[i]!] = going + i;
    front.fill(0, 0, size * size);
    for (const at of now.elements) addElement(front, size, elements, tree, at, place, scale);
    for (const child of now.children) {
      const complement = complements.get(child);
      if (complement) addComplement(front, size, complement, child.staying, place);
      complements.delete(child);
    }
    for (let i = 0; i < going; i++) front[i * size + i] = front[i * size + i]! - shift;
    eliminate(front, size, going, entries, entry, pivots, first, space);
    complements.set(now, remaining(front, size, going));
    entry += size * going;
    work += size * size * going;
    if (work > 6e6) {
      work = 0;
      yield entry / entries.length;
    }
  }
  let [below, least, largest] = [0, Infinity, 0];
  for (const pivot of pivots) {
    if (pivot < 0) below++;
    least = Math.min(least, Math.abs(pivot));
    largest = Math.max(largest, Math.abs(pivot));
  }
  const leastPivot = least / largest;
  return { shift, count: tree.count, fronts: table, stays, entries, pivots, below, leastPivot };
}

/** The lower right of the front, lower half row by row. */
function remaining(front: Float64Array, size: number, going: number): Float64Array {
  const left = size - going;
  const packed = new Float64Array((left * (left + 1)) / 2);
  for (let i = 0, at = 0; i < left; i++)
    for (let j = 0, from = (going + i) * size + going; j <= i; j++) packed[at++] = front[from + j]!;
  return packed;
}

function addComplement(
  front: Float64Array,
  size: number,
  packed: Float64Array,
  staying: Int32Array,
  place: Int32Array,
): void {
  for (let i = 0, at = 0; i < staying.length; i++) {
    const row = place[staying[i]!]!;
    for (let j = 0; j <= i; j++) {
      const column = place[staying[j]!]!;
      const to = row >= column ? row * size + column : column * size + row;
      front[to] = front[to]! + packed[at++]!;
    }
  }
}
