import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { Box } from '../../core/room-modes/grid';
import { sizeOf, solved } from '../unit/core/room-modes/solve';

/**
 * Frequencies of six rooms from an independent program; each file says what made it. The plain box
 * is Rayleigh's formula.
 */
interface ReferenceRoom {
  readonly name: string;
  readonly madeBy: string;
  /** Estimate of the reference's own largest relative error. */
  readonly relativeError: number;
  readonly speedMS: number;
  readonly shellM: readonly number[];
  readonly solids: readonly Box[];
  readonly frequenciesHz: readonly number[];
}

const ROOMS = [
  'plain-box',
  'one-soffit',
  'soffit3-risers2',
  'closet-l',
  'column-mid',
  'everything',
].map((name): ReferenceRoom => {
  const file = new URL(`./rooms/${name}.json`, import.meta.url);
  return JSON.parse(readFileSync(file, 'utf8')) as ReferenceRoom;
});

const errorsPercent = (found: Float64Array, room: ReferenceRoom, toHz: number): number[] =>
  room.frequenciesHz
    .filter((hz) => hz <= toHz)
    .map((hz, n) => 100 * Math.abs((found[n] ?? 0) / hz - 1));

describe.each(ROOMS)('the modes of $name', (room) => {
  const modes = solved(sizeOf(room.shellM), room.solids, {}, room.speedMS);
  const errors = errorsPercent(modes.frequenciesHz, room, 200);

  it('to 200 Hz are as many, each within 0.1 %', () => {
    expect(modes.frequenciesHz.length).toBe(errors.length);
    // The aim is 0.3 %; what has been reached is kept: 0.08 % at worst.
    expect(Math.max(...errors)).toBeLessThan(0.1);
  });

  it('are no further off than 1.5 times the estimate, mode by mode', () => {
    errors.forEach((error, n) => {
      expect(error).toBeLessThanOrEqual(1.5 * (modes.errorsPercent[n] ?? 0));
    });
    // And the estimate is of some use.
    expect(modes.errorPercent).toBeLessThan(0.3);
  });

  it('are within 1 % in the coarse quality too, and the estimate says so', () => {
    const coarse = solved(sizeOf(room.shellM), room.solids, { quality: 'coarse' }, room.speedMS);
    const rough = errorsPercent(coarse.frequenciesHz, room, 190);
    expect(Math.max(...rough)).toBeLessThan(1);
    expect(Math.max(...rough)).toBeLessThanOrEqual(1.5 * coarse.errorPercent);
  });
});

describe('the L of three unit squares', () => {
  // M. Dauge, benchmark computations for the L-shaped domain: first Neumann eigenvalues.
  const EIGENVALUES = [1.475621824, 3.534031367, 9.869604401, 9.869604401, 11.3894794];

  it('has the published eigenvalues', () => {
    // As a prism so low that its first mode of height lies above them; lengths in metres.
    const speedMS = 343.2;
    const size = sizeOf([2, 2, 0.5]);
    const corner = { min: [1, 1, 0], max: [2, 2, 0.5] } as const;
    const modes = solved(size, [corner], { limitHz: 200 }, speedMS);
    EIGENVALUES.forEach((eigenvalue, n) => {
      const hz = (speedMS / (2 * Math.PI)) * Math.sqrt(eigenvalue);
      const error = 100 * Math.abs((modes.frequenciesHz[n] ?? 0) / hz - 1);
      expect(error).toBeLessThan(0.05);
      expect(error).toBeLessThanOrEqual(1.5 * (modes.errorsPercent[n] ?? 0));
    });
  });
});
