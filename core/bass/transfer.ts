/**
 * What every seat hears of a subwoofer at every place: the modal sum of `core/response/path.ts` for
 * all pairs at once. The resonances depend on frequency and mode alone and are worked out once.
 */

import { scaled } from '../quantity/slices';
import { roomModesField, shellField, type ModalField } from '../response/field';
import {
  dampingPerS,
  modeDecayS,
  resonance,
  zeroDampingPerS,
  DEFAULT_DECAY_S,
  type Damping,
  type Tail,
} from '../response/path';
import { roomModesTails, tailOf } from '../response/room-modes-tail';
import { shellTail } from '../response/shell-tail';
import type { Point, ShellSize } from '../room/project';
import type { RoomModes } from '../room-modes/room-modes';
import { smoothTail } from './smooth-tail';
import { practice } from '../room/practice/practice';

/** The band that a subwoofer is judged over, Hz: lowest and highest. */
export type Band = readonly [number, number];

export const DEFAULT_BAND_HZ: Band = practice('bass-band');
export const DEFAULT_PER_OCTAVE = 24;
/** Modes are summed to here; what lies above is in the tail, Hz. */
const SHELL_LIMIT_HZ = 200;

/** Complex pressure over that of the free source at 1 m. */
export interface Transfer {
  readonly frequenciesHz: Float64Array;
  readonly places: number;
  readonly seats: number;
  /** [frequency][place][seat], the seat running fastest. */
  readonly re: Float64Array;
  readonly im: Float64Array;
}

/** Refused where a place or a seat is not in the free space: their numbers in the lists. */
export type TransferOutcome =
  | { readonly ok: true; readonly transfer: Transfer }
  | { readonly ok: false; readonly places: readonly number[]; readonly seats: readonly number[] };

/** Frequencies in equal steps of an octave from the low to the high end of the band, both included. */
export function bandGrid(
  [lowHz, highHz]: Band = DEFAULT_BAND_HZ,
  perOctave = DEFAULT_PER_OCTAVE,
): Float64Array {
  const octaves = Math.log2(highHz / lowHz);
  const steps = Math.max(1, Math.round(octaves * perOctave));
  return Float64Array.from({ length: steps + 1 }, (_, n) => lowHz * 2 ** ((octaves * n) / steps));
}

export interface TransferOptions {
  /** `bandGrid()` where it is not given. */
  readonly frequenciesHz?: Float64Array;
  readonly damping?: Damping;
}

/**
 * Transfer over a field of modes. `tail` gives what the modes above the field's last one add to a path,
 * by the numbers of place and seat. Yields the share done.
 */
