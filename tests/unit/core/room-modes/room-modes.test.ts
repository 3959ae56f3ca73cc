import { describe, expect, it } from 'vitest';
import { shellModes } from '../../../../core/modes/shell-modes';
import { finish } from '../../../../core/quantity/slices';
import { modeShapeAt, planeMap } from '../../../../core/room-modes/evaluate';
import { elementsIn } from '../../../../core/room-modes/elements';
import { factorise } from '../../../../core/room-modes/factor';
import { airGrid, type Box } from '../../../../core/room-modes/grid';
import { likeShell, shellShares } from '../../../../core/room-modes/like-shell';
import { roomModes, type RoomModes } from '../../../../core/room-modes/room-modes';
import { eliminationTree } from '../../../../core/room-modes/tree';
import { SPEED_MS, sizeOf, solved } from '../room-modes/solve';

const ROOM = sizeOf([3.4, 4.6, 2.4]);
const SOFFIT: Box = { min: [0, 0, 2.1], max: [0.4, 4.6, 2.4] };
const RISER: Box = { min: [0, 3.2, 0], max: [3.4, 4.6, 0.25] };
const CLOSET: Box = { min: [2.5, 0, 0], max: [3.4, 1.1, 2.4] };

const worst = (a: Float64Array, b: Float64Array): number =>
  Math.max(...a.map((value, n) => Math.abs(value / (b[n] ?? NaN) - 1)));

describe('the modes of the free space', () => {
  const shaped = solved(ROOM, [SOFFIT, RISER, CLOSET]);

  it('are those of the formula where there are no solids', () => {
    const modes = solved(ROOM, []);
    const exact = shellModes(ROOM, SPEED_MS, 200).map((mode) => mode.frequencyHz);
    expect(modes.frequenciesHz.length).toBe(exact.length);
    expect(worst(modes.frequenciesHz, Float64Array.from(exact))).toBeLessThan(1e-3);
  });

  it('rise, without the one at zero', () => {
    const rising = [...shaped.frequenciesHz].sort((a, b) => a - b);
    expect([...shaped.frequenciesHz]).toEqual(rising);
    expect(rising[0]).toBeGreaterThan(20);
    expect(rising.at(-1)).toBeLessThanOrEqual(200);
  });

  it('are the same in the mirrored room', () => {
    const mirrored = [SOFFIT, RISER, CLOSET].map(({ min, max }): Box => {
      return { min: [3.4 - max[0], min[1], min[2]], max: [3.4 - min[0], max[1], max[2]] };
    });
    const other = solved(ROOM, mirrored);
    expect(other.frequenciesHz.length).toBe(shaped.frequenciesHz.length);
    expect(worst(shaped.frequenciesHz, other.frequenciesHz)).toBeLessThan(1e-6);
  });

  it('fall with the size of the room', () => {
    const larger = [SOFFIT, RISER, CLOSET].map(({ min, max }): Box => {
      const by = (at: readonly [number, number, number]) =>
        [at[0] * 1.25, at[1] * 1.25, at[2] * 1.25] as const;
      return { min: by(min), max: by(max) };
    });
    const other = solved(sizeOf([4.25, 5.75, 3]), larger, { limitHz: 160 });
    expect(other.frequenciesHz.length).toBe(shaped.frequenciesHz.length);
    expect(
      worst(
        shaped.frequenciesHz,
        other.frequenciesHz.map((hz) => 1.25 * hz),
      ),
    ).toBeLessThan(1e-6);
  });

  it('are those of the shell where the solid is nothing', () => {
    const nothing: Box = { min: [0, 0, 2.4], max: [0.4, 4.6, 2.4] };
    const outside: Box = { min: [-1, 0, 0], max: [0, 4.6, 2.4] };
    const plain = solved(ROOM, []);
    expect(solved(ROOM, [nothing, outside]).frequenciesHz).toEqual(plain.frequenciesHz);
  });

  it('reach to 300 Hz when asked', () => {
    const modes = solved(ROOM, [], { limitHz: 300 });
    const exact = shellModes(ROOM, SPEED_MS, 300).map((mode) => mode.frequencyHz);
    expect(modes.frequenciesHz.length).toBe(exact.length);
    expect(worst(modes.frequenciesHz, Float64Array.from(exact))).toBeLessThan(1.5e-3);
  });

  it('are found singly and in pairs in a cube', () => {
    const cube = sizeOf([2.6, 2.6, 2.6]);
    const modes = solved(cube, []);
    const exact = shellModes(cube, SPEED_MS, 200).map((mode) => mode.frequencyHz);
    expect(modes.frequenciesHz.length).toBe(exact.length);
    expect(worst(modes.frequenciesHz, Float64Array.from(exact))).toBeLessThan(1.5e-3);
  });

  it('are counted by the negative pivots, below the shift and to the limit', () => {
    const toHz = SPEED_MS / (2 * Math.PI);
    const below = shaped.frequenciesHz.filter((hz) => hz < shaped.provedToHz).length;
    expect(below + 1).toBe(shaped.provedCount);
    // A second factor midway in a gap near the limit counts all of them.
    const gridded = airGrid(ROOM, [SOFFIT, RISER, CLOSET]);
    if (!gridded.ok) throw new Error('no grid');
    const elements = elementsIn(gridded.grid, 200 / toHz, 'fine');
    const gaps = [...shaped.frequenciesHz.keys()].slice(-8, -1).map((n) => {
      const [low, high] = [shaped.frequenciesHz[n] ?? 0, shaped.frequenciesHz[n + 1] ?? 0];
      return { n, middle: (low + high) / 2, width: high - low };
    });
    const widest = gaps.reduce((best, gap) => (gap.width > best.width ? gap : best));
    const factor = finish(
      factorise(
        elements,
        eliminationTree(elements),
        shaped.mass.map((m) => 1 / Math.sqrt(m)),
        (widest.middle / toHz) ** 2,
      ),
    );
    expect(factor.below).toBe(widest.n + 2);
  });
});

