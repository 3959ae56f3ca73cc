/**
 * Places for subwoofers: what the transfer and the searches take on an example room, and a plain
 * exhaustive search of the same sets beside them. Part of `npm run bench`.
 */

import { speedOfSoundMS } from '../../core/air/medium';
import { DEFAULT_DRIVES } from '../../core/bass/drives';
import { DEFAULT_WEIGHT } from '../../core/bass/measure';
import { subwooferPlaces } from '../../core/bass/places';
import { searchSubwoofers, type SearchOptions } from '../../core/bass/search';
import { roomModesTransfer, shellTransfer, type Transfer } from '../../core/bass/transfer';
import { finish } from '../../core/quantity/slices';
import type { Project } from '../../core/room/project';
import { seatsOf } from '../../core/room/seats';
import { roomModes } from '../../core/room-modes/room-modes';

const PLACES = 60;
const STEP_M = 0.3;
const RUNS = 3;

interface Run<T> {
  readonly ms: number;
  /** Longest time between two yields. */
  readonly sliceMs: number;
  readonly value: T;
}

/** The median of warm runs. */
function measured<T>(work: () => Generator<number, T>): Run<T> {
  const runs = Array.from({ length: RUNS + 1 }, (): Run<T> => {
    const slices = work();
    const start = performance.now();
    let [last, sliceMs] = [start, 0];
    for (;;) {
      const step = slices.next();
      const now = performance.now();
      sliceMs = Math.max(sliceMs, now - last);
      last = now;
      if (step.done) return { ms: now - start, sliceMs, value: step.value };
    }
  }).slice(1);
  const [middle] = runs.sort((a, b) => a.ms - b.ms).slice(Math.floor(RUNS / 2));
  if (!middle) throw new Error('No runs.');
  return middle;
}

/** The least cost of all sets of four: every set, every frequency, the logarithm of the machine. */
function plainSearch({ frequenciesHz, places, seats, re, im }: Transfer): number {
  const levels = new Float64Array(seats);
  let least = Infinity;
  for (let a = 0; a < places; a++)
    for (let b = a + 1; b < places; b++)
      for (let c = b + 1; c < places; c++)
        for (let d = c + 1; d < places; d++) {
          let spread = 0;
          let sum = 0;
          let squares = 0;
          for (let f = 0; f < frequenciesHz.length; f++) {
            let mean = 0;
            for (let s = 0; s < seats; s++) {
              const at = f * places * seats + s;
              const i = at + a * seats;
              const j = at + b * seats;
              const k = at + c * seats;
              const l = at + d * seats;
              const x = (re[i] ?? 0) + (re[j] ?? 0) + (re[k] ?? 0) + (re[l] ?? 0);
              const y = (im[i] ?? 0) + (im[j] ?? 0) + (im[k] ?? 0) + (im[l] ?? 0);
              levels[s] = 10 * Math.log10(x * x + y * y);
              mean += (levels[s] ?? 0) / seats;
            }
            for (let s = 0; s < seats; s++) spread += ((levels[s] ?? 0) - mean) ** 2 / (seats - 1);
            sum += mean;
            squares += mean * mean;
          }
          const count = frequenciesHz.length;
          const cost = (spread + DEFAULT_WEIGHT * (squares - (sum * sum) / count)) / count;
          if (cost < least) least = cost;
        }
  return least;
}

const row = (what: string, { ms, sliceMs }: Run<unknown>, more = ''): void =>
  console.log(
    `${what.padEnd(34)}${ms.toFixed(0).padStart(10)}${sliceMs.toFixed(0).padStart(10)}  ${more}`.trimEnd(),
  );

/** Prints a row for each step of the way on `project`. */
export function measureBass(project: Project): void {
  const { size, solids } = project.room;
  const speedMS = speedOfSoundMS(project.air.temperatureC);
  const places = subwooferPlaces(project, { stepM: STEP_M }).allowed.slice(0, PLACES);
  const seats = seatsOf(project).map(({ position }) => position);
  console.log('');
  console.log(
    `Subwoofers: ${places.length} places, ${seats.length} seats, 20 to 120 Hz in 24ths of an octave; medians of ${RUNS} warm runs.`,
  );
  console.log(`${''.padEnd(34)}${'ms'.padStart(10)}${'slice ms'.padStart(10)}`);
  const shell = measured(() => shellTransfer(size, speedMS, places, seats));
  row('transfer of the shell', shell);
  const outcome = finish(roomModes({ size, solids, speedMS }, { keepFactor: true }));
  if (outcome.ok) {
    const shaped = measured(() => roomModesTransfer(outcome.modes, places, seats));
    row('transfer of the free space', shaped, 'its modes not counted');
  }
  if (!shell.value.ok) return;
  const { transfer } = shell.value;
  const search = (options: SearchOptions) => measured(() => searchSubwoofers(transfer, options));
  row('first answer for 4', search({ count: 4, mostTried: 0 }));
  for (const count of [2, 4] as const) {
    for (const drives of [undefined, DEFAULT_DRIVES]) {
      const found = search({ count, ...(drives ? { drives } : {}) });
      const { total, drives: how } = found.value;
      const more = `${total} sets, drives: ${how}`;
      row(`best ${count}${drives ? ' with delays and levels' : ''}`, found, more);
      if (count !== 4 || drives) continue;
      const start = performance.now();
      const least = plainSearch(transfer);
      const ms = performance.now() - start;
      const ratio = ms / found.ms;
      const off = Math.abs(least - (found.value.sets[0]?.measures.costDb2 ?? NaN));
      const text = `one run: ${ratio.toFixed(1)} times as long; costs differ by ${off.toExponential(0)} dB2`;
      row('best 4, the plain way', { ms, sliceMs: ms, value: null }, text);
    }
  }
}
