import { describe, expect, it } from 'vitest';
import { smoothTail } from '../../../../core/bass/smooth-tail';
import {
  bandGrid,
  roomModesTransfer,
  shellLimitHz,
  shellTransfer,
  transferOf,
  type Transfer,
  type TransferOutcome,
} from '../../../../core/bass/transfer';
import { finish } from '../../../../core/quantity/slices';
import { roomModesField, shellField } from '../../../../core/response/field';
import { dampingPerS, levelDb, pathResponse, type Tail } from '../../../../core/response/path';
import { roomModesTails, tailOf } from '../../../../core/response/room-modes-tail';
import { shellTail } from '../../../../core/response/shell-tail';
import type { Point } from '../../../../core/room/project';
import { sizeOf, solved, SPEED_MS } from '../room-modes/solve';

const SIZE = sizeOf([4.2, 6.4, 2.4]);
const PLACES: readonly Point[] = [
  [0.2, 0.2, 0.2],
  [2.1, 0.2, 0.2],
  [4, 3.2, 0.2],
  [0.7, 6.2, 0.2],
];
const SEATS: readonly Point[] = [
  [1.35, 3.6, 1.1],
  [2.1, 3.6, 1.1],
  [2.85, 5.2, 1.4],
];
const HZ = bandGrid();

function transferred(outcome: TransferOutcome): Transfer {
  if (!outcome.ok) throw new Error(JSON.stringify(outcome));
  return outcome.transfer;
}

const levelAt = ({ re, im, places, seats }: Transfer, f: number, p: number, s: number): number => {
  const at = (f * places + p) * seats + s;
  return 20 * Math.log10(Math.hypot(re[at] ?? NaN, im[at] ?? NaN));
};

/** Largest distance in dB between the transfer and single paths with the tail that `tail` gives. */
function furthest(
  transfer: Transfer,
  pathOf: (place: Point, seat: Point, p: number, s: number) => Float64Array,
): number {
  let most = 0;
  PLACES.forEach((place, p) =>
    SEATS.forEach((seat, s) =>
      pathOf(place, seat, p, s).forEach((level, f) => {
        most = Math.max(most, Math.abs(levelAt(transfer, f, p, s) - level));
      }),
    ),
  );
  return most;
}

describe('the frequencies of a band', () => {
  it('are 63 steps of a 24th octave from 20 to 120 Hz', () => {
    expect(HZ).toHaveLength(63);
    expect(HZ[0]).toBe(20);
    expect(HZ.at(-1)).toBeCloseTo(120, 9);
    for (let f = 1; f < HZ.length; f++) {
      expect(Math.log2((HZ[f] ?? 0) / (HZ[f - 1] ?? 1)) * 24).toBeCloseTo(1, 1);
    }
    expect([...bandGrid([20, 80], 1)].map(Math.round)).toEqual([20, 40, 80]);
  });
});