/**
 * To first order (Rayleigh) a small rigid body changes a frequency by df/f = (psi2 - |grad psi|2/k2)
 * dV/(2 V), psi of mean square 1; where the air has to flow round it the second part grows.
 */
describe('a small solid', () => {
  const size = sizeOf([3.1, 4, 2.4]);
  // In a corner every cosine is at its largest and its slope is nothing: psi2 is 2, 4 or 8.
  const solid: Box = { min: [0, 0, 0], max: [0.12, 0.12, 0.12] };
  const plain = solved(size, []);
  const shaped = solved(size, [solid]);
  const share = 0.12 ** 3 / (3.1 * 4 * 2.4);

  it.each([
    [0, 2],
    [1, 2],
    [2, 4],
  ])('in a corner raises mode %i by half its share of the volume times %i', (n, square) => {
    const change = (shaped.frequenciesHz[n] ?? 0) / (plain.frequenciesHz[n] ?? 1) - 1;
    expect(change).toBeGreaterThan(0);
    expect(Math.abs(change / ((square * share) / 2) - 1)).toBeLessThan(0.1);
  });

  it('at a node of the pressure lowers the mode', () => {
    const node: Box = { min: [0, 1.9, 0], max: [0.2, 2.1, 0.2] };
    const lowered = solved(size, [node]).frequenciesHz[0] ?? 0;
    const share = (0.2 * 0.2 * 0.2) / (3.1 * 4 * 2.4);
    const change = lowered / (plain.frequenciesHz[0] ?? 1) - 1;
    // At least the volume term, -2/2 share; the flow round the box makes it more (added mass).
    expect(change).toBeLessThan(-share);
    expect(change).toBeGreaterThan(-3 * share);
  });
});

