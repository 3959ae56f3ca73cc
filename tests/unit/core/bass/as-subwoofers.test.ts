import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { asSubwoofers, presentSet } from '../../../../core/bass/as-subwoofers';
import type { Driven } from '../../../../core/bass/measure';
import { applyEdit } from '../../../../core/room/edits';
import { openRoom, saveRoom } from '../../../../core/room/open-room';
import type { Point } from '../../../../core/room/project';
import { arbitraryProject } from '../../support/arbitrary-project';

const BOX: Point = [0.4, 0.45, 0.5];

const PLACES: readonly Point[] = [
  [0.2, 0.2, 0.2],
  [2, 0.2, 0.2],
  [3.8, 0.2, 0.2],
  [3.8, 4, 0.2],
];

describe('a set as subwoofers', () => {
  it('moves the present ones, drives them as the set says and adds what is missing', () => {
    const present = [
      { id: 'sub-2', position: [1, 1, 1] as const, delayMs: 4, inverted: true, model: 'X' },
    ];
    expect(asSubwoofers([{ place: 1 }, { place: 3, levelDb: -3 }], PLACES, present, BOX)).toEqual([
      {
        id: 'sub-2',
        position: [2, 0.2, 0.2],
        boxM: BOX,
        delayMs: 0,
        inverted: false,
        model: 'X',
      },
      { id: 'sub-1', position: [3.8, 4, 0.2], boxM: BOX, levelDb: -3 },
    ]);
  });

  it('takes away what is too much', () => {
    const present = ['a', 'b', 'c'].map((id) => ({ id, position: PLACES[0] ?? [0, 0, 0] }));
    const left = asSubwoofers([{ place: 2, delayMs: 1 }], PLACES, present, BOX);
    expect(left).toEqual([{ id: 'a', position: [3.8, 0.2, 0.2], boxM: BOX, delayMs: 1 }]);
  });

  it('is again the set that it was made from', () => {
    const set: readonly Driven[] = [
      { place: 0, delayMs: 2, levelDb: 0, inverted: false },
      { place: 1, delayMs: 0, levelDb: -6, inverted: true },
    ];
    expect(presentSet(asSubwoofers(set, PLACES, [], BOX), 0)).toEqual(set);
    expect(presentSet([{ id: 'a', position: [1, 1, 1] }], 7)).toEqual([
      { place: 7, delayMs: 0, levelDb: 0, inverted: false },
    ]);
  });

  it('leaves a room that opens again, whatever was there before', () => {
    const driven = fc.record({
      place: fc.integer({ min: 0, max: 3 }),
      delayMs: fc.integer({ min: 0, max: 10 }),
      levelDb: fc.integer({ min: -6, max: 0 }),
    });
    fc.assert(
      fc.property(
        arbitraryProject,
        fc.array(driven, { minLength: 1, maxLength: 4 }),
        (project, set) => {
          const subwoofers = asSubwoofers(set, PLACES, project.speakers.subwoofers, BOX);
          const after = applyEdit(project, { kind: 'subwoofers', subwoofers, what: 'subwoofers' });
          expect(openRoom(saveRoom(after))).toEqual({ ok: true, project: after });
        },
      ),
      { numRuns: 100 },
    );
  });
});
