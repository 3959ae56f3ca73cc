import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { farCorner } from '../../../../core/room/point';
import type { Point, Room } from '../../../../core/room/project';
import { isInTheOpen } from '../../../../core/room/space';
import { castRay, type Surroundings } from '../../../../core/scene/ray';
import { isClear, sightOf } from '../../../../core/reflections/sight';
import { columnOf, sightFrom } from '../../../../core/speakers/strip-column';
import { arbitraryProject } from '../../support/arbitrary-project';
import { given, roomOf } from '../../support/rooms';

const around = ({ size, solids }: Room): Surroundings => ({
  shell: { min: [0, 0, 0], max: farCorner(size) },
  solids,
});

const { room } = roomOf({
  solids: [{ id: 'post', kind: 'column', min: [1, 2, 0], max: [1.5, 2.5, 3] }],
});

/** Shares of the shell that fall on no plane of a file, which has whole centimetres. */
const share = fc.integer({ min: 1, max: 9_998 }).map((n) => (n + 0.3717) / 10_000);
const inShell = fc.tuple(share, share, share);
const placeIn = ({ size }: Room, [x, y, z]: readonly [number, number, number]): Point => [
  x * size.width,
  y * size.length,
  z * size.height,
];

describe('a ray', () => {
  it('meets the side of a solid that looks at it, else the shell', () => {
    const cast = (step: Point) => castRay(around(room), [0.5, 2.25, 1], step);
    expect(cast([1, 0, 0])).toEqual({ face: 'post:left', at: [1, 2.25, 1], steps: 0.5 });
    expect(cast([-2, 0, 0])).toEqual({ face: 'left', at: [0, 2.25, 1], steps: 0.25 });
    expect(given(cast([0, 1, 0])).face).toBe('back');
    expect(given(cast([0, 0, -1])).face).toBe('floor');
    expect(given(cast([0, 0, 1])).face).toBe('ceiling');
    expect(given(castRay(around(room), [1.2, 4, 1], [0, -1, 0])).face).toBe('post:back');
  });

  it('begins in the shell or meets nothing', () => {
    expect(castRay(around(room), [-1, 2, 1], [-1, 0, 0])).toBeNull();
    expect(castRay(around(room), [-1, 2, 1], [1, 0, 0])).toBeNull();
  });

  it('ends where the open ends, as one finds who walks along it', () => {
    fc.assert(
      fc.property(arbitraryProject, inShell, inShell, (project, a, b) => {
        const from = placeIn(project.room, a);
        const to = placeIn(project.room, b);
        if (!isInTheOpen(from, project.room)) return;
        const lengthM = Math.hypot(...from.map((at, n) => (to[n] ?? 0) - at));
        if (lengthM < 0.01) return;
        const step = from.map((at, n) => ((to[n] ?? 0) - at) / lengthM) as unknown as Point;
        const { steps } = given(castRay(around(project.room), from, step));
        const at = (way: number): Point =>
          from.map((start, n) => start + (step[n] ?? 0) * way) as unknown as Point;
        // No sample before its end is in a solid, and right behind it there is one, or the shell ends.
        for (let n = 0; n < 200; n++)
          expect(isInTheOpen(at((steps * n) / 200), project.room)).toBe(true);
        expect(isInTheOpen(at(steps + 1e-7), project.room)).toBe(false);
      }),
      { numRuns: 150 },
    );
  });
});

describe('the special forms of a ray', () => {
  it('for a yes or no answers as the ray does', () => {
    fc.assert(
      fc.property(arbitraryProject, inShell, inShell, (project, a, b) => {
        const [from, to] = [placeIn(project.room, a), placeIn(project.room, b)];
        if (!isInTheOpen(from, project.room) || !isInTheOpen(to, project.room)) return;
        const step = from.map((at, n) => (to[n] ?? 0) - at) as unknown as Point;
        const met = given(castRay(around(project.room), from, step));
        if (Math.abs(met.steps - 1) < 1e-6) return;
        expect(isClear(sightOf(project.room), from, to)).toBe(met.steps > 1);
      }),
      { numRuns: 400 },
    );
  });

  it('for all elevations at once sees the face that the ray meets', () => {
    const angle = fc.integer({ min: -179, max: 179 }).map((deg) => ((deg + 0.37) * Math.PI) / 180);
    const slope = fc.integer({ min: -300, max: 300 }).map((n) => (n + 0.41) / 100);
    fc.assert(
      fc.property(arbitraryProject, inShell, angle, slope, (project, a, azimuth, rise) => {
        const ears = placeIn(project.room, a);
        const view = sightFrom(ears, project.room, 0);
        if (!view) return;
        const step: Point = [-Math.sin(azimuth), -Math.cos(azimuth), rise];
        const met = castRay(view, ears, step);
        const seen = columnOf(view, azimuth, [rise - 0.5, rise + 0.5]).find(
          ({ low, high }) => low < rise - 1e-6 && high > rise + 1e-6,
        );
        if (!seen || !met) return;
        expect(seen.face).toBe(met.face);
        seen.at(rise).forEach((at, n) => expect(at).toBeCloseTo(met.at[n] ?? 0, 6));
      }),
      { numRuns: 400 },
    );
  });
});
