/**
 * The resonances of the real free space: the shell minus its solids, all walls rigid.
 *
 * Spectral elements on the boxes of air give A y = lambda y with lambda = (2 pi f/c)2; block Lanczos
 * about a shift inside the band finds all modes to the limit, and the count of negative pivots
 * proves that none below the shift (0.8 of the limit) is missing. What the elements miss at jutting
 * edges is worked out and taken off (`edge-model.ts`).
 */

import { scaled } from '../quantity/slices';
import type { ShellSize } from '../room/project';
import { edgeExcess } from '../room-modes/edges';
import {
  elementsIn,
  latticeSize,
  type ElementAxis,
  type Elements,
  type Quality,
} from '../room-modes/elements';
import { massOf } from '../room-modes/assembly';
import { factorise, factorSize, largestFront, type Factor } from '../room-modes/factor';
import {
  airGrid,
  SLIVER_M,
  type Box,
  type MovedFace,
  type AirGrid,
  type RoomModesRefusal,
} from '../room-modes/grid';
import { lanczos, type LanczosResult } from '../room-modes/lanczos';
import { eliminationTree, type Tree } from '../room-modes/tree';
import { shapesOf } from '../room-modes/vectors';

export interface RoomSpace {
  readonly size: ShellSize;
  readonly solids: readonly Box[];
  readonly speedMS: number;
}

export interface RoomModesOptions {
  /** All modes to here; 200 Hz where it is not given. */
  readonly limitHz?: number;
  /** `coarse` follows a hand that drags; `fine` where it is not given. */
  readonly quality?: Quality;
  /** Keep the factor, which the response needs for what lies above the limit. */
  readonly keepFactor?: boolean;
}

/** Plain data that can go between threads. */
export interface RoomModes {
  /** Rising, without the mode at zero. */
  readonly frequenciesHz: Float64Array;
  /** Estimate per mode of the largest relative error, percent. */
  readonly errorsPercent: Float64Array;
  /** The largest of them. */
  readonly errorPercent: number;
  readonly limitHz: number;
  readonly speedMS: number;
  readonly volumeM3: number;
  readonly quality: Quality;
  readonly axes: readonly [ElementAxis, ElementAxis, ElementAxis];
  /** 1 where an element is air; the last axis runs fastest. */
  readonly air: Uint8Array;
  /** Row in `shapes` of each lattice point, -1 within solids. */
  readonly rowOf: Int32Array;
  /** Pressure at the points: row point, column mode; mean square over the free space is 1. */
  readonly shapes: Float64Array;
  /** Volume that each point stands for, m3. */
  readonly mass: Float64Array;
  readonly moved: readonly MovedFace[];
  /** Faces nearer to each other than this count as one, m; `SLIVER_M` if that could be done. */
  readonly sliverM: number;
  /** Modes below `provedToHz`, the one at zero included, counted by the factor's negative pivots. */
  readonly provedCount: number;
  readonly provedToHz: number;
  readonly factor: Factor | null;
}

export type RoomModesOutcome =
  | { readonly ok: true; readonly modes: RoomModes }
  | { readonly ok: false; readonly refusal: RoomModesRefusal };

export const MODES_LIMIT_HZ = 200;
/** Highest limit that can be asked for, Hz. */
export const HIGHEST_LIMIT_HZ = 300;
/** The shift as a share of the limit's eigenvalue: fewest steps between 0.5 and 0.8. */
const SHIFT_SHARE = 0.64;
/** Modes are looked for a little beyond the limit, since some come out too high. */
const BEYOND: Readonly<Record<Quality, number>> = { fine: 1.004, coarse: 1.012 };
/** Where fittings are too many and too crooked, thicker layers are closed, m. */
const SLIVERS_M = [SLIVER_M, 0.03, 0.06, 0.1];
const MOST_LATTICE = 400_000;
const MOST_UNKNOWNS = 40_000;
const MOST_MEGABYTES = 500;
/** A room whose bare shell needs more than this share of a limit is refused for its size, ours. */
const SIZE_SHARE = 0.6;

