/** Rooms as people build them: usual sizes, finishes, fittings, seats and loudspeakers, some of it wrong. */

import fc from 'fast-check';
import type { Project } from '../../../core/room/project';
import { LAYOUTS, type Layout } from '../../../core/speakers/layouts';
import { layoutEdit } from '../../../core/speakers/layout-edit';
import { applyEdit } from '../../../core/room/edits';
import { cm } from './arbitrary-project';
import { roomOf, type Fields } from './rooms';

const FLOORS = ['floor-concrete', 'carpet-heavy-pad', 'floor-wood-joists', 'carpet-9-felt'];
const WALLS = [
  'gyp13-stud',
  'concrete-poured',
  'drape-heavy-half',
  'gf-50-rigid',
  'panel-12-frame',
];
const CEILINGS = ['gyp13-stud', 'gyp-ceiling-battens', 'tile-mf-13-direct'];

const size = fc.record({ width: cm(260, 600), length: cm(320, 900), height: cm(205, 300) });

type Size = { readonly width: number; readonly length: number; readonly height: number };

const share = (low: number, high: number): fc.Arbitrary<number> =>
  fc.integer({ min: Math.round(low * 100), max: Math.round(high * 100) }).map((n) => n / 100);

const round = (value: number): number => Math.round(value * 100) / 100;

function soffit({ width, length, height }: Size): fc.Arbitrary<Fields> {
  return fc
    .record({
      wide: share(0.1, 0.3),
      deep: cm(20, 40),
      kind: fc.constantFrom('soffit', 'column', 'riser'),
    })
    .map(({ wide, deep, kind }): Fields => {
      const box =
        kind === 'soffit'
          ? { min: [0, 0, round(height - deep)], max: [round(width * wide), length, height] }
          : kind === 'column'
            ? {
                min: [round(width * 0.7), round(length * 0.45), 0],
                max: [round(width * 0.7 + 0.15), round(length * 0.45 + 0.15), height],
              }
            : { min: [0, round(length * 0.7), 0], max: [width, length, round(deep / 2)] };
      return { id: `${kind}-1`, kind, ...box };
    });
}

const patch = (id: string): fc.Arbitrary<Fields> =>
  fc.record({
    id: fc.constant(id),
    face: fc.constantFrom('left', 'right', 'back', 'ceiling'),
    rect: fc
      .tuple(cm(0, 300), cm(0, 120), cm(40, 120), cm(60, 130))
      .map(([u, v, w, h]) => [u, v, round(u + w), round(v + h)]),
    finish: fc.constantFrom('gf-50-rigid', 'gf-25-rigid', 'gyp13-stud'),
  });

function fieldsFor(shell: Size): fc.Arbitrary<readonly [Fields, Fields, Layout]> {
  const { width, length } = shell;
  return fc
    .record({
      floor: fc.constantFrom(...FLOORS),
      wall: fc.constantFrom(...WALLS),
      back: fc.constantFrom(...WALLS),
      ceiling: fc.constantFrom(...CEILINGS),
      solids: fc.oneof(
        fc.constant([]),
        soffit(shell).map((one) => [one]),
      ),
      patches: fc.oneof(
        fc.constant([]),
        fc.tuple(patch('panel-1'), patch('panel-2')),
        fc.tuple(patch('panel-1'), patch('door-1')),
      ),
      seats: fc.integer({ min: 1, max: 4 }),
      y: share(0.5, 0.85),
      pitchM: cm(55, 80),
      screen: share(0.4, 0.85),
      target: fc.constantFrom('home-cinema', 'bs1116'),
      layout: fc.constantFrom(...LAYOUTS),
      sub: fc.tuple(share(0.1, 0.9), share(0.05, 0.3)),
    })
    .map((r) => [
      {
        size: shell,
        solids: r.solids,
        patches: r.patches,
        finishes: {
          ...{ front: r.wall, left: r.wall, right: r.wall, back: r.back },
          ...{ floor: r.floor, ceiling: r.ceiling },
        },
      },
      {
        target: { kind: r.target },
        seating: {
          rows: [{ id: 'row-1', seats: r.seats, pitchM: r.pitchM, y: round(length * r.y) }],
        },
        screen: { widthM: round(width * r.screen) },
        speakers: {
          layout: r.layout.id,
          subwoofers: [
            { id: 'sub-1', position: [round(width * r.sub[0]), round(length * r.sub[1]), 0.2] },
          ],
        },
      },
      r.layout,
    ]);
}

/** A room with its loudspeakers where the layout has them, but for some that stand a little off. */
export const plausibleRoom: fc.Arbitrary<Project> = size.chain((shell) =>
  fc
    .tuple(fieldsFor(shell), fc.array(cm(-60, 60), { minLength: 24, maxLength: 24 }))
    .map(([[room, rest, layout], off]) => {
      const bare = roomOf(room, rest);
      const full = applyEdit(bare, layoutEdit(bare, layout));
      const placed = full.speakers.placed.map((speaker, i) => {
        const [dx, dz] = [off[2 * i] ?? 0, off[2 * i + 1] ?? 0];
        if (i % 3 !== 0) return speaker;
        const [x, y, z] = speaker.position;
        return { ...speaker, position: [round(x + dx), y, round(z + dz / 3)] as const };
      });
      return { ...full, speakers: { ...full.speakers, placed } };
    }),
);
