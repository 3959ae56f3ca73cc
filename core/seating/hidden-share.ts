/**
 * What heads and shoulders in front hide of the picture from an eye: each person in front is seen
 * face on as two rectangles, a head and the shoulders below it, thrown from the eye onto the picture's
 * plane (y = 0); the share is the area of their union within the picture, exact.
 */

import type { Point, Project } from '../room/project';
import { screenRect, type ScreenRect } from '../room/screen';
import { peopleOf } from '../scene/people';

/**
 * A person as the ones behind see him, m: breadth of a head and of shoulders, crown above the eye and
 * shoulders below it (a tall man, from memory; 0.12 m from eye to crown is the figure behind the
 * C-values).
 */
export const PERSON_M = {
  headBreadth: 0.16,
  crownOverEye: 0.12,
  shoulderBreadth: 0.5,
  shouldersUnderEye: 0.25,
} as const;

type Rect = readonly [left: number, bottom: number, right: number, top: number];

/** Share of the picture, 0 to 1, that the people with their eyes at `others` hide from `eye`. */
export function hiddenShare(eye: Point, others: readonly Point[], picture: ScreenRect): number {
  const { leftX, rightX, bottomZ, topZ } = picture;
  const shadows = others.flatMap((other) => shadowsOf(eye, other));
  const clipped = shadows
    .map(([left, bottom, right, top]): Rect => {
      return [
        Math.max(left, leftX),
        Math.max(bottom, bottomZ),
        Math.min(right, rightX),
        Math.min(top, topZ),
      ];
    })
    .filter(([left, bottom, right, top]) => right > left && top > bottom);
  return unionArea(clipped) / ((rightX - leftX) * (topZ - bottomZ));
}

/** What a person before the eye covers of the plane y = 0; nothing where he is beside it or behind. */
function shadowsOf(eye: Point, other: Point): readonly Rect[] {
  if (other[1] <= 0 || other[1] >= eye[1]) return [];
  const scale = eye[1] / (eye[1] - other[1]);
  const thrown = (axis: 0 | 2, at: number): number => eye[axis] + (at - eye[axis]) * scale;
  const rect = (halfM: number, topM: number): Rect => [
    thrown(0, other[0] - halfM),
    -Infinity,
    thrown(0, other[0] + halfM),
    thrown(2, topM),
  ];
  return [
    rect(PERSON_M.headBreadth / 2, other[2] + PERSON_M.crownOverEye),
    rect(PERSON_M.shoulderBreadth / 2, other[2] - PERSON_M.shouldersUnderEye),
  ];
}

/** Area that rectangles cover together, by strips between their upright edges. */
function unionArea(rects: readonly Rect[]): number {
  const edges = [...new Set(rects.flatMap(([left, , right]) => [left, right]))].sort(
    (a, b) => a - b,
  );
  let area = 0;
  for (const [n, right] of edges.entries()) {
    const left = edges[n - 1];
    if (left === undefined) continue;
    const spans = rects
      .filter((rect) => rect[0] <= left && rect[2] >= right)
      .map(([, bottom, , top]) => [bottom, top] as const)
      .sort((a, b) => a[0] - b[0]);
    let covered = 0;
    let reached = -Infinity;
    for (const [bottom, top] of spans) {
      covered += Math.max(0, top - Math.max(bottom, reached));
      reached = Math.max(reached, top);
    }
    area += covered * (right - left);
  }
  return area;
}

export interface SeatView {
  readonly row: string;
  /** From 1, from the left hand of a person who faces the screen. */
  readonly seat: number;
  readonly eye: Point;
  readonly hiddenShare: number;
}

/** The view of the picture from every seat, with all other seats taken. */
export function seatViews(project: Project): readonly SeatView[] {
  const picture = screenRect(project);
  const people = peopleOf(project);
  return people.map(({ row, seat, eyes }) => ({
    row,
    seat,
    eye: eyes,
    hiddenShare: hiddenShare(
      eyes,
      people.filter((other) => other.eyes !== eyes).map((other) => other.eyes),
      picture,
    ),
  }));
}
