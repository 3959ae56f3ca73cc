/**
 * Modes of the real free space: time and error on the reference rooms, and a straightforward solve of
 * the same elements beside them. Part of `npm run bench`.
 */

import { readFileSync } from 'node:fs';
import type { Box } from '../../core/room-modes/grid';
import { likeShell, shellShares } from '../../core/room-modes/like-shell';
import {
  roomModes,
  type RoomModes,
  type RoomModesOptions,
  type RoomSpace,
} from '../../core/room-modes/room-modes';
import { plainModes } from './plain-elements';

const ROOMS = [
  'plain-box',
  'one-soffit',
  'soffit3-risers2',
  'closet-l',
  'column-mid',
  'everything',
];
const WARM_UP_RUNS = 2;
const RUNS = 7;

interface ReferenceRoom {
  readonly speedMS: number;
  readonly shellM: readonly [number, number, number];
  readonly solids: readonly Box[];
  readonly frequenciesHz: readonly number[];
}

interface Measured {
  readonly medianMs: number;
  readonly longestSliceMs: number;
  readonly modes: RoomModes;
}

/** One run, with the longest time between two yields. */
function run(
  space: RoomSpace,
  options: RoomModesOptions,
): { ms: number; slice: number; modes: RoomModes } {
  const work = roomModes(space, options);
  const start = performance.now();
  let [last, slice] = [start, 0];
  for (;;) {
    const step = work.next();
    const now = performance.now();
    slice = Math.max(slice, now - last);
    last = now;
    if (!step.done) continue;
    if (!step.value.ok) throw new Error(JSON.stringify(step.value.refusal));
    return { ms: now - start, slice, modes: step.value.modes };
  }
}

const median = (values: readonly number[]): number =>
  [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)] ?? 0;

function measured(space: RoomSpace, options: RoomModesOptions = {}): Measured {
  for (let i = 0; i < WARM_UP_RUNS; i++) run(space, options);
  const runs = Array.from({ length: RUNS }, () => run(space, options));
  const [first] = runs;
  if (!first) throw new Error('No runs.');
  return {
    medianMs: median(runs.map(({ ms }) => ms)),
    longestSliceMs: median(runs.map(({ slice }) => slice)),
    modes: first.modes,
  };
}

const cell = (value: number, digits = 0): string => value.toFixed(digits).padStart(10);

/** Where the modes end, Hz: the coarse ones as the window follows a drag with them. */
const TO_HZ = { fine: 200, coarse: 150 } as const;
/** Elements of the straightforward method, m: about the error that the aim allows (0.3 %). */
const PLAIN_WIDTH_M = 0.45;

/** Prints a row for each reference room, then one of them by a straightforward method. */
export function measureShapedModes(): void {
  console.log('');
  console.log(
    `Modes of the real free space to 200 Hz, coarse ones to 150 Hz as a drag is followed; median of ${RUNS} warm runs.`,
  );
  console.log(
    `${''.padEnd(28)}${['modes', 'ms', 'slice ms', 'error %', 'estimate %', 'names ms'].map((head) => head.padStart(10)).join('')}`,
  );
  for (const name of ROOMS) {
    const { space, room } = reference(name);
    for (const quality of ['fine', 'coarse'] as const) {
      const { medianMs, longestSliceMs, modes } = measured(space, {
        quality,
        limitHz: TO_HZ[quality],
      });
      const errors = room.frequenciesHz
        .filter((hz) => hz <= (quality === 'fine' ? TO_HZ.fine : 0.95 * TO_HZ.coarse))
        .map((hz, n) => 100 * Math.abs((modes.frequenciesHz[n] ?? 0) / hz - 1));
      const start = performance.now();
      likeShell(shellShares(modes, space.size));
      console.log(
        `${`${name}, ${quality}`.padEnd(28)}${cell(modes.frequenciesHz.length)}${cell(medianMs)}${cell(longestSliceMs)}${cell(Math.max(...errors), 3)}${cell(modes.errorPercent, 3)}${cell(performance.now() - start)}`,
      );
    }
  }
  againstPlainElements();
}

/** The main reference room once by quadratic elements, a banded factor and plain Lanczos. */
function againstPlainElements(): void {
  const { space, room } = reference('soffit3-risers2');
  const ours = measured(space);
  const start = performance.now();
  const plain = plainModes(space, 200, PLAIN_WIDTH_M);
  const plainMs = performance.now() - start;
  const errors = room.frequenciesHz
    .filter((hz) => hz <= 200)
    .map((hz, n) => 100 * Math.abs((plain.frequenciesHz[n] ?? NaN) / hz - 1));
  console.log(
    `${'soffit3-risers2, plainly'.padEnd(28)}${cell(plain.frequenciesHz.length)}${cell(plainMs)}${' '.repeat(10)}${cell(Math.max(...errors), 3)}   ${plain.unknowns} unknowns, half band ${plain.band}, one run: ${(plainMs / ours.medianMs).toFixed(0)} times as long`,
  );
  console.log(
    `  (quadratic elements of at most ${PLAIN_WIDTH_M} m, banded factor in natural order, Lanczos one vector at a time)`,
  );
}

function reference(name: string): { readonly space: RoomSpace; readonly room: ReferenceRoom } {
  const file = new URL(`../published/rooms/${name}.json`, import.meta.url);
  const room = JSON.parse(readFileSync(file, 'utf8')) as ReferenceRoom;
  const [width, length, height] = room.shellM;
  const space = { size: { width, length, height }, solids: room.solids, speedMS: room.speedMS };
  return { space, room };
}