/** Find the modes. Yields the share done every few milliseconds. */
export function* roomModes(
  space: RoomSpace,
  options: RoomModesOptions = {},
): Generator<number, RoomModesOutcome> {
  const limitHz = Math.min(options.limitHz ?? MODES_LIMIT_HZ, HIGHEST_LIMIT_HZ);
  const quality = options.quality ?? 'fine';
  let outcome: RoomModesOutcome = { ok: false, refusal: { reason: 'not-converged' } };
  for (const sliverM of SLIVERS_M) {
    outcome = yield* solve(space, limitHz, quality, sliverM, options.keepFactor ?? false);
    if (outcome.ok || outcome.refusal.reason !== 'too-large') return outcome;
  }
  if (outcome.ok || outcome.refusal.reason !== 'too-large') return outcome;
  const bare = prepared({ ...space, solids: [] }, limitHz, quality, SLIVER_M, SIZE_SHARE);
  const because = bare.ok ? 'fittings' : 'size';
  return { ok: false, refusal: { ...outcome.refusal, because } };
}

type Prepared =
  | {
      readonly ok: true;
      readonly grid: AirGrid;
      readonly elements: Elements;
      readonly tree: Tree;
    }
  | { readonly ok: false; readonly refusal: RoomModesRefusal };

/** What is solved, or why it is refused: over `share` of what this version takes. */
function prepared(
  space: RoomSpace,
  limitHz: number,
  quality: Quality,
  sliverM: number,
  share = 1,
): Prepared {
  const gridded = airGrid(space.size, space.solids, sliverM);
  if (!gridded.ok) return gridded;
  const { grid } = gridded;
  const elements = elementsIn(grid, (2 * Math.PI * limitHz) / space.speedMS, quality);
  const lattice = latticeSize(elements);
  if (lattice > share * MOST_LATTICE) return tooLarge('unknowns', lattice, MOST_LATTICE);
  const tree = eliminationTree(elements);
  if (tree.count > share * MOST_UNKNOWNS) return tooLarge('unknowns', tree.count, MOST_UNKNOWNS);
  const megabytes = workMegabytes(tree, expectedCount(grid, space, limitHz));
  if (megabytes > share * MOST_MEGABYTES) return tooLarge('megabytes', megabytes, MOST_MEGABYTES);
  return { ok: true, grid, elements, tree };
}

function* solve(
  space: RoomSpace,
  limitHz: number,
  quality: Quality,
  sliverM: number,
  keepFactor: boolean,
): Generator<number, RoomModesOutcome> {
  yield 0;
  const ready = prepared(space, limitHz, quality, sliverM);
  if (!ready.ok) return ready;
  const { grid, elements, tree } = ready;
  const waveNumber = (2 * Math.PI * limitHz) / space.speedMS;
  yield 0.03;

  const mass = massOf(elements, tree);
  const scale = mass.map((m) => 1 / Math.sqrt(m));
  const limit = (BEYOND[quality] * waveNumber) ** 2;
  let [factor, found]: [Factor | null, LanczosResult | null] = [null, null];
  // A shift that meets a mode is moved by a little; one move has always been enough.
  for (let turn = 0; turn < 3 && !found?.complete; turn++) {
    const shift = SHIFT_SHARE * (1 - 0.012 * turn) * waveNumber ** 2;
    factor = yield* scaled(factorise(elements, tree, scale, shift), 0.03, 0.25);
    if (factor.leastPivot < 1e-11) continue;
    const expected = factor.below * (limit / shift) ** 1.35;
    found = yield* scaled(lanczos(factor, limit, expected, largestFront(tree)), 0.25, 0.85);
  }
  if (!factor || !found?.complete) return { ok: false, refusal: { reason: 'not-converged' } };

  const shapes = yield* scaled(shapesOf(found, 1, scale, 1), 0.85, 0.95);
  const values = found.values.subarray(1);
  const excess = yield* scaled(edgeExcess(elements, tree, shapes, values.length), 0.95, 1);
  const kept = pick(values, excess, waveNumber ** 2);
  const errorsPercent = kept.map((n) =>
    estimate(values[n]!, excess[n]!, waveNumber, quality, grid),
  );
  const toHz = space.speedMS / (2 * Math.PI);
  const modes: RoomModes = {
    frequenciesHz: Float64Array.from(kept, (n) => toHz * Math.sqrt(values[n]! - excess[n]!)),
    errorsPercent: Float64Array.from(errorsPercent),
    errorPercent: errorsPercent.reduce((most, error) => Math.max(most, error), 0),
    limitHz,
    speedMS: space.speedMS,
    volumeM3: grid.volumeM3,
    quality,
    axes: elements.axes,
    air: elements.air,
    rowOf: tree.numberOf,
    shapes: columns(shapes, values.length, kept, Math.sqrt(grid.volumeM3)),
    mass,
    moved: grid.moved,
    sliverM: grid.sliverM,
    provedCount: factor.below,
    provedToHz: toHz * Math.sqrt(factor.shift),
    factor: keepFactor ? factor : null,
  };
  return { ok: true, modes };
}