describe('the transfer of all places at once', () => {
  const field = shellField(SIZE, SPEED_MS, 200);

  it('is that of the single paths, each mode with its own decay', () => {
    const modesS = field.frequenciesHz.map((hz) => 0.2 + 20 / hz);
    const damping = { modesS, restS: 0.3 };
    const transfer = transferred(finish(transferOf(field, PLACES, SEATS, { damping })));
    const most = furthest(transfer, (place, seat) => {
      const path = pathResponse(field, place, seat, HZ, damping);
      if (!path) throw new Error('outside');
      return levelDb(path);
    });
    expect(most).toBeLessThan(1e-9);
    expect([transfer.places, transfer.seats, transfer.re.length]).toEqual([4, 3, 4 * 3 * 63]);
  });

  it('of the shell is that with the tail in closed form at every frequency, within 0.05 dB', () => {
    const damping = { modesS: 0.4 };
    const transfer = transferred(finish(shellTransfer(SIZE, SPEED_MS, PLACES, SEATS, { damping })));
    let most = 0;
    const without = furthest(transfer, (place, seat) => {
      const tail = shellTail(SIZE, SPEED_MS, shellLimitHz(HZ), place, seat);
      const [exact, plain] = [tail, undefined].map((one) =>
        pathResponse(field, place, seat, HZ, damping, one),
      );
      if (!exact || !plain) throw new Error('outside');
      levelDb(exact).forEach((level, f) => {
        const [p, s] = [PLACES.indexOf(place), SEATS.indexOf(seat)];
        most = Math.max(most, Math.abs(levelAt(transfer, f, p, s) - level));
      });
      return levelDb(plain);
    });
    // Largest found: 2e-4 dB; 5 dB without any tail.
    expect(most).toBeLessThan(0.001);
    expect(without).toBeGreaterThan(1);
  });

  it('of a band that ends near 200 Hz sums modes further up and keeps to that', () => {
    const frequenciesHz = bandGrid([20, 190], 6);
    const outcome = finish(shellTransfer(SIZE, SPEED_MS, PLACES, SEATS, { frequenciesHz }));
    const transfer = transferred(outcome);
    const limitHz = shellLimitHz(frequenciesHz);
    expect(limitHz).toBeCloseTo(304, 9);
    const far = shellField(SIZE, SPEED_MS, limitHz);
    const most = furthest(transfer, (place, seat) => {
      const tail = shellTail(SIZE, SPEED_MS, limitHz, place, seat);
      const path = pathResponse(far, place, seat, frequenciesHz, undefined, tail);
      if (!path) throw new Error('outside');
      return levelDb(path);
    });
    expect(most).toBeLessThan(0.01);
  });

  it('names the places and seats that are not in the free space', () => {
    const places: readonly Point[] = [
      [1, 1, 1],
      [5, 1, 1],
      [1, 7, 1],
    ];
    expect(finish(shellTransfer(SIZE, SPEED_MS, places, SEATS))).toEqual({
      ok: false,
      places: [1, 2],
      seats: [],
    });
    expect(finish(shellTransfer(SIZE, SPEED_MS, PLACES, [[1, 1, 3]]))).toEqual({
      ok: false,
      places: [],
      seats: [0],
    });
  });

  it('yields rising shares', () => {
    const shares = [...shellTransfer(SIZE, SPEED_MS, PLACES, SEATS)];
    expect(shares.length).toBeGreaterThan(60);
    shares.forEach((share, n) => expect(share).toBeGreaterThanOrEqual(shares[n - 1] ?? 0));
    expect(shares.at(-1)).toBe(1);
  });
});

describe('the transfer of the real free space', () => {
  const solids = [
    { min: [0, 0, 2.1], max: [0.6, 6.4, 2.4] },
    { min: [3.2, 5.6, 0], max: [4.2, 6.4, 2.4] },
  ] as const;
  const modes = solved(SIZE, solids, { keepFactor: true, limitHz: 160 });

  it('has its tails from the seats, which is the same as from the places within 0.02 dB', () => {
    const transfer = transferred(finish(roomModesTransfer(modes, PLACES, SEATS)));
    const tails = finish(roomModesTails(modes, PLACES, SEATS));
    const field = roomModesField(modes);
    let bare = 0;
    const most = furthest(transfer, (place, seat, p, s) => {
      const standIns = tails[p]?.[s];
      const tail: Tail | undefined = standIns ? tailOf(standIns) : undefined;
      const [path, without] = [tail, undefined].map((one) =>
        pathResponse(field, place, seat, HZ, undefined, one),
      );
      if (!path || !without) throw new Error('outside');
      levelDb(without).forEach((level, f) => {
        bare = Math.max(bare, Math.abs(levelAt(transfer, f, p, s) - level));
      });
      return levelDb(path);
    });
    expect(most).toBeLessThan(0.02);
    expect(bare).toBeGreaterThan(0.5);
  });

  it('does without tails where the factor was not kept', () => {
    const bare = transferred(finish(roomModesTransfer({ ...modes, factor: null }, PLACES, SEATS)));
    const plain = transferred(finish(transferOf(roomModesField(modes), PLACES, SEATS)));
    expect(bare).toEqual(plain);
  });
});

describe('a tail read between a few frequencies', () => {
  it('is exact where it was taken and on a short list of frequencies', () => {
    const tail: Tail = (hz, damping) => ({ re: Math.cos(hz), im: damping * hz });
    const few = Float64Array.of(20, 33, 51);
    expect(smoothTail(tail, few, 3)(33, 3)).toEqual(tail(33, 3));
  });

  it('of a pole at 1.6 times the end of the band is within 2e-5 of its size', () => {
    const damping = dampingPerS(0.4);
    const tail: Tail = (hz) => ({
      re: 1 / (192 ** 2 - hz * hz),
      im: hz / (192 ** 2 - hz * hz) ** 2,
    });
    const smooth = smoothTail(tail, HZ, damping);
    for (const hz of HZ) {
      const [exact, read] = [tail(hz, damping), smooth(hz, damping)];
      expect(Math.abs(read.re / exact.re - 1)).toBeLessThan(2e-5);
    }
  });
});
