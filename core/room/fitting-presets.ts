/**
 * Ready fittings, sized as they are usually built and placed where they usually stand. Sizes are common
 * practice, in whole centimetres or whole inches; each is cut to the shell it is put into.
 */

import { freeId } from './free-id';
import { METRES_PER_INCH, roundLength, type LengthUnits } from '../quantity/length';
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

/** Sizes in steps of `stepM`: a centimetre, or an inch. */
interface Sizes {
  readonly stepM: number;
  readonly unit: string;
  readonly soffitWide: number;
  readonly soffitDrop: number;
  readonly riserHeight: number;
  /** From the ears of the last row to the front of its platform. */
  readonly riserBefore: number;
  readonly leastRiser: number;
  readonly stageDeep: number;
  readonly stageHigh: number;
  readonly closet: number;
  readonly column: number;
  readonly beamWide: number;
  readonly beamHigh: number;
}

const SIZES: Readonly<Record<LengthUnits, Sizes>> = {
  metric: {
    stepM: 0.01,
    unit: 'cm',
    soffitWide: 60,
    soffitDrop: 30,
    riserHeight: 30,
    riserBefore: 120,
    leastRiser: 60,
    stageDeep: 50,
    stageHigh: 20,
    closet: 100,
    column: 24,
    beamWide: 20,
    beamHigh: 26,
  },
  imperial: {
    stepM: METRES_PER_INCH,
    unit: 'in',
    soffitWide: 24,
    soffitDrop: 12,
    riserHeight: 12,
    riserBefore: 48,
    leastRiser: 24,
    stageDeep: 20,
    stageHigh: 8,
    closet: 40,
    column: 10,
    beamWide: 8,
    beamHigh: 10,
  },
};

/** Side walls and ends along which a duct soffit may run. */
const RUNS = {
  left: ({ length, height }: ShellSize, wideM: number, dropM: number): readonly [Point, Point] => [
    [0, 0, height - dropM],
    [wideM, length, height],
  ],
  right: (
    { width, length, height }: ShellSize,
    wideM: number,
    dropM: number,
  ): readonly [Point, Point] => [
    [width - wideM, 0, height - dropM],
    [width, length, height],
  ],
  back: (
    { width, length, height }: ShellSize,
    wideM: number,
    dropM: number,
  ): readonly [Point, Point] => [
    [0, length - wideM, height - dropM],
    [width, length, height],
  ],
  front: ({ width, height }: ShellSize, wideM: number, dropM: number): readonly [Point, Point] => [
    [0, 0, height - dropM],
    [width, wideM, height],
  ],
} as const;

export type SoffitRun = keyof typeof RUNS;

/** The presets in whole figures of `units`. */
export function fittingPresets(units: LengthUnits): readonly FittingPreset[] {
  return PRESETS[units];
}

function presetsIn(sizes: Sizes): readonly FittingPreset[] {
  const { stepM, unit } = sizes;
  const m = (steps: number): number => steps * stepM;
  /** The nearest whole step. */
  const onStep = (lengthM: number): number => Math.round(lengthM / stepM) * stepM;
  const soffit = (run: SoffitRun, title: string): FittingPreset => ({
    kind: 'soffit',
    title,
    about: `${sizes.soffitWide} by ${sizes.soffitDrop} ${unit} along the ${run} wall`,
    place: ({ room }) => RUNS[run](room.size, m(sizes.soffitWide), m(sizes.soffitDrop)),
    finish: DEFAULT_SOLID_FINISH,
  });
  return [
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
        const least = length - m(sizes.leastRiser);
        const from = Math.min(onStep(Math.max(last - m(sizes.riserBefore), length * 0.4)), least);
        return [
          [0, from, 0],
          [width, length, m(sizes.riserHeight)],
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
        [room.size.width, m(sizes.stageDeep), m(sizes.stageHigh)],
      ],
      finish: 'platform-wood',
    },
    {
      kind: 'closet',
      title: 'Closet',
      about: `${sizes.closet} ${unit} square in the back right corner, to the ceiling`,
      place: ({ room }) => [
        [room.size.width - m(sizes.closet), room.size.length - m(sizes.closet), 0],
        farCorner(room.size),
      ],
      finish: DEFAULT_SOLID_FINISH,
    },
    {
      kind: 'column',
      title: 'Column',
      about: `${sizes.column} ${unit} square, boxed, floor to ceiling`,
      place: ({ room }) => {
        const half = m(sizes.column / 2);
        const [x, y] = [onStep(room.size.width * 0.75), onStep(room.size.length / 2)];
        return [
          [x - half, y - half, 0],
          [x + half, y + half, room.size.height],
        ];
      },
      finish: DEFAULT_SOLID_FINISH,
    },
    {
      kind: 'beam',
      title: 'Beam',
      about: `${sizes.beamWide} by ${sizes.beamHigh} ${unit} across the room, under the ceiling`,
      place: ({ room }) => {
        const { width, length, height } = room.size;
        const from = onStep(length / 2) - m(sizes.beamWide / 2);
        return [
          [0, from, height - m(sizes.beamHigh)],
          [width, from + m(sizes.beamWide), height],
        ];
      },
      finish: DEFAULT_SOLID_FINISH,
    },
  ];
}

const PRESETS: Readonly<Record<LengthUnits, readonly FittingPreset[]>> = {
  metric: presetsIn(SIZES.metric),
  imperial: presetsIn(SIZES.imperial),
};

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
