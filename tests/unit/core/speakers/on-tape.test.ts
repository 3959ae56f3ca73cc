/** What angles and searches propose can be read off a tape, and is as right as before. */

import { describe, expect, it } from 'vitest';
import { placeSpeakers } from '../../../../core/placing/placer';
import { carpenterStepM } from '../../../../core/quantity/carpenter-step';
import type { LengthUnits } from '../../../../core/quantity/length';
import { finish } from '../../../../core/quantity/slices';
import { applyEdit } from '../../../../core/room/edits';
import { inInches } from '../../../../core/room/in-inches';
import { farCorner } from '../../../../core/room/point';
import type { PlacedSpeaker, Project } from '../../../../core/room/project';
import { firstPlace } from '../../../../core/speakers/first-place';
import { judgeSpeakers } from '../../../../core/speakers/judge';
import { onTape } from '../../../../core/speakers/on-tape';
import { EXAMPLES, example, given, roomOf } from '../../support/rooms';

const UNITS = ['metric', 'imperial'] as const;

/** Largest distance of a coordinate from a step, by tape from the nearer wall or the middle, m. */
function offTape(
  { room }: Project,
  places: readonly Pick<PlacedSpeaker, 'position'>[],
  units: LengthUnits,
): number {
  const far = farCorner(room.size);
  const stepM = carpenterStepM(units);
  const off = (lengthM: number): number => Math.abs(lengthM - Math.round(lengthM / stepM) * stepM);
  return Math.max(
    ...places.flatMap(({ position }) =>
      position.map((at, axis) => {
        const endM = far[axis] ?? 0;
        return Math.min(off(at), off(endM - at), Math.abs(at - endM / 2));
      }),
    ),
  );
}

/** The example as it opens in `units`. */
const opened = (name: (typeof EXAMPLES)[number], units: LengthUnits): Project =>
  units === 'imperial' ? inInches(example(name)) : example(name);

describe.each(UNITS)('places in %s units', (units) => {
  it.each(EXAMPLES)('by the placer are on the step in %s, and in range', (name) => {
    const project = opened(name, units);
    const { edit, chosen } = finish(placeSpeakers(project, {}, units));
    expect(chosen.length).toBeGreaterThan(3);
    expect(offTape(project, chosen, units)).toBeLessThan(2e-5);
    const judged = judgeSpeakers(applyEdit(project, edit)).speakers;
    const within = chosen.filter(({ beside }) => beside === null).map(({ channel }) => channel);
    for (const { channel, inRange } of judged) {
      if (within.includes(channel))
        expect({ channel, inRange }).toEqual({ channel, inRange: true });
    }
  });

  it.each(EXAMPLES)('at their angles are on the step in %s, and in range', (name) => {
    const project = opened(name, units);
    const layout = given(judgeSpeakers(project).layout);
    const placed = layout.channels.flatMap((channel) => firstPlace(project, channel, units) ?? []);
    expect(placed.length).toBeGreaterThan(3);
    expect(offTape(project, placed, units)).toBeLessThan(2e-5);
    const judged = judgeSpeakers({ ...project, speakers: { ...project.speakers, placed } });
    const { label } = given(layout.channels.find(({ label: at }) => at === 'M+000'));
    // The centre may have to go below a picture; the others are where their angles want them.
    expect(judged.speakers.filter(({ channel, inRange }) => !inRange && channel !== label)).toEqual(
      [],
    );
  });
});

describe('a place on the tape', () => {
  const { room } = roomOf({ size: { width: 4.003, length: 5, height: 2.5 } });

  it('is measured from the nearer wall, so that pairs mirror', () => {
    const [left] = onTape(room, [0.6237, 0.12, 1.1], 'metric');
    const [right] = onTape(room, [4.003 - 0.6237, 0.12, 1.1], 'metric');
    expect(left).toBeCloseTo(0.625, 9);
    expect(4.003 - right).toBeCloseTo(0.625, 9);
    expect(onTape(room, [2.0015, 0.12, 1.1], 'metric')[0]).toBeCloseTo(2.0015, 9);
  });

  it('keeps a stated box against its wall, and moves an unstated one to the step', () => {
    expect(onTape(room, [1, 0.1834, 1.1], 'imperial', 0.1834)[1]).toBe(0.1834);
    expect(onTape(room, [1, 0.12, 1.1], 'imperial')[1]).toBeCloseTo(4.75 * 0.0254, 5);
    // Flush stays flush.
    expect(onTape(room, [4.003, 1.2344, 1.1], 'metric')).toEqual([4.003, 1.235, 1.1]);
  });

  it('leaves the axis of the studs alone', () => {
    expect(onTape(room, [1.2192, 0.12, 1.1], 'metric', undefined, [0])[0]).toBe(1.2192);
  });
});
