import { describe, expect, it } from 'vitest';
import {
  earlyAtSeat,
  SHOWN_TO_MS,
  type EarlyAtSeat,
} from '../../../../core/reflections/early-at-seat';
import { earlyReflections, excessDb } from '../../../../core/reflections/early-limit';
import type { Project } from '../../../../core/room/project';
import { seatsOf } from '../../../../core/room/seats';
import { given, roomOf, type Fields } from '../../support/rooms';
import { box, SPEED_MS } from './support';

/** Two loudspeakers and two seats in a 4 x 9 x 3 m room. */
const bare = (solids: readonly Fields[] = []): Project =>
  roomOf(
    { solids, size: { width: 4, length: 9, height: 3 } },
    {
      speakers: {
        layout: '0+5+0',
        placed: [
          { channel: 'M+000', position: [2, 1, 1.2] },
          { channel: 'M+030', position: [1, 1, 1.2] },
        ],
      },
      seating: { rows: [{ id: 'row-1', seats: 2, y: 6, earHeightM: 1.2, eyeHeightM: 1.3 }] },
    },
  );

const at = (project: Project, channel: string, seat = 0): EarlyAtSeat =>
  earlyAtSeat(project, SPEED_MS, channel, given(seatsOf(project)[seat]));

describe('first reflections at a seat', () => {
  it('are those that the limit judges, and later ones that it does not', () => {
    const project = bare();
    const found = at(project, 'M+030', 1);
    if (found.kind !== 'heard') throw new Error(found.kind);
    const { reflections } = found;
    const judged = earlyReflections(project, SPEED_MS).filter(
      ({ channel, seat }) => channel === 'M+030' && seat.seat === 2,
    );
    const early = reflections.filter(({ path }) => path.delayMs <= 15);
    expect(early.map(({ hit }) => hit.face).sort()).toEqual(
      judged.map(({ hit }) => hit.face).sort(),
    );
    for (const { levelDb, overDb } of early) expect(overDb).toBe(excessDb(levelDb));
    const back = given(reflections.find(({ hit }) => hit.face === 'back'));
    expect(back.path.delayMs).toBeGreaterThan(15);
    expect(back.path.delayMs).toBeLessThan(SHOWN_TO_MS);
    expect(back).toMatchObject({ overDb: 0 });
    expect(excessDb(back.levelDb)).toBeGreaterThan(0);
    const delays = reflections.map(({ path }) => path.delayMs);
    expect(delays).toEqual([...delays].sort((a, b) => a - b));
    // The wall behind the loudspeaker is in the shadow of its box.
    expect(reflections.map(({ hit }) => hit.face)).not.toContain('front');
    expect(found.leftOut).toBe(1);
  });

  it('say where there is nothing to judge', () => {
    expect(at(bare(), 'M-030')).toEqual({ kind: 'outside' });
    const post = box('post', [1.7, 3, 0], [2.3, 3.2, 3], 'column');
    expect(at(bare([post]), 'M+000')).toEqual({ kind: 'hidden' });
    const closet = box('closet', [1.8, 0, 0], [2.2, 2, 3], 'closet');
    expect(at(bare([closet]), 'M+000')).toEqual({ kind: 'outside' });
  });
});