describe('what is not computed', () => {
  const refusal = (solids: readonly Box[], size = ROOM) => {
    const outcome = finish(roomModes({ size, solids, speedMS: SPEED_MS }));
    return outcome.ok ? null : outcome.refusal;
  };

  it('a room that is all solid', () => {
    expect(refusal([{ min: [0, 0, 0], max: [3.4, 4.6, 2.4] }])).toEqual({ reason: 'no-air' });
  });

  it('a room in two parts', () => {
    const wall: Box = { min: [0, 2, 0], max: [3.4, 2.1, 2.4] };
    expect(refusal([wall])).toEqual({ reason: 'separate-parts', parts: 2 });
    const halfWall: Box = { min: [0, 2, 0], max: [2.6, 2.1, 2.4] };
    expect(refusal([halfWall])).toBeNull();
  });

  it('a wall as thin as paper still parts the room', () => {
    const sheet: Box = { min: [0, 2, 0], max: [3.4, 2.003, 2.4] };
    expect(refusal([sheet])).toEqual({ reason: 'separate-parts', parts: 2 });
  });

  it('hundreds of solids out of line', () => {
    const many = Array.from({ length: 300 }, (_, i): Box => {
      const at = 0.05 + 0.0103 * i;
      return { min: [at, at, 0.1], max: [at + 0.02, at + 0.02, 0.2 + 0.006 * i] };
    });
    expect(refusal(many)).toMatchObject({ reason: 'too-large' });
  });

  it('a hall', () => {
    expect(refusal([], sizeOf([30, 30, 12]))).toMatchObject({ reason: 'too-large' });
  });
});

describe('faces that nearly meet', () => {
  it('are made one, and said to be', () => {
    const grid = airGrid(ROOM, [
      { min: [0, 0, 2.1], max: [0.4, 4.6, 2.4] },
      { min: [0.404, 0, 0], max: [0.9, 0.5, 2.395] },
    ]);
    if (!grid.ok) throw new Error('refused');
    expect([...grid.grid.planes[0]].map((at) => Math.round(1000 * at))).toEqual([
      0, 402, 900, 3400,
    ]);
    expect([...grid.grid.planes[2]]).toEqual([0, 2.1, 2.4]);
    expect(grid.grid.moved.map(({ solid, axis }) => [solid, axis])).toEqual([
      [0, 0],
      [1, 0],
      [1, 2],
    ]);
  });

  it('widen the estimate of the error', () => {
    const straight = solved(ROOM, [{ min: [0, 0, 2.1], max: [0.4, 4.6, 2.4] }]);
    const sliver = solved(ROOM, [{ min: [0, 0, 2.1], max: [0.4, 4.6, 2.392] }]);
    expect(sliver.moved.length).toBe(1);
    expect(sliver.errorPercent).toBeGreaterThan(straight.errorPercent);
    expect(sliver.frequenciesHz).toEqual(straight.frequenciesHz);
  });
});

describe('mode shapes', () => {
  const modes = solved(ROOM, [SOFFIT, RISER, CLOSET]);
  const count = modes.frequenciesHz.length;

  it('have mean square 1 and nothing in common', () => {
    for (let a = 0; a < count; a += 7)
      for (let b = a; b < count; b += 5) {
        const mean = meanProduct(modes, a, b);
        expect(Math.abs(mean - (a === b ? 1 : 0))).toBeLessThan(1e-8);
      }
    for (let a = 0; a < count; a += 3) {
      const sum = modes.mass.reduce((s, m, row) => s + m * (modes.shapes[row * count + a] ?? 0), 0);
      expect(Math.abs(sum / modes.volumeM3)).toBeLessThan(1e-6);
    }
  });

  it('are the cosine of the shell where there are no solids', () => {
    const plain = solved(ROOM, []);
    // First along the length, 4.6 m.
    const at = [1.1, 0.7, 0.3] as const;
    const value = Math.abs(modeShapeAt(plain, at)?.[0] ?? 0);
    expect(value).toBeCloseTo(Math.SQRT2 * Math.cos((Math.PI * 0.7) / 4.6), 3);
  });

  it('are nothing within solids and beyond the shell', () => {
    expect(modeShapeAt(modes, [0.2, 2, 2.3])).toBeNull();
    expect(modeShapeAt(modes, [1, 4, 0.1])).toBeNull();
    expect(modeShapeAt(modes, [1, 5, 1])).toBeNull();
    expect(modeShapeAt(modes, [1, 4, 0.25])?.length).toBe(count);
    expect(modeShapeAt(modes, [3.4, 4.6, 2.4])?.length).toBe(count);
  });

  it('are continuous where elements meet', () => {
    const low = modeShapeAt(modes, [0.4 - 1e-7, 2, 1]);
    const high = modeShapeAt(modes, [0.4 + 1e-7, 2, 1]);
    low?.forEach((value, n) => expect(Math.abs(value - (high?.[n] ?? 0))).toBeLessThan(1e-4));
  });

  it('are the same on a plane as at its points', () => {
    const us = Float64Array.of(0.1, 1, 2.7, 3.39);
    const vs = Float64Array.of(0.2, 0.9, 3, 4.5);
    const weights = Float64Array.from({ length: count }, (_, n) => Math.sin(n));
    const map = planeMap(modes, 2, 1.2, us, vs);
    const blended = map.blend(weights);
    const third = map.shape(3);
    us.forEach((u, i) =>
      vs.forEach((v, j) => {
        const values = modeShapeAt(modes, [u, v, 1.2]);
        if (!values) {
          expect(blended[i * 4 + j]).toBeNaN();
          return;
        }
        const sum = values.reduce((s, value, n) => s + value * (weights[n] ?? 0), 0);
        expect(blended[i * 4 + j]).toBeCloseTo(sum, 4);
        expect(third[i * 4 + j]).toBeCloseTo(values[3] ?? 0, 5);
      }),
    );
    expect(blended.filter(Number.isNaN).length).toBe(4);
  });

  it('survive the way between threads', () => {
    expect(structuredClone(modes)).toEqual(modes);
  });
});

