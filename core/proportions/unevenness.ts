/**
 * One figure for how unevenly the modes of a plain shell follow each other, made to be computed for
 * hundreds of thousands of rooms: axial neighbours too far apart or too close, and third octaves that
 * hold fewer modes than the one below. All in hertz, so that the sum can be read: 0 is an even row.
 *
 * The parts are published rules (Gilford's spacing, Bonello's rising counts); adding them up, and the
 * worth of a missing mode, are in `practice`. It serves to rank rooms, not to judge one.
 */

import { CLOSEST_AXIAL_HZ, LISTED_TO_HZ, WIDEST_AXIAL_GAP_HZ } from '../modes/axial-spacing';
import { THIRD_OCTAVES } from '../quantity/bands';
import type { ShellSize } from '../room/project';
import { practice } from '../room/practice/practice';

/** What one mode too few in a third octave weighs against axial spacing, Hz. */
export const MISSING_MODE_HZ = practice('missing-mode');

export const UNEVENNESS_SOURCE =
  'sum of axial spacings over 20 Hz and under 5 Hz (Gilford) and 5 Hz for each mode a third octave falls short of the one below (Bonello 1981); the sum is our own';

const BAND_COUNT = THIRD_OCTAVES.length;
/** Edges of the third octaves, squared: frequencies are compared without a square root. */
const EDGES_SQUARED = new Float64Array([
  THIRD_OCTAVES[0]?.lowHz ?? 0,
  ...THIRD_OCTAVES.map((band) => band.highHz),
]).map((edge) => edge * edge);
const TOP_SQUARED = EDGES_SQUARED[BAND_COUNT] ?? 0;

/** Room for the axial orders of a 30 m side to 224 Hz. */
const MOST_ORDERS = 64;

/** Working space of one caller, so that a scan makes no garbage. */
export interface UnevennessSpace {
  readonly x: Float64Array;
  readonly y: Float64Array;
  readonly z: Float64Array;
  readonly counts: Int32Array;
}

export function unevennessSpace(): UnevennessSpace {
  return {
    x: new Float64Array(MOST_ORDERS),
    y: new Float64Array(MOST_ORDERS),
    z: new Float64Array(MOST_ORDERS),
    counts: new Int32Array(BAND_COUNT),
  };
}

/**
 * Unevenness in Hz of a shell of `width`, `length`, `height` metres to 200 Hz, at the speed of sound
 * `speedMS`. Smaller is more even; never negative, never NaN for positive sides up to 30 m.
 */
export function unevennessHz(
  width: number,
  length: number,
  height: number,
  speedMS: number,
  space: UnevennessSpace,
): number {
  return (
    axialUnevennessHz(width, length, height, speedMS) +
    MISSING_MODE_HZ * missingModes(width, length, height, speedMS, space)
  );
}

/** `unevennessHz` of a size; for one room rather than for many. */
export function unevennessOf(size: ShellSize, speedMS: number): number {
  return unevennessHz(size.width, size.length, size.height, speedMS, unevennessSpace());
}

/** Axial spacings under 5 Hz and over 20 Hz, by how much, summed; to the first mode past 200 Hz. */
export function axialUnevennessHz(
  width: number,
  length: number,
  height: number,
  speedMS: number,
): number {
  const [stepX, stepY, stepZ] = [
    speedMS / (2 * width),
    speedMS / (2 * length),
    speedMS / (2 * height),
  ] as [number, number, number];
  let [nextX, nextY, nextZ] = [stepX, stepY, stepZ];
  let before = -1;
  let sum = 0;
  while (before <= LISTED_TO_HZ) {
    let next = nextX;
    if (nextY < next) next = nextY;
    if (nextZ < next) next = nextZ;
    if (nextX === next) nextX += stepX;
    else if (nextY === next) nextY += stepY;
    else nextZ += stepZ;
    if (before >= 0) {
      const gap = next - before;
      if (gap > WIDEST_AXIAL_GAP_HZ) sum += gap - WIDEST_AXIAL_GAP_HZ;
      else if (gap < CLOSEST_AXIAL_HZ && next <= LISTED_TO_HZ) sum += CLOSEST_AXIAL_HZ - gap;
    }
    before = next;
  }
  return sum;
}

/** By how many modes in all a third octave holds fewer than the one below it, from 20 to 200 Hz. */
export function missingModes(
  width: number,
  length: number,
  height: number,
  speedMS: number,
  space: UnevennessSpace,
): number {
  countByBand(width, length, height, speedMS, space);
  const { counts } = space;
  let missing = 0;
  for (let band = 1; band < BAND_COUNT; band++) {
    const fall = (counts[band - 1] ?? 0) - (counts[band] ?? 0);
    if (fall > 0) missing += fall;
  }
  return missing;
}

/** Fills `space.counts` with the number of modes in each third octave. */
export function countByBand(
  width: number,
  length: number,
  height: number,
  speedMS: number,
  { x, y, z, counts }: UnevennessSpace,
): void {
  counts.fill(0);
  const nx = squares(speedMS / (2 * width), x);
  const ny = squares(speedMS / (2 * length), y);
  const nz = squares(speedMS / (2 * height), z);
  for (let i = 0; i < nx; i++) {
    const fx = x[i] ?? 0;
    for (let j = 0; j < ny; j++) {
      const fxy = fx + (y[j] ?? 0);
      if (fxy >= TOP_SQUARED) break;
      // Along z the frequency only rises, so the band only moves up.
      let band = 0;
      for (let k = 0; k < nz; k++) {
        const squared = fxy + (z[k] ?? 0);
        if (squared >= TOP_SQUARED) break;
        while (squared >= (EDGES_SQUARED[band] ?? 0)) band++;
        if (band > 0) counts[band - 1] = (counts[band - 1] ?? 0) + 1;
      }
    }
  }
}

/** Squared axial frequencies from order 0 while they are below the top; returns how many. */
function squares(stepHz: number, into: Float64Array): number {
  let n = 0;
  for (; n < MOST_ORDERS; n++) {
    const frequency = n * stepHz;
    const squared = frequency * frequency;
    if (squared >= TOP_SQUARED) break;
    into[n] = squared;
  }
  return n;
}
