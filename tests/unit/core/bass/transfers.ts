/** Transfers to test with: any numbers, and those of a real shell. */

import fc from 'fast-check';
import { bandGrid, shellTransfer, type Transfer } from '../../../../core/bass/transfer';
import { finish } from '../../../../core/quantity/slices';
import type { Point, ShellSize } from '../../../../core/room/project';

/** Numbers in four decimals, so that what fails can be read. */
const pressure = fc.integer({ min: -40_000, max: 40_000 }).map((n) => n / 10_000);

/** Any transfer of the given number of places and 1 to 4 seats, over 3 to 9 frequencies. */
export const anyTransfer = (places: number, leastSeats = 1): fc.Arbitrary<Transfer> =>
  fc
    .tuple(fc.integer({ min: leastSeats, max: 4 }), fc.integer({ min: 3, max: 9 }))
    .chain(([seats, count]) => {
      const size = places * seats * count;
      const numbers = fc.array(pressure, { minLength: size, maxLength: size });
      return fc.tuple(numbers, numbers).map(([re, im]): Transfer => {
        return {
          frequenciesHz: Float64Array.from({ length: count }, (_, f) => 20 * 1.3 ** f),
          places,
          seats,
          re: Float64Array.from(re),
          im: Float64Array.from(im),
        };
      });
    });

export function transferIn(
  size: ShellSize,
  places: readonly Point[],
  seats: readonly Point[],
  frequenciesHz = bandGrid([20, 120], 6),
): Transfer {
  const outcome = finish(shellTransfer(size, 343, places, seats, { frequenciesHz }));
  if (!outcome.ok) throw new Error(`Outside: ${JSON.stringify(outcome)}`);
  return outcome.transfer;
}

/** All sets of `count` of the numbers below `places`, rising. */
export function allSets(places: number, count: number): readonly (readonly number[])[] {
  if (count === 0) return [[]];
  return allSets(places, count - 1).flatMap((set) =>
    Array.from({ length: places }, (_, p) => p)
      .filter((p) => p > (set.at(-1) ?? -1))
      .map((p) => [...set, p]),
  );
}