function tooLarge(what: 'unknowns' | 'megabytes', count: number, most: number) {
  const of = { what, count: Math.round(count), most };
  return { ok: false, refusal: { reason: 'too-large', because: 'fittings', ...of } } as const;
}

/** Modes to expect below `limitHz`: the mean count of a box of that volume (Maa), surface as the shell. */
function expectedCount(grid: AirGrid, { size, speedMS }: RoomSpace, limitHz: number): number {
  const ratio = limitHz / speedMS;
  const { width, length, height } = size;
  const surface = 2 * (width * length + width * height + length * height);
  return (
    ((4 * Math.PI) / 3) * grid.volumeM3 * ratio ** 3 +
    (Math.PI / 4) * surface * ratio ** 2 +
    ((width + length + height) / 2) * ratio
  );
}

/** Factor, Lanczos basis, shapes and the largest fronts, MB. */
function workMegabytes(tree: Tree, expected: number): number {
  const vectors = (4 * expected + 100) * tree.count;
  return (8 * (factorSize(tree) + vectors + 4 * largestFront(tree) ** 2)) / 1e6;
}

/** Columns up to the limit by corrected eigenvalue, rising. */
function pick(values: Float64Array, excess: Float64Array, limit: number): number[] {
  const corrected = (n: number): number => values[n]! - excess[n]!;
  return [...values.keys()]
    .filter((n) => corrected(n) <= limit)
    .sort((a, b) => corrected(a) - corrected(b));
}

function columns(
  shapes: Float64Array,
  modes: number,
  kept: readonly number[],
  by: number,
): Float64Array {
  const rows = shapes.length / modes;
  const picked = new Float64Array(rows * kept.length);
  for (let row = 0, at = 0; row < rows; row++)
    for (const n of kept) picked[at++] = by * shapes[row * modes + n]!;
  return picked;
}

/** Phase error at the limit that the widths of the elements allow (`elements.ts`), percent. */
const PHASE_PERCENT: Readonly<Record<Quality, number>> = { fine: 0.15, coarse: 1 };
/** Share of an edge's correction that may be off. */
const EDGE_DOUBT = 0.5;
/** Iteration and rounding, percent. */
const FLOOR_PERCENT = 0.01;

/**
 * Largest relative error of a frequency, percent. Waves: what the elements' widths allow at the limit,
 * falling with the fourth power below it, as that of the lowest degree (2) does. Edges: half of what
 * was taken off, since the model is of one edge alone. Moved faces: their volume over the free
 * volume, twice, as a face at an antinode of an oblique mode has up to four times the mean square.
 */
function estimate(
  value: number,
  excess: number,
  waveNumber: number,
  quality: Quality,
  grid: AirGrid,
): number {
  const waves = PHASE_PERCENT[quality] * (value / waveNumber ** 2) ** 2;
  const edges = (EDGE_DOUBT * 100 * excess) / (2 * value);
  return waves + edges + (200 * grid.movedM3) / grid.volumeM3 + FLOOR_PERCENT;
}