export function* transferOf(
  field: ModalField,
  places: readonly Point[],
  seats: readonly Point[],
  options: TransferOptions = {},
  tail?: (place: number, seat: number) => Tail | null,
): Generator<number, TransferOutcome> {
  const frequenciesHz = options.frequenciesHz ?? bandGrid();
  const damping = options.damping ?? { modesS: DEFAULT_DECAY_S };
  const from = places.map((place) => field.shapeAt(place));
  const to = seats.map((seat) => field.shapeAt(seat));
  const outside = (shapes: readonly unknown[]): readonly number[] =>
    [...shapes.keys()].filter((n) => !shapes[n]);
  if (from.includes(null) || to.includes(null)) {
    return { ok: false, places: outside(from), seats: outside(to) };
  }
  const modes = field.frequenciesHz.length;
  const [P, S] = [places.length, seats.length];
  const re = new Float64Array(frequenciesHz.length * P * S);
  const im = new Float64Array(re.length);
  const rest = dampingPerS(modeDecayS(damping, -1));
  const dampings = Float64Array.from({ length: modes }, (_, n) =>
    dampingPerS(modeDecayS(damping, n)),
  );
  const by = (4 * Math.PI) / field.volumeM3;
  // What a seat hears of each mode at one frequency.
  const [heardRe, heardIm] = [new Float64Array(S * modes), new Float64Array(S * modes)];
  for (const [f, hz] of frequenciesHz.entries()) {
    const zero = resonance(0, hz, zeroDampingPerS(damping, hz), field.speedMS);
    for (let n = 0; n < modes; n++) {
      const term = resonance(field.frequenciesHz[n]!, hz, dampings[n]!, field.speedMS);
      for (let s = 0; s < S; s++) {
        const shape = to[s]?.[n] ?? 0;
        heardRe[s * modes + n] = shape * term[0];
        heardIm[s * modes + n] = shape * term[1];
      }
    }
    for (let p = 0, at = f * P * S; p < P; p++) {
      const shapes = from[p] ?? heardRe;
      for (let s = 0; s < S; s++, at++) {
        let [sumRe, sumIm] = [zero[0], zero[1]];
        for (let n = 0, k = s * modes; n < modes; n++, k++) {
          const shape = shapes[n]!;
          sumRe += shape * heardRe[k]!;
          sumIm += shape * heardIm[k]!;
        }
        re[at] = by * sumRe;
        im[at] = by * sumIm;
      }
    }
    yield (tail ? 0.2 : 1) * ((f + 1) / frequenciesHz.length);
  }
  for (let p = 0; tail && p < P; p++) {
    for (let s = 0; s < S; s++) {
      const more = tail(p, s);
      for (let f = 0; more && f < frequenciesHz.length; f++) {
        const at = (f * P + p) * S + s;
        const added = more(frequenciesHz[f]!, rest);
        re[at] = re[at]! + 4 * Math.PI * added.re;
        im[at] = im[at]! + 4 * Math.PI * added.im;
      }
    }
    yield 0.2 + (0.8 * (p + 1)) / P;
  }
  return { ok: true, transfer: { frequenciesHz, places: P, seats: S, re, im } };
}

/**
 * Transfer of the plain shell, its modes above 200 Hz (or above 1.6 times the band) in closed form. Decay
 * times, where there is one for each mode, are in the order of `shellModes` to the same limit.
 */
export function* shellTransfer(
  size: ShellSize,
  speedMS: number,
  places: readonly Point[],
  seats: readonly Point[],
  options: TransferOptions = {},
): Generator<number, TransferOutcome> {
  const frequenciesHz = options.frequenciesHz ?? bandGrid();
  const limitHz = shellLimitHz(frequenciesHz);
  const field = shellField(size, speedMS, limitHz);
  const rest = dampingPerS(modeDecayS(options.damping ?? { modesS: DEFAULT_DECAY_S }, -1));
  return yield* transferOf(field, places, seats, { ...options, frequenciesHz }, (p, s) => {
    const [place, seat] = [places[p], seats[s]];
    if (!place || !seat) return null;
    return smoothTail(shellTail(size, speedMS, limitHz, place, seat), frequenciesHz, rest);
  });
}

/** To where `shellTransfer` sums modes, Hz. */
export const shellLimitHz = (frequenciesHz: Float64Array): number =>
  Math.max(SHELL_LIMIT_HZ, 1.6 * (frequenciesHz.at(-1) ?? 0));

/**
 * Transfer of the real free space. Stand-ins for what lies above the modes come with it where `modes`
 * has kept its factor; they are made from the seats, of which there are fewer: what a seat hears of a
 * place, a place would hear of the seat.
 */
export function* roomModesTransfer(
  modes: RoomModes,
  places: readonly Point[],
  seats: readonly Point[],
  options: TransferOptions = {},
): Generator<number, TransferOutcome> {
  const field = roomModesField(modes);
  const standIns = yield* scaled(roomModesTails(modes, seats, places), 0, 0.7);
  const work = transferOf(field, places, seats, options, (p, s) => {
    const found = standIns[s]?.[p];
    return found ? tailOf(found) : null;
  });
  return yield* scaled(work, 0.7, 1);
}

/** The same of the first `seats` seats. */
export function seatsOnly(transfer: Transfer, seats: number): Transfer {
  if (seats === transfer.seats) return transfer;
  const only = (values: Float64Array): Float64Array =>
    values.filter((_, at) => at % transfer.seats < seats);
  return { ...transfer, seats, re: only(transfer.re), im: only(transfer.im) };
}