const meanProduct = ({ mass, shapes, frequenciesHz, volumeM3 }: RoomModes, a: number, b: number) =>
  mass.reduce((sum, m, row) => {
    const from = row * frequenciesHz.length;
    return sum + m * (shapes[from + a] ?? 0) * (shapes[from + b] ?? 0);
  }, 0) / volumeM3;

describe('a room of too many crooked boxes', () => {
  /** Boxes on the floor whose faces line up with nothing. */
  const crooked = (count: number): readonly Box[] =>
    Array.from({ length: count }, (_, n) => {
      const [x, y] = [(0.619 * n * n) % 3.4, (1.237 * n) % 4.1];
      return { min: [x, y, 0], max: [x + 0.31, y + 0.27, 0.2 + 0.017 * n] };
    });

  it('is made simpler until it can be solved, and says by how much', () => {
    const size = sizeOf([4, 5, 2.4]);
    const modes = solved(size, crooked(14));
    expect(modes.sliverM).toBeGreaterThan(0.01);
    for (const { fromM, toM } of modes.moved)
      expect(Math.abs(fromM - toM)).toBeLessThanOrEqual(modes.sliverM);
    // Faces that moved count in the error.
    expect(modes.errorPercent).toBeGreaterThan(solved(size, crooked(2)).errorPercent);
    // The free volume is near the exact one: 48 m3 less the boxes.
    expect(modes.volumeM3).toBeGreaterThan(47);
    expect(modes.volumeM3).toBeLessThan(48);
  }, 60_000);

  it('of sixty is refused in a moment', () => {
    const outcome = finish(
      roomModes({ size: sizeOf([4, 5, 2.4]), solids: crooked(60), speedMS: SPEED_MS }),
    );
    expect(outcome).toMatchObject({ ok: false, refusal: { reason: 'too-large' } });
  });
});

describe('names', () => {
  it('are those of the formula in the plain shell', () => {
    const modes = solved(ROOM, []);
    const exact = shellModes(ROOM, SPEED_MS, 200).map((mode) => mode.order);
    expect(likeShell(shellShares(modes, ROOM))).toEqual(exact);
  });

  it('are given once at most, and to the low modes of a room with a soffit', () => {
    const modes = solved(ROOM, [SOFFIT]);
    const names = likeShell(shellShares(modes, ROOM));
    const given = names.filter((name) => name !== null).map((name) => name.join());
    expect(new Set(given).size).toBe(given.length);
    expect(names.slice(0, 3)).toEqual([
      [0, 1, 0],
      [1, 0, 0],
      [1, 1, 0],
    ]);
  });
});

describe('the work', () => {
  it('is done in slices', () => {
    const work = roomModes({ size: ROOM, solids: [SOFFIT, RISER], speedMS: SPEED_MS });
    const shares: number[] = [];
    for (let step = work.next(); !step.done; step = work.next()) shares.push(step.value);
    expect(shares.length).toBeGreaterThan(20);
    expect(Math.max(...shares)).toBeLessThanOrEqual(1);
  });
});
