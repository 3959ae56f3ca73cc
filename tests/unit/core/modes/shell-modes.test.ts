import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { modeKind, shellModes } from '../../../../core/modes/shell-modes';

const side = fc.integer({ min: 20, max: 90 }).map((n) => n / 10);
const shell = fc.record({ width: side, length: side, height: side });

/** Modes as text in an order that ties do not disturb. */
const listed = (modes: ReturnType<typeof shellModes>): readonly string[] =>
  modes.map((mode) => `${mode.order.join()} ${mode.frequencyHz.toFixed(6)}`).sort();

describe('the modes of a shell', () => {
  it('rise, and end at the limit', () => {
    fc.assert(
      fc.property(shell, (size) => {
        const modes = shellModes(size, 343.2, 120);
        for (let i = 1; i < modes.length; i++) {
          expect(modes[i]?.frequencyHz).toBeGreaterThanOrEqual(modes[i - 1]?.frequencyHz ?? 0);
        }
        expect(modes.at(-1)?.frequencyHz ?? 0).toBeLessThanOrEqual(120);
        expect(modes[0]?.frequencyHz ?? 1).toBeGreaterThan(0);
      }),
      { numRuns: 60 },
    );
  });

  it('are each listed once', () => {
    const orders = shellModes({ width: 4, length: 6, height: 2.5 }, 343.2, 200).map((mode) =>
      mode.order.join(),
    );
    expect(new Set(orders).size).toBe(orders.length);
  });

  it('lie twice as low in a room of twice the size, and so for every scale', () => {
    fc.assert(
      fc.property(shell, fc.integer({ min: 2, max: 40 }), (size, tenths) => {
        const scale = tenths / 10;
        const scaled = {
          width: size.width * scale,
          length: size.length * scale,
          height: size.height * scale,
        };
        // A hair above the limit, so that a mode upon it is not lost to rounding on one side.
        const limitHz = 90.000001;
        const small = shellModes(size, 343.2, limitHz);
        const large = shellModes(scaled, 343.2, limitHz / scale);
        expect(large).toHaveLength(small.length);
        large.forEach((mode, i) => {
          expect(mode.frequencyHz * scale).toBeCloseTo(small[i]?.frequencyHz ?? 0, 6);
        });
      }),
      { numRuns: 60 },
    );
  });

  it('keep their frequencies when the sides change places, and their orders follow', () => {
    fc.assert(
      fc.property(shell, ({ width, length, height }) => {
        const straight = shellModes({ width, length, height }, 343.2, 110);
        const turned = shellModes({ width: length, length: height, height: width }, 343.2, 110);
        const back = turned.map((mode) => {
          const [ny, nz, nx] = mode.order;
          return { ...mode, order: [nx, ny, nz] as const };
        });
        expect(listed(back)).toEqual(listed(straight));
      }),
      { numRuns: 60 },
    );
  });

  it('include a mode that lies on the limit itself', () => {
    // 343 / (2 * 3.43) = 50 Hz.
    const modes = shellModes({ width: 1, length: 3.43, height: 1 }, 343, 50);
    expect(modes.map((mode) => mode.order)).toEqual([[0, 1, 0]]);
  });

  it('are none below the lowest', () => {
    expect(shellModes({ width: 2, length: 2, height: 2 }, 343, 80)).toEqual([]);
  });

  it('are axial with one order, tangential with two and oblique with three', () => {
    expect(modeKind([0, 4, 0])).toBe('axial');
    expect(modeKind([1, 0, 2])).toBe('tangential');
    expect(modeKind([1, 1, 1])).toBe('oblique');
  });
});
