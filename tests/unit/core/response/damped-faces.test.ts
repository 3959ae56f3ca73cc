import { describe, expect, it } from 'vitest';
import { roomField } from '../../../../core/analysis/room-field';
import { spaceOf } from '../../../../core/analysis/named-modes';
import { admittanceOf } from '../../../../core/modes/modal-decay';
import { finish } from '../../../../core/quantity/slices';
import { levelDb, pathResponse } from '../../../../core/response/path';
import { roomModesTails, tailOf } from '../../../../core/response/room-modes-tail';
import { FACES, type Point, type Project } from '../../../../core/room/project';
import { roomModes } from '../../../../core/room-modes/room-modes';
import { given, roomOf } from '../../support/rooms';
import { directLevels, faceLosses } from './direct-solve';

const SIZE = { width: 3.4, length: 4.6, height: 2.4 };
const SOURCES: readonly Point[] = [
  [0.3, 0.3, 0.2],
  [3.1, 0.3, 0.3],
];
const SEATS: readonly Point[] = [
  [1.2, 2.4, 1.1],
  [1.7, 2.5, 1.15],
  [2.3, 3.9, 1.4],
];
const HZ = Float64Array.from({ length: 27 }, (_, n) => 20 + 5 * n);
/** Dips deeper than this against the free field at 1 m are left out of the comparison, dB. */
const NOTCH_DB = -15;
const OCTAVES = ['63', '125', '250', '500', '1000', '2000', '4000', '8000'];

type Coefficients = Readonly<Record<(typeof FACES)[number], number>>;

/** A shell whose faces absorb `coefficients`, the same at every frequency. */
function shellOf(coefficients: Coefficients): Project {
  const finishesCustom = FACES.map((face) => ({
    id: `own-${face}`,
    name: face,
    absorption: Object.fromEntries(OCTAVES.map((hz) => [hz, coefficients[face]])),
    source: 'made for this test',
  }));
  const finishes = Object.fromEntries(FACES.map((face) => [face, `own-${face}`]));
  return roomOf({ size: SIZE, finishes }, { finishesCustom });
}

/** Largest distance in dB over six paths, to `highHz`, of the program's response from the solve without modes. */
function deviationDb(coefficients: Coefficients, highHz: number): number {
  const project = shellOf(coefficients);
  const space = spaceOf(project);
  const outcome = finish(roomModes(space, { keepFactor: true }));
  if (!outcome.ok) throw new Error('refused');
  const modes = outcome.modes;
  const hz = HZ.filter((value) => value <= highHz);
  const side = (low: keyof Coefficients, high: keyof Coefficients): readonly [number, number] => [
    admittanceOf(coefficients[low]),
    admittanceOf(coefficients[high]),
  ];
  const losses = faceLosses(modes, space.speedMS, [
    side('left', 'right'),
    side('front', 'back'),
    side('floor', 'ceiling'),
  ]);
  const direct = directLevels(space, modes, SOURCES, SEATS, hz, losses);
  const { field, damping } = roomField(project, modes);
  const tails = finish(roomModesTails(modes, SOURCES, SEATS));
  let largest = 0;
  SOURCES.forEach((source, s) =>
    SEATS.forEach((seat, r) => {
      const tail = tailOf(given(tails[s]?.[r]));
      const levels = levelDb(given(pathResponse(field, source, seat, hz, damping, tail)));
      direct[s]?.[r]?.forEach((level, f) => {
        if (level > NOTCH_DB) largest = Math.max(largest, Math.abs(level - given(levels[f])));
      });
    }),
  );
  return largest;
}

const all = (coefficient: number): Coefficients => ({
  front: coefficient,
  back: coefficient,
  left: coefficient,
  right: coefficient,
  floor: coefficient,
  ceiling: coefficient,
});

describe('the response of a room whose faces absorb, against a harmonic solve with those admittances', () => {
  it('is within 0.5 dB to 150 Hz where every face absorbs 0.05', () => {
    const largest = deviationDb(all(0.05), 150);
    expect(largest).toBeLessThan(0.5);
  });

  it('is within 0.5 dB to 150 Hz where one face absorbs 0.08 and the others 0.03', () => {
    const largest = deviationDb({ ...all(0.03), back: 0.08 }, 150);
    expect(largest).toBeLessThan(0.5);
  });

  it('is within 0.3 dB below the first mode of a treated room: even pressure meets each face once', () => {
    const largest = deviationDb(all(0.4), 30);
    expect(largest).toBeLessThan(0.3);
  });
});
