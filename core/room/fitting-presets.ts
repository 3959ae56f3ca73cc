/**
 * Ready fittings, sized as they are usually built and placed where they usually stand. Sizes are common
 * practice, in metres; each is cut to the shell it is put into.
 */

import { freeId } from './free-id';
import { roundLength } from '../quantity/length';
import { DEFAULT_SOLID_FINISH } from './defaults';
import { farCorner, mapPoint } from './point';
import type { Point, Project, ShellSize, Solid, SolidKind } from './project';

/** A fitting that the person can add by one press. */
export interface FittingPreset {
  readonly kind: SolidKind;
  readonly title: string;
  readonly about: string;
  /** Corners for this project: lowest and highest. */
  readonly place: (project: Project) => readonly [Point, Point];
  readonly finish: string;
}

const SOFFIT = { widthM: 0.6, depthM: 0.3 };
const RISER_HEIGHT_M = 0.3;

/** Side walls and ends along which a duct soffit may run. */
const RUNS = {
  left: ({ length }: ShellSize, top: number): readonly [Point, Point] => [
    [0, 0, top - SOFFIT.depthM],
    [SOFFIT.widthM, length, top],
  ],
  right: ({ width, length }: ShellSize, top: number): readonly [Point, Point] => [
    [width - SOFFIT.widthM, 0, top - SOFFIT.depthM],
    [width, length, top],
  ],
  back: ({ width, length }: ShellSize, top: number): readonly [Point, Point] => [
    [0, length - SOFFIT.widthM, top - SOFFIT.depthM],
    [width, length, top],
  ],
  front: ({ width }: ShellSize, top: number): readonly [Point, Point] => [
    [0, 0, top - SOFFIT.depthM],
    [width, SOFFIT.widthM, top],
  ],
} as const;

export type SoffitRun = keyof typeof RUNS;

const soffit = (run: SoffitRun, title: string): FittingPreset => ({
  kind: 'soffit',
  title,
  about: `${SOFFIT.widthM * 1000} by ${SOFFIT.depthM * 1000} mm along the ${run} wall`,
  place: ({ room }) => RUNS[run](room.size, room.size.height),
  finish: DEFAULT_SOLID_FINISH,
});

export const FITTING_PRESETS: readonly FittingPreset[] = [
  soffit('left', 'Soffit left'),
  soffit('right', 'Soffit right'),
  soffit('back', 'Soffit back'),
  soffit('front', 'Soffit front'),
  {
    kind: 'riser',
    title: 'Riser',
    about: 'a platform under the last row, to the back wall',
    place: ({ room, seating }) => {
      const { width, length } = room.size;
      const last = seating.rows.reduce((far, row) => Math.max(far, row.y), 0);
      const from = Math.min(Math.max(last - 1.2, length * 0.4), length - 0.6);
      return [
        [0, from, 0],
        [width, length, RISER_HEIGHT_M],
      ];
    },
    finish: 'platform-wood',
  },
  {
    kind: 'stage',
    title: 'Stage',
    about: 'a low stage under the screen',
    place: ({ room }) => [
      [0, 0, 0],
      [room.size.width, 0.5, 0.2],
    ],
    finish: 'platform-wood',
  },
  {
    kind: 'closet',
    title: 'Closet',
    about: '1 m square in the back right corner, to the ceiling',
    place: ({ room }) => [[room.size.width - 1, room.size.length - 1, 0], farCorner(room.size)],
    finish: DEFAULT_SOLID_FINISH,
  },
  {
    kind: 'column',
    title: 'Column',
    about: '0.25 m square, boxed, floor to ceiling',
    place: ({ room }) => [
      [room.size.width * 0.75 - 0.125, room.size.length / 2 - 0.125, 0],
      [room.size.width * 0.75 + 0.125, room.size.length / 2 + 0.125, room.size.height],
    ],
    finish: DEFAULT_SOLID_FINISH,
  },
  {
    kind: 'beam',
    title: 'Beam',
    about: '0.2 by 0.25 m across the room, under the ceiling',
    place: ({ room }) => [
      [0, room.size.length / 2 - 0.1, room.size.height - 0.25],
      [room.size.width, room.size.length / 2 + 0.1, room.size.height],
    ],
    finish: DEFAULT_SOLID_FINISH,
  },
];

/** Least extent of a fitting, m: thinner than this is a board, not a body. */
export const LEAST_EXTENT_M = 0.02;

/** The preset as a solid of the project, with an id of its own, cut to the shell. */
export function fittingFrom(preset: FittingPreset, project: Project): Solid {
  const far = farCorner(project.room.size);
  const [low, high] = preset.place(project);
  const cut = (corner: Point): Point =>
    mapPoint(corner, (at, axis) => roundLength(Math.min(Math.max(at, 0), far[axis])));
  return {
    id: freeId(
      preset.kind,
      project.room.solids.map((solid) => solid.id),
    ),
    kind: preset.kind,
    min: cut(low),
    max: cut(high),
    finish: preset.finish,
  };
}
