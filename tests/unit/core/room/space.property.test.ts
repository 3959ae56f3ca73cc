import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Point, Room, Solid } from '../../../../core/room/project';
import { freeSpace } from '../../../../core/room/space';
import { roomOf } from '../../support/rooms';

interface Box {
  readonly min: Point;
  readonly max: Point;
}

const side = (min: number, max: number) => fc.integer({ min, max });

const span = (far: number): fc.Arbitrary<readonly [number, number]> =>
  fc.tuple(side(-1, far), side(1, far + 1)).filter(([a, b]) => a < b);

/** A shell on whole metres with up to five boxes on whole metres, some sticking out of it. */
const blocks = fc.tuple(side(2, 6), side(2, 7), side(2, 4)).chain(([width, length, height]) =>
  fc.record({
    size: fc.constant({ width, length, height }),
    boxes: fc.array(
      fc
        .tuple(span(width), span(length), span(height))
        .map(([x, y, z]): Box => ({ min: [x[0], y[0], z[0]], max: [x[1], y[1], z[1]] })),
      { maxLength: 5 },
    ),
  }),
);

type Blocks = typeof blocks extends fc.Arbitrary<infer T> ? T : never;

function roomWith({ size, boxes }: Blocks): Room {
  const { room } = roomOf({ size });
  const solids = boxes.map((box, i): Solid => ({
    id: `s${i}`,
    kind: 'other',
    finish: 'gyp13-stud',
    ...box,
  }));
  return { ...room, solids };
}

/** Whether the cubic metre that begins at x, y, z is air. */
function isFree({ size, boxes }: Blocks, [x, y, z]: Point): boolean {
  const inside = x >= 0 && x < size.width && y >= 0 && y < size.length && z >= 0 && z < size.height;
  return (
    inside &&
    !boxes.some(
      ({ min, max }) =>
        x >= min[0] && x < max[0] && y >= min[1] && y < max[1] && z >= min[2] && z < max[2],
    )
  );
}

const STEPS: readonly Point[] = [
  [1, 0, 0],
  [-1, 0, 0],
  [0, 1, 0],
  [0, -1, 0],
  [0, 0, 1],
  [0, 0, -1],
];

/** Cubic metres of air and square metres around it, counted cube by cube. */
function counted(model: Blocks): { readonly volume: number; readonly surface: number } {
  let volume = 0;
  let surface = 0;
  for (let x = 0; x < model.size.width; x++)
    for (let y = 0; y < model.size.length; y++)
      for (let z = 0; z < model.size.height; z++) {
        if (!isFree(model, [x, y, z])) continue;
        volume++;
        surface += STEPS.filter(
          (step) => !isFree(model, [x + step[0], y + step[1], z + step[2]]),
        ).length;
      }
  return { volume, surface };
}

/** Volume of the common part of boxes and shell, m3. */
function common(size: Blocks['size'], boxes: readonly Box[]): number {
  return [size.width, size.length, size.height].reduce((product, far, axis) => {
    const low = Math.max(0, ...boxes.map((box) => box.min[axis] ?? 0));
    const high = Math.min(far, ...boxes.map((box) => box.max[axis] ?? 0));
    return product * Math.max(0, high - low);
  }, 1);
}

/** Volume of the union of the boxes inside the shell by inclusion and exclusion, m3. */
function union(size: Blocks['size'], boxes: readonly Box[]): number {
  let sum = 0;
  for (let chosen = 1; chosen < 2 ** boxes.length; chosen++) {
    const some = boxes.filter((_, i) => (chosen >> i) % 2 === 1);
    sum += (some.length % 2 === 1 ? 1 : -1) * common(size, some);
  }
  return sum;
}

