import { describe, expect, it } from 'vitest';
import type { Project } from '../../../../core/room/project';
import { hiddenPicture } from '../../../../core/scene/hidden-picture';
import { peopleOf } from '../../../../core/scene/people';
import { given, roomOf } from '../../support/rooms';

/** 4 x 5 x 3 m; a picture of 2 x 1 m from 1 m up; one seat in the middle, eyes 4 m off and 1.5 m up. */
const project: Project = roomOf(
  {},
  {
    screen: { widthM: 2, aspect: [2, 1], bottomM: 1 },
    seating: { rows: [{ id: 'a', seats: 1, y: 4, earHeightM: 1.4, eyeHeightM: 1.5 }] },
  },
);
const hidden = (min: [number, number, number], max: [number, number, number]) =>
  hiddenPicture({ min, max }, project, peopleOf(project));

describe('what a box hides of the picture', () => {
  it('half way to the eyes is twice as wide as the box', () => {
    // A board 2 m before the wall and 2 m before the eyes: 0.2 m become 0.4, wide and high.
    const { depthM, person } = given(hidden([1.9, 2, 1.4], [2.1, 2, 1.6]));
    expect(depthM).toBeCloseTo(0.4, 9);
    expect(person).toMatchObject({ row: 'a', seat: 1 });
  });

  it('is nothing where it stands below, beside or behind', () => {
    // From eyes at 1.5 m over a top at 0.9 m, 0.2 m before the wall: the shadow ends 0.87 m up.
    expect(hidden([1.9, 0, 0], [2.1, 0.2, 0.9])).toBeNull();
    expect(hidden([0, 0, 1], [0.5, 0.2, 2])).toBeNull();
    expect(hidden([1.9, 4.2, 1], [2.1, 4.6, 2])).toBeNull();
  });

  it('is told where its top reaches into the view by a little', () => {
    // Its back stands on the wall: 1.1 m less the 1 m at which the picture begins.
    expect(given(hidden([1.9, 0, 0], [2.1, 0.2, 1.1])).depthM).toBeCloseTo(0.1, 9);
  });
});
