import { describe, expect, it } from 'vitest';
import { finish } from '../../../../core/quantity/slices';
import { modesBehind } from '../../../../core/response/modes-behind';
import { roomModesField, shellField } from '../../../../core/response/field';
import { levelDb, pathResponse, together, type Tail } from '../../../../core/response/path';
import { levelSpread } from '../../../../core/response/level-spread';
import { roomModesTails, tailOf } from '../../../../core/response/room-modes-tail';
import { shellTail } from '../../../../core/response/shell-tail';
import type { Point } from '../../../../core/room/project';
import type { Box } from '../../../../core/room-modes/grid';
import { SPEED_MS, sizeOf, solved } from '../room-modes/solve';
import { directLevels, evenLosses } from './direct-solve';

const ROOM = sizeOf([3.4, 4.6, 2.4]);
const SOLIDS: readonly Box[] = [
  { min: [0, 0, 2.1], max: [0.4, 4.6, 2.4] },
  { min: [0, 3.2, 0], max: [3.4, 4.6, 0.25] },
];
const SOURCES: readonly Point[] = [
  [0.3, 0.3, 0.2],
  [3.1, 0.3, 0.3],
];
const SEATS: readonly Point[] = [
  [1.2, 2.4, 1.1],
  [1.7, 2.5, 1.15],
  [2.3, 3.9, 1.4],
];
const HZ = Float64Array.from({ length: 37 }, (_, n) => 20 + 5 * n);
const DECAY_S = 0.4;

/** Dips deeper than this against the free field at 1 m are left out of the comparison, dB. */
const NOTCH_DB = -15;

/** Largest distances in dB over the six paths from the solve without modes. */
function deviations(solids: readonly Box[]) {
  const modes = solved(ROOM, solids, { keepFactor: true });
  const space = { size: ROOM, solids, speedMS: SPEED_MS };
  const direct = directLevels(
    space,
    modes,
    SOURCES,
    SEATS,
    HZ,
    evenLosses(modes, SPEED_MS, DECAY_S),
  );
  const tails = finish(roomModesTails(modes, SOURCES, SEATS));
  const largest = { withTail: 0, inNotches: 0, without: 0 };
  SOURCES.forEach((source, s) =>
    SEATS.forEach((seat, r) => {
      const standIns = tails[s]?.[r];
      const levels = [standIns ? tailOf(standIns) : undefined, undefined].map((tail) => {
        const damping = { modesS: DECAY_S };
        const path = pathResponse(roomModesField(modes), source, seat, HZ, damping, tail);
        if (!path) throw new Error('outside');
        return levelDb(path);
      });
      direct[s]?.[r]?.forEach((level, f) => {
        const [withTail, without] = levels.map((found) => Math.abs((found[f] ?? NaN) - level));
        const kind = level > NOTCH_DB ? 'withTail' : 'inNotches';
        largest[kind] = Math.max(largest[kind], withTail ?? NaN);
        largest.without = Math.max(largest.without, without ?? NaN);
      });
    }),
  );
  return largest;
}

describe('the modal sum against a harmonic solve of the same elements, 20 to 200 Hz', () => {
  it('is within 1 dB on six paths of a room with soffit and riser', () => {
    // Largest found: 0.9 dB, and 2.4 dB in a dip of -18 dB. It comes from the frequencies, which
    // the modes have corrected for the edges and the plain elements have not.
    const largest = deviations(SOLIDS);
    expect(largest.withTail).toBeLessThan(1);
    expect(largest.inNotches).toBeLessThan(3);
    // Several dB without what lies above the last mode.
    expect(largest.without).toBeGreaterThan(3);
  });

  it('is within 0.1 dB where there is no edge to correct for', () => {
    const largest = deviations([]);
    expect(Math.max(largest.withTail, largest.inNotches)).toBeLessThan(0.1);
  });
});

