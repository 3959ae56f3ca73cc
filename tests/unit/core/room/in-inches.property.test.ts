/** A room redrawn in inches is the same room: same order, same contacts, and whole figures. */

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { analyze } from '../../../../core/analysis/analyze';
import { METRES_PER_INCH } from '../../../../core/quantity/length';
import { faceAxes, patchSide } from '../../../../core/room/faces';
import { openRoom, saveRoom } from '../../../../core/room/open-room';
import { farCorner } from '../../../../core/room/point';
import type { Project } from '../../../../core/room/project';
import { inInches } from '../../../../core/room/in-inches';
import { arbitraryProject } from '../../support/arbitrary-project';
import { EXAMPLES, example } from '../../support/rooms';

/** Every place along each axis, m: walls, corners, patches, loudspeakers, subwoofers. */
function places({ room, speakers, screen, seating }: Project): readonly (readonly number[])[] {
  const far = farCorner(room.size);
  return ([0, 1, 2] as const).map((axis) => [
    0,
    far[axis],
    far[axis] / 2,
    ...room.solids.flatMap(({ min, max }) => [min[axis], max[axis]]),
    ...room.patches.flatMap(({ face, rect: [u0, v0, u1, v1] }) => {
      const [u, v] = faceAxes(patchSide(face));
      return axis === u ? [u0, u1] : axis === v ? [v0, v1] : [];
    }),
    ...speakers.placed.map(({ position }) => position[axis]),
    ...speakers.subwoofers.map(({ position }) => position[axis]),
    ...seating.rows.map(({ y, riserM, x = 0 }) => [x, y, riserM][axis] ?? 0),
    ...(axis === 2 ? [screen.bottomM] : []),
  ]);
}

/** Every length of the room that is told, m. */
const lengths = ({ seating, screen, speakers }: Project): readonly number[] => [
  ...seating.rows.flatMap(({ pitchM, earHeightM, eyeHeightM }) => [pitchM, earHeightM, eyeHeightM]),
  screen.widthM,
  ...speakers.placed.flatMap(({ boxM }) => boxM ?? []),
];

const offInches = (lengthM: number, parts: number): number => {
  const steps = (lengthM / METRES_PER_INCH) * parts;
  return (Math.abs(steps - Math.round(steps)) / parts) * METRES_PER_INCH;
};

describe('a room redrawn in inches', () => {
  it('keeps the order of all places, and equal ones equal, and opens', () => {
    fc.assert(
      fc.property(arbitraryProject, (project) => {
        const moved = inInches(project);
        expect(openRoom(saveRoom(moved)).ok).toBe(true);
        const after = places(moved);
        places(project).forEach((before, axis) => {
          const order = before.map((at, n) => [at, after[axis]?.[n] ?? NaN] as const);
          order.sort(([a, x], [b, y]) => (Math.abs(a - b) < 1e-7 ? x - y : a - b));
          order.forEach(([at, to], n) => {
            const [atBefore, toBefore] = order[n - 1] ?? [-Infinity, -Infinity];
            expect(to).toBeGreaterThanOrEqual(toBefore - 1e-9);
            if (at - atBefore < 1e-7) expect(to).toBeCloseTo(toBefore, 4);
            // Half an inch of its own, and as much of the wall that it is measured from.
            expect(Math.abs(to - at)).toBeLessThan(METRES_PER_INCH + 1e-5);
          });
        });
      }),
      { numRuns: 60 },
    );
  });

  it.each(EXAMPLES)('of %s has no other part of an inch than halves', (name) => {
    const before = example(name);
    const moved = inInches(before);
    const { width, length, height } = moved.room.size;
    for (const side of [width, length, height]) expect(offInches(side, 1)).toBeLessThan(1e-5);
    for (const at of [...places(moved).flat(), ...lengths(moved)]) {
      expect(offInches(at, 2)).toBeLessThan(1.1e-5);
    }
    expect(
      places(before)
        .flat()
        .some((at) => offInches(at, 2) > 1e-3),
    ).toBe(true);
  });

  it.each(EXAMPLES)('of %s has the findings that it has in centimetres', (name) => {
    const ids = (project: Project): readonly string[] =>
      analyze(project, 'imperial')
        .findings.map(({ id, severity }) => `${severity} ${id}`)
        .sort();
    expect(ids(inInches(example(name)))).toEqual(ids(example(name)));
  });
});
