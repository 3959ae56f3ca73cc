/**
 * The rake: the lowest platforms that can be built from which every row sees over every row before it.
 *
 * The height that a row needs rises with the heights of the rows before it and with nothing else, so
 * going from the screen backwards and giving each row the lowest height that does leaves every row as
 * low as it can be at once: no other choice of platforms has any row lower. That is exact for any number
 * of rows. Lengths in metres.
 */

import type { PlatformBuild } from './platforms';
import { clearanceM, type SightLine } from './sight-line';

export interface RakeRow {
  readonly id: string;
  /** Ears and eyes from the screen wall; above 0. */
  readonly y: number;
  /** Eye above the row's own floor. */
  readonly eyeHeightM: number;
  /** Highest floor that leaves head room over the row. */
  readonly mostM: number;
}

export interface RakeInput {
  readonly rows: readonly RakeRow[];
  /** Clearance that every row has over every row before it, at least. */
  readonly stepM: number;
  /** Lower edge of the picture; from `bottomM` it may rise in steps of `bottomStepM` up to `highestBottomM`. */
  readonly bottomM: number;
  readonly highestBottomM: number;
  readonly bottomStepM: number;
  /** What can be built, rising, the bare floor first. */
  readonly builds: readonly PlatformBuild[];
}

export interface RakedRow {
  readonly id: string;
  readonly build: PlatformBuild;
  /** Least clearance over a row before it; null for the first. */
  readonly clearanceM: number | null;
}

export interface Rake {
  readonly bottomM: number;
  /** From the screen backwards. */
  readonly rows: readonly RakedRow[];
}

/** A row that no platform lets see. */
export interface RakeBlock {
  readonly id: string;
  /** Lowest floor from which it would see. */
  readonly neededM: number;
  /** Highest that there is: by head room, or of what can be built. */
  readonly mostM: number;
}

export interface RakeHelp {
  /** Lower edge of the picture by which it would do, as it is now or higher; null where none does. */
  readonly bottomM: number | null;
  /** Rows without which it would do, one at a time. */
  readonly without: readonly string[];
}

export type RakeResult =
  | { readonly kind: 'found'; readonly rake: Rake }
  | { readonly kind: 'blocked'; readonly block: RakeBlock; readonly help: RakeHelp };

/** Rows nearer to each other along the room than this look over no one of each other, m. */
const ABREAST_M = 0.05;
/** A clearance is met to within this, m. */
const MET_M = 1e-9;

/** The lowest platforms with the picture where it is; where there are none, what stands against it. */
export function rakeOf(input: RakeInput): RakeResult {
  const tried = withBottom(input, input.bottomM);
  if (tried.kind === 'found') return tried;
  const without = input.rows.filter(({ id }) => {
    const rows = input.rows.filter((row) => row.id !== id);
    return rows.length > 0 && withBottom({ ...input, rows }, input.bottomM).kind === 'found';
  });
  return {
    kind: 'blocked',
    block: tried.block,
    help: { bottomM: leastBottomM(input), without: without.map(({ id }) => id) },
  };
}

/** The lowest picture, in steps from where it is, with which there are platforms; null if none is. */
export function leastBottomM(input: RakeInput): number | null {
  const { bottomM, highestBottomM, bottomStepM } = input;
  const steps = Math.floor((highestBottomM - bottomM) / bottomStepM + 1e-9);
  const does = (step: number): boolean =>
    withBottom(input, bottomM + step * bottomStepM).kind === 'found';
  if (steps < 0 || !does(steps)) return null;
  // A higher picture never asks for a higher platform, so halving finds the first that does.
  let [low, high] = [-1, steps];
  while (high - low > 1) {
    const middle = Math.floor((low + high) / 2);
    if (does(middle)) high = middle;
    else low = middle;
  }
  return bottomM + high * bottomStepM;
}

/** The rakes of every picture height that is allowed and has one, from the lowest picture up. */
export function rakesByBottom(input: RakeInput): readonly Rake[] {
  const { bottomM, highestBottomM, bottomStepM } = input;
  const steps = Math.max(0, Math.floor((highestBottomM - bottomM) / bottomStepM + 1e-9));
  return Array.from({ length: steps + 1 }, (_, n) =>
    withBottom(input, bottomM + n * bottomStepM),
  ).flatMap((result) => (result.kind === 'found' ? [result.rake] : []));
}

function withBottom(
  { rows, stepM, builds }: RakeInput,
  bottomM: number,
): { kind: 'found'; rake: Rake } | { kind: 'blocked'; block: RakeBlock } {
  const raked: { readonly row: RakeRow; readonly eyeM: number; readonly made: RakedRow }[] = [];
  for (const row of [...rows].sort((a, b) => a.y - b.y)) {
    const before = raked.filter(({ row: front }) => row.y - front.y > ABREAST_M);
    const overM = (floorM: number): number =>
      Math.min(
        Infinity,
        ...before.map(({ row: front, eyeM }) => {
          const line: SightLine = {
            distanceM: front.y,
            overFocusM: eyeM - bottomM,
            rowDepthM: row.y - front.y,
          };
          return clearanceM(line, floorM + row.eyeHeightM - eyeM);
        }),
      );
    const build = builds.find(
      ({ heightM }) => heightM <= row.mostM + MET_M && overM(heightM) >= stepM - MET_M,
    );
    if (!build) {
      const neededM = Math.max(
        0,
        ...before.map(({ row: front, eyeM }) => {
          const steep = (eyeM + stepM - bottomM) / front.y;
          return bottomM + steep * row.y - row.eyeHeightM;
        }),
      );
      const mostM = Math.min(row.mostM, builds.at(-1)?.heightM ?? 0);
      return { kind: 'blocked', block: { id: row.id, neededM, mostM } };
    }
    const least = overM(build.heightM);
    const clearance = Number.isFinite(least) ? least : null;
    raked.push({
      row,
      eyeM: build.heightM + row.eyeHeightM,
      made: { id: row.id, build, clearanceM: clearance },
    });
  }
  return { kind: 'found', rake: { bottomM, rows: raked.map(({ made }) => made) } };
}
