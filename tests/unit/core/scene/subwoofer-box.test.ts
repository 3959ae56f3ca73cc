import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { obstacleOf } from '../../../../core/bass/obstacles';
import { subwooferPlaces } from '../../../../core/bass/places';
import { analyze } from '../../../../core/analysis/analyze';
import { overlapM } from '../../../../core/scene/box';
import { boxOfSize, subwooferBox, withBox } from '../../../../core/scene/subwoofer-box';
import type { Point, Project } from '../../../../core/room/project';
import { bodiesOf } from '../../../../core/scene/bodies';
import { arbitraryProject, cm } from '../../support/arbitrary-project';
import { given, only, roomOf } from '../../support/rooms';

/** 4 x 5 x 3 m without seats. */
const ROOM = roomOf({}, { seating: { rows: [] }, screen: { widthM: 1, bottomM: 1.5 } });
const SIZE: Point = [0.6, 0.4, 0.3];

const sides = (project: Project, position: Point, size: Point = SIZE): readonly number[] => {
  const { min, max } = boxOfSize(project, position, size);
  return [0, 1, 2].map((axis) => Math.round(((max[axis] ?? 0) - (min[axis] ?? 0)) * 1e6) / 1e6);
};
const withSub = (position: Point, boxM?: Point): Project => ({
  ...ROOM,
  speakers: {
    ...ROOM.speakers,
    subwoofers: [{ id: 's', position, ...(boxM ? { boxM } : {}) }],
  },
});

describe('the box of a subwoofer', () => {
  it('turns its back to the nearest wall', () => {
    expect(sides(ROOM, [2, 0.5, 0.2])).toEqual([0.6, 0.3, 0.4]);
    expect(sides(ROOM, [0.5, 2, 0.2])).toEqual([0.3, 0.6, 0.4]);
    expect(sides(ROOM, [3.5, 2, 0.2])).toEqual([0.3, 0.6, 0.4]);
    expect(sides(ROOM, [2, 4.8, 0.2])).toEqual([0.6, 0.3, 0.4]);
  });

  it('turns its back to a closet that stands nearer, and not to a stage', () => {
    const beside = (kind: string, high: number) =>
      roomOf({ solids: [{ id: 'c', kind, min: [1, 2, 0], max: [1.5, 4, high] }] });
    expect(sides(beside('closet', 3), [1.7, 3, 0.2])).toEqual([0.3, 0.6, 0.4]);
    expect(sides(beside('stage', 0.2), [1.7, 4.5, 0.2])).toEqual([0.6, 0.3, 0.4]);
  });

  it('stands the way round that fits in a corner', () => {
    // 0.3 from the left and 0.15 from the front: only one way round.
    expect(sides(ROOM, [0.3, 0.15, 0.2])).toEqual([0.6, 0.3, 0.4]);
    expect(sides(ROOM, [0.15, 0.3, 0.2])).toEqual([0.3, 0.6, 0.4]);
    // A deep one: its middle is nearer to the wall beside it than to the one behind it.
    expect(sides(ROOM, [0.15, 0.3, 0.2], [0.3, 0.4, 0.6])).toEqual([0.3, 0.6, 0.4]);
  });

  it('is as stated, else a usual one or as large as its place allows', () => {
    expect(subwooferBox(ROOM, { id: 's', position: [2, 2, 0.2], boxM: SIZE })).toMatchObject({
      sizeM: SIZE,
      isStated: true,
    });
    const usual = (position: Point) => subwooferBox(ROOM, { id: 's', position }).sizeM;
    expect(usual([2, 2, 0.2])).toEqual([0.4, 0.4, 0.4]);
    expect(usual([0.15, 2, 0.2])).toEqual([0.3, 0.3, 0.3]);
    // Nearer than any subwoofer is deep: it is the place that is wrong.
    expect(usual([0.05, 2, 0.2])).toEqual([0.4, 0.4, 0.4]);
  });

  it('is one for search, findings and loudspeakers', () => {
    const there = withSub([2, 0.5, 0.2], SIZE);
    const { box } = subwooferBox(there, given(there.speakers.subwoofers[0]));
    expect(only(bodiesOf(there).filter(({ kind }) => kind === 'subwoofer')).box).toEqual(box);
    const { subwoofers } = there.speakers;
    // A usual box is 0.2 to either side; beside this one, 0.3 wide, another has no room at 0.45.
    const beside = obstacleOf(there, [2.45, 0.5, 0.2], [0.4, 0.4, 0.4], subwoofers);
    expect(beside).toEqual({ kind: 'subwoofer', id: 's' });
    expect(obstacleOf(there, [2.51, 0.5, 0.2], [0.4, 0.4, 0.4], subwoofers)).toBeNull();
    // Into the wall by 5 cm: a finding, which says nothing of a size that is only taken.
    const into = analyze(withSub([2, 0.1, 0.2], SIZE)).findings;
    const finding = only(into.filter(({ id }) => id === 'subwoofer-outside:s'));
    expect(finding.message).toBe('Its box reaches out of the room.');
  });

  it('keeps its foot and its walls when it gets another size', () => {
    const from = (position: Point, boxM: Point | null) =>
      withBox(ROOM, { id: 's', position, delayMs: 3 }, boxM);
    expect(from([0.2, 0.2, 0.2], [0.5, 0.6, 0.5])).toEqual({
      id: 's',
      position: [0.25, 0.25, 0.3],
      delayMs: 3,
      boxM: [0.5, 0.6, 0.5],
    });
    expect(from([3.8, 4.8, 0.2], [0.5, 0.6, 0.5]).position).toEqual([3.75, 4.75, 0.3]);
    expect(from([2, 2, 0.2], [0.5, 0.6, 0.5]).position).toEqual([2, 2, 0.3]);
    const stated = from([0.2, 0.2, 0.2], [0.5, 0.6, 0.5]);
    expect(withBox(ROOM, stated, null)).toEqual({ id: 's', position: [0.2, 0.2, 0.2], delayMs: 3 });
  });
});

describe('places for a box of any size', () => {
  it('touch what they stand along, and keep clear of each other’s walls', () => {
    const { allowed } = subwooferPlaces(ROOM, { stepM: 0.5, boxM: SIZE });
    const gaps = allowed.map((place) => {
      const { min, max } = boxOfSize(ROOM, place, SIZE);
      return Math.min(min[0], min[1], 4 - max[0], 5 - max[1]);
    });
    expect(gaps.length).toBeGreaterThan(20);
    for (const gap of gaps) expect(Math.abs(gap)).toBeLessThan(1e-9);
  });

  it('are clear of everything in any room', () => {
    fc.assert(
      fc.property(
        arbitraryProject,
        fc.tuple(cm(10, 80), cm(10, 80), cm(10, 80)),
        (project, boxM) => {
          for (const place of subwooferPlaces(project, { stepM: 0.7, boxM }).allowed) {
            const box = boxOfSize(project, place, boxM);
            for (const solid of project.room.solids)
              expect(overlapM(box, solid)).toBeLessThan(0.002);
            expect(obstacleOf(project, place, boxM)).toBeNull();
          }
        },
      ),
      { numRuns: 60 },
    );
  });
});
