import { describe, expect, it } from 'vitest';
import { addPlace, costSpace, noSums, sumCost, turn } from '../../../../core/bass/cost';
import { cellCounts, cellSpace, eliminateCell, toFaces } from '../../../../core/room-modes/cells';
import { eliminate, panelSpace } from '../../../../core/room-modes/eliminate';
import {
  backwardFour,
  forwardFour,
  gramFour,
  subtractFour,
} from '../../../../core/room-modes/four-vectors';
import { symmetricEigen } from '../../../../core/room-modes/symmetric';
import { finish } from '../../../../core/quantity/slices';

const zeros = (count: number): Float64Array => new Float64Array(count);

describe('a kernel that is handed too little', () => {
  it.each<readonly [string, () => unknown]>([
    ['substitution forwards: vectors', () => forwardFour(zeros(6), 0, 3, 2, zeros(11))],
    ['substitution forwards: factor', () => forwardFour(zeros(6), 1, 3, 2, zeros(12))],
    ['substitution backwards', () => backwardFour(zeros(5), 0, 3, 2, zeros(12))],
    ['product of two blocks', () => gramFour(zeros(8), zeros(7), 0, 2, zeros(16))],
    ['difference of two blocks', () => subtractFour(zeros(8), zeros(15), zeros(8), 0, 2)],
    [
      'elimination of a front',
      () => eliminate(zeros(8), 3, 2, zeros(6), 0, zeros(2), 0, panelSpace()),
    ],
    ['pivots of a front', () => eliminate(zeros(9), 3, 2, zeros(6), 0, zeros(2), 1, panelSpace())],
    [
      'elimination of a cell',
      () => eliminateCell([3, 3, 3], [1, 1, 1], 1, zeros(23), zeros(8), zeros(24)),
    ],
    [
      'faces of a cell',
      () => toFaces([3, 3, 3], cellSpace().one, zeros(24), 1, new Int32Array(24), 0, zeros(96)),
    ],
    ['eigenvalues of a small matrix', () => finish(symmetricEigen(zeros(8), 3, 3, 0))],
  ])('says so: %s', (_, call) => {
    expect(call).toThrow(/values where \d+ are needed/);
  });

  it('takes exactly what is needed', () => {
    expect(cellCounts([3, 3, 3])).toEqual({ inner: 8, faces: 24 });
    expect(() => forwardFour(zeros(6), 0, 3, 2, zeros(12))).not.toThrow();
    expect(() =>
      eliminateCell([3, 3, 3], [1, 1, 1], 1, zeros(24), zeros(8), zeros(24)),
    ).not.toThrow();
  });
});

describe('the cost of a set of subwoofers', () => {
  const transfer = {
    frequenciesHz: Float64Array.of(30, 60),
    places: 2,
    seats: 3,
    re: zeros(12).fill(1),
    im: zeros(12),
  };
  const space = costSpace(transfer, 0.25);
  const short = { re: zeros(5), im: zeros(6) };

  it('refuses a transfer of another shape', () => {
    expect(() => costSpace({ ...transfer, im: zeros(11) }, 0.25)).toThrow(
      '11 values instead of 12',
    );
  });

  it('refuses sums of another shape, and places that there are not', () => {
    expect(() => sumCost(space, short, 0, Infinity)).toThrow('5 values instead of 6');
    expect(() => turn(space, short, 1, 0, noSums(space))).toThrow('5 values instead of 6');
    expect(() => addPlace(space, noSums(space), 0, short)).toThrow('5 values instead of 6');
    expect(() => sumCost(space, noSums(space), 2, Infinity)).toThrow('no place 2 among 2');
  });
});