describe('the response', () => {
  const shell = shellField(ROOM, SPEED_MS, 200);
  const modes = solved(ROOM, SOLIDS, { keepFactor: true });
  const field = roomModesField(modes);
  const source: Point = [0.3, 0.3, 0.2];
  const seat: Point = [1.2, 2.4, 1.1];
  const path = (from: Point, to: Point) => {
    const found = pathResponse(field, from, to, HZ);
    if (!found) throw new Error('outside');
    return found;
  };

  it('is the same when source and receiver change places', () => {
    const there = levelDb(path(source, seat));
    levelDb(path(seat, source)).forEach((level, f) => {
      expect(level).toBeCloseTo(there[f] ?? NaN, 9);
    });
  });

  it('is the same shell by elements and by formula', () => {
    const plain = solved(ROOM, [], { keepFactor: true });
    const tails = finish(roomModesTails(plain, [source], [seat]));
    const byElements = pathResponse(
      roomModesField(plain),
      source,
      seat,
      HZ,
      undefined,
      tails[0]?.[0] ? tailOf(tails[0][0]) : undefined,
    );
    const tail = shellTail(ROOM, SPEED_MS, 200, source, seat);
    const byFormula = pathResponse(shell, source, seat, HZ, undefined, tail);
    if (!byElements || !byFormula) throw new Error('outside');
    const formula = levelDb(byFormula);
    levelDb(byElements).forEach((level, f) => {
      expect(Math.abs(level - (formula[f] ?? NaN))).toBeLessThan(0.7);
    });
  });

  it('of the shell does not depend on where the list of modes ends', () => {
    const at = (limitHz: number) => {
      const tail: Tail = shellTail(ROOM, SPEED_MS, limitHz, source, seat);
      const list = shellField(ROOM, SPEED_MS, limitHz);
      const found = pathResponse(list, source, seat, HZ, undefined, tail);
      if (!found) throw new Error('outside');
      return found;
    };
    const brute = pathResponse(shellField(ROOM, SPEED_MS, 2500), source, seat, HZ);
    const [low, high] = [at(210), at(400)];
    low.re.forEach((re, f) => {
      const im = low.im[f] ?? NaN;
      expect(re).toBeCloseTo(high.re[f] ?? NaN, 9);
      expect(im).toBeCloseTo(high.im[f] ?? NaN, 9);
      // The plain sum to 2500 Hz comes within 1 % of the free field at 1 m.
      const off = Math.hypot(re - (brute?.re[f] ?? NaN), im - (brute?.im[f] ?? NaN));
      expect(off).toBeLessThan(0.01);
    });
  });

  it('is nothing outside the free space', () => {
    expect(pathResponse(field, [0.2, 2, 2.3], seat, HZ)).toBeNull();
    expect(pathResponse(shell, source, [9, 9, 9], HZ)).toBeNull();
  });

  it('rises at the lowest frequencies as in a closed box', () => {
    // The mode at zero alone: |p| = rho c2 Q/(w V), over w rho Q/(4 pi): 4 pi c2/(w2 V).
    const hz = Float64Array.of(1);
    const found = pathResponse(shell, source, seat, hz, { modesS: 1e6 });
    const expected = (4 * Math.PI * SPEED_MS ** 2) / ((2 * Math.PI) ** 2 * shell.volumeM3);
    expect(found ? levelDb(found)[0] : NaN).toBeCloseTo(20 * Math.log10(expected), 1);
  });

  it('of two equal sources is 6 dB more, of opposite ones nothing', () => {
    const one = path(source, seat);
    const level = levelDb(one)[5] ?? NaN;
    const double = together([{ path: one }, { path: one }]);
    expect((double ? levelDb(double)[5] : NaN) ?? NaN).toBeCloseTo(level + 20 * Math.log10(2), 9);
    const none = together([{ path: one }, { path: one, drive: { inverted: true } }]);
    expect(none?.re.every((value) => value === 0)).toBe(true);
    const late = together([{ path: one, drive: { delayMs: 5 } }]);
    expect((late ? levelDb(late)[5] : NaN) ?? NaN).toBeCloseTo(level, 9);
  });

  it('names the mode behind a peak', () => {
    const hz = modes.frequenciesHz[0] ?? 0;
    const found = modesBehind(field, [{ at: source }], [3.1, 4.4, 1], hz, { modesS: 0.4 });
    expect(found[0]?.mode).toBe(0);
    expect(found[0]?.againstDeg).toBeLessThan(30);
    expect(found).toHaveLength(3);
  });

  it('spreads over seats', () => {
    const spread = levelSpread(SEATS.map((at) => levelDb(path(source, at))));
    expect(spread?.meanSpatialVarianceDb2).toBeGreaterThan(0);
    spread?.lowestDb.forEach((low, f) =>
      expect(low).toBeLessThanOrEqual(spread.highestDb[f] ?? NaN),
    );
    expect(levelSpread([])).toBeNull();
    expect(levelSpread([Float64Array.of(80)])?.meanSpatialVarianceDb2).toBe(0);
  });
});