describe('free space among boxes on whole metres', () => {
  it('has the volume and the surface that a count of cubes gives', () => {
    fc.assert(
      fc.property(blocks, (model) => {
        const space = freeSpace(roomWith(model));
        const { volume, surface } = counted(model);
        expect(space.volumeM3).toBeCloseTo(volume, 9);
        expect(space.surfaceM2).toBeCloseTo(surface, 9);
      }),
    );
  });

  it('together with the union of the solids fills the shell', () => {
    fc.assert(
      fc.property(blocks, (model) => {
        const { width, length, height } = model.size;
        const { volumeM3 } = freeSpace(roomWith(model));
        expect(volumeM3 + union(model.size, model.boxes)).toBeCloseTo(width * length * height, 9);
      }),
    );
  });

  it('does not depend on the order of the solids', () => {
    fc.assert(
      fc.property(blocks, (model) => {
        const turned = { ...model, boxes: [...model.boxes].reverse() };
        const [a, b] = [freeSpace(roomWith(model)), freeSpace(roomWith(turned))];
        expect(b.volumeM3).toBeCloseTo(a.volumeM3, 9);
        expect(b.surfaceM2).toBeCloseTo(a.surfaceM2, 9);
      }),
      { numRuns: 50 },
    );
  });

  it('names every surface once, with an area above zero', () => {
    fc.assert(
      fc.property(blocks, (model) => {
        const { surfaces, surfaceM2 } = freeSpace(roomWith(model));
        const names = surfaces.map((surface) => `${surface.face} ${surface.finish}`);
        expect(new Set(names).size).toBe(names.length);
        expect(surfaces.filter((surface) => !(surface.areaM2 > 0))).toEqual([]);
        expect(surfaces.reduce((sum, s) => sum + s.areaM2, 0)).toBeCloseTo(surfaceM2, 9);
      }),
      { numRuns: 50 },
    );
  });
});

describe('a box that floats in a 6 x 7 x 4 m room', () => {
  it('takes its volume and adds its sides, wherever it floats', () => {
    const floating = fc
      .tuple(side(1, 999), side(1, 999), side(1, 999))
      .map((parts) => parts.map((n) => n / 1000) as [number, number, number]);
    fc.assert(
      fc.property(floating, ([u, v, w]) => {
        // 1 x 2 x 1 m: 2 m3 and 10 m2, in a shell of 168 m3 and 188 m2.
        const min: Point = [5 * u, 5 * v, 3 * w];
        const box = { min, max: [min[0] + 1, min[1] + 2, min[2] + 1] as const };
        const space = freeSpace(
          roomWith({ size: { width: 6, length: 7, height: 4 }, boxes: [box] }),
        );
        expect(space.volumeM3).toBeCloseTo(166, 6);
        expect(space.surfaceM2).toBeCloseTo(198, 6);
      }),
    );
  });
});

describe('patches of arbitrary places', () => {
  it('change which finish is where, and never the surface', () => {
    const rect = fc.tuple(span(6), span(4)).map(([u, v]) => [u[0], v[0], u[1], v[1]] as const);
    const face = fc.constantFrom('front', 'back', 'left', 'right', 'floor', 'ceiling');
    fc.assert(
      fc.property(blocks, fc.array(fc.tuple(face, rect), { maxLength: 3 }), (model, hung) => {
        const room = roomWith(model);
        const patches = hung.map(([on, at], i) => ({
          id: `p${i}`,
          kind: 'panel' as const,
          face: on,
          rect: at,
          finish: 'door-solid',
        }));
        const [bare, dressed] = [freeSpace(room), freeSpace({ ...room, patches })];
        const byFace = (space: typeof bare): Record<string, number> => {
          const sums: Record<string, number> = {};
          for (const s of space.surfaces) sums[s.face] = (sums[s.face] ?? 0) + s.areaM2;
          return sums;
        };
        expect(dressed.volumeM3).toBeCloseTo(bare.volumeM3, 9);
        const [before, after] = [byFace(bare), byFace(dressed)];
        expect(Object.keys(after).sort()).toEqual(Object.keys(before).sort());
        for (const [name, area] of Object.entries(before)) {
          expect(after[name]).toBeCloseTo(area, 9);
        }
      }),
      { numRuns: 60 },
    );
  });
});
