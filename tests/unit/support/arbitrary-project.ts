/** Arbitrary valid projects: everything in them may be there or not, odd names and unknown fields. */

import fc from 'fast-check';
import { OCTAVES_HZ } from '../../../core/quantity/bands';
import { FINISHES } from '../../../core/room/finishes';
import {
  type Aim,
  type Bay,
  type CustomFinish,
  FACES,
  HINGES,
  MOUNTS,
  type Patch,
  PATCH_KINDS,
  type PlacedSpeaker,
  type Point,
  type Project,
  type Reference,
  ROOM_VERSION,
  type RoomObject,
  type Row,
  SIDES,
  type Solid,
  SOLID_KINDS,
  SWINGS,
  type Subwoofer,
} from '../../../core/room/project';

/** Metres in whole centimetres. */
export const cm = (min: number, max: number): fc.Arbitrary<number> =>
  fc.integer({ min, max }).map((n) => n / 100);

const tenths = (min: number, max: number): fc.Arbitrary<number> =>
  fc.integer({ min, max }).map((n) => n / 10);

/** A file may use any of these as an id, also those that mean something to JavaScript. */
const id = fc.oneof(
  { weight: 4, arbitrary: fc.stringMatching(/^[\w.+-]{1,12}$/) },
  { weight: 1, arbitrary: fc.constantFrom('__proto__', 'constructor', 'toString', '0', '-') },
);

const words = fc.oneof(
  fc.string({ unit: 'grapheme', maxLength: 20 }),
  fc.constantFrom('', '=1+1', 'a\nb', '"quoted", and more', '\ud800', '\u202e', '  ', '\u0000'),
);

const FORBIDDEN = ['__proto__', 'constructor', 'prototype'];

/** A key that no version of the program knows. */
const unknownKey = fc.oneof(
  fc.constantFrom('x-note', 'toString', 'hasOwnProperty', 'valueOf', 'x y', 'x.y', 'größe'),
  fc.string({ maxLength: 8 }).map((text) => `x-${text}`),
);

const anyJson: fc.Arbitrary<unknown> = fc.letrec<{ value: unknown }>((tie) => ({
  value: fc.oneof(
    { maxDepth: 3, withCrossShrink: true },
    fc.constantFrom(null, true, false, 0, -1, 1.5, 1e300),
    words,
    fc.array(tie('value'), { maxLength: 3 }),
    fc.dictionary(
      fc.string({ maxLength: 6 }).filter((key) => !FORBIDDEN.includes(key)),
      tie('value'),
      { maxKeys: 3, noNullPrototype: true },
    ),
  ),
})).value;

const extras: fc.Arbitrary<Readonly<Record<string, unknown>>> = fc.oneof(
  { weight: 3, arbitrary: fc.constant({}) },
  {
    weight: 1,
    arbitrary: fc.dictionary(unknownKey, anyJson, { maxKeys: 2, noNullPrototype: true }),
  },
);

/** `fields`, sometimes with fields beside them that the program does not know. */
function open<T extends object>(fields: fc.Arbitrary<T>): fc.Arbitrary<T> {
  return fc.tuple(extras, fields).map(([unknown, known]) => ({ ...unknown, ...known }));
}

const point: fc.Arbitrary<Point> = fc.tuple(cm(-100, 1000), cm(-100, 1300), cm(-50, 450));

const pair = (low: number, high: number): fc.Arbitrary<readonly [number, number]> =>
  fc
    .uniqueArray(fc.integer({ min: low, max: high }), { minLength: 2, maxLength: 2 })
    .map((list) => [...list].sort((a, b) => a - b))
    .map(([a, b]) => [(a ?? low) / 100, (b ?? high) / 100] as const);

interface Sides {
  readonly min: Point;
  readonly max: Point;
}

/** Boxes anywhere; now and then one that fills every shell. */
const box: fc.Arbitrary<Sides> = fc.oneof(
  {
    weight: 30,
    arbitrary: fc
      .tuple(pair(-100, 1000), pair(-100, 1300), pair(-50, 450))
      .map(([x, y, z]): Sides => ({ min: [x[0], y[0], z[0]], max: [x[1], y[1], z[1]] })),
  },
  { weight: 1, arbitrary: fc.constant<Sides>({ min: [-1, -1, -1], max: [10, 13, 4.5] }) },
);

const byBand = <T>(value: fc.Arbitrary<T>): fc.Arbitrary<Partial<Record<string, T>>> =>
  fc.dictionary(fc.constantFrom(...OCTAVES_HZ.map(String)), value, { noNullPrototype: true });

const customFinish: fc.Arbitrary<CustomFinish> = open(
  fc.record(
    {
      id,
      name: words,
      absorption: byBand(cm(0, 120)),
      source: words,
      depthM: cm(0, 300),
    },
    { requiredKeys: ['id', 'name', 'absorption', 'source'] },
  ),
);

const row: fc.Arbitrary<Row> = open(
  fc.record(
    {
      id,
      seats: fc.integer({ min: 1, max: 6 }),
      y: cm(-50, 1200),
      x: cm(-50, 900),
      pitchM: cm(40, 120),
      riserM: cm(0, 60),
      earHeightM: cm(80, 150),
      eyeHeightM: cm(80, 150),
    },
    { requiredKeys: ['id', 'seats', 'y', 'pitchM', 'riserM', 'earHeightM', 'eyeHeightM'] },
  ),
);

const projector: fc.Arbitrary<NonNullable<Project['projector']>> = open(
  fc.record({
    position: point,
    throwRatio: pair(50, 400),
    verticalOffsetPercent: pair(-10_000, 10_000),
    horizontalOffsetPercent: pair(-10_000, 10_000),
    lumens: fc.integer({ min: 1, max: 5000 }),
  }),
);

const subwoofer: fc.Arbitrary<Subwoofer> = open(
  fc.record(
    {
      id,
      position: point,
      boxM: fc.tuple(cm(2, 300), cm(2, 300), cm(2, 300)),
      delayMs: tenths(0, 300),
      levelDb: tenths(-200, 60),
      inverted: fc.boolean(),
    },
    { requiredKeys: ['id', 'position'] },
  ),
);

const unique = <T>(item: fc.Arbitrary<T>, key: (value: T) => string, most: number) =>
  fc.uniqueArray(item, { maxLength: most, selector: key });

const CHANNELS = [
  'M+030',
  'M-030',
  'M+000',
  'M+110',
  'M-110',
  'M+090',
  'M-090',
  'U+045',
  'U-135',
  'odd',
];

const aim: fc.Arbitrary<Aim> = fc.oneof(
  open(
    fc.record({
      azimuthDeg: fc.integer({ min: -180, max: 180 }),
      elevationDeg: fc.integer({ min: -90, max: 90 }),
    }),
  ),
  open(fc.record({ seat: open(fc.record({ row: id, seat: fc.integer({ min: 1, max: 20 }) })) })),
);

const placedSpeaker: fc.Arbitrary<PlacedSpeaker> = open(
  fc.record(
    {
      channel: fc.constantFrom(...CHANNELS),
      position: point,
      mount: fc.constantFrom(...MOUNTS),
      pinned: fc.boolean(),
      boxM: fc.tuple(cm(2, 300), cm(2, 300), cm(2, 300)),
      aim,
    },
    { requiredKeys: ['channel', 'position'] },
  ),
);

/** What the parts of a project may refer to. */
interface Names {
  readonly solids: readonly Solid[];
  readonly finishesCustom: readonly CustomFinish[];
  readonly rows: readonly Row[];
}

const bay: fc.Arbitrary<Bay> = open(
  fc.record({
    largest: open(fc.record({ width: cm(400, 900), length: cm(500, 1200), height: cm(220, 400) })),
    least: open(fc.record({ width: cm(100, 400), length: cm(100, 500), height: cm(100, 220) })),
    stepM: fc.constantFrom(0.01, 0.0254, 0.05),
    fixed: fc.subarray([...SIDES]),
    leastFloorM2: cm(0, 3000),
  }),
);

const roomObject: fc.Arbitrary<RoomObject> = open(
  fc.record({ id, item: id, count: fc.integer({ min: 0, max: 12 }) }),
);

function projectWith({ solids, finishesCustom, rows }: Names): fc.Arbitrary<Project> {
  const finish = fc.constantFrom(
    ...FINISHES.slice(0, 20).map((f) => f.id),
    ...finishesCustom.map((f) => f.id),
  );
  const face = fc.constantFrom<string>(
    ...FACES,
    ...solids.flatMap((solid) => FACES.map((side) => `${solid.id}:${side}`)),
  );
  const patch: fc.Arbitrary<Patch> = open(
    fc.record(
      {
        id,
        kind: fc.constantFrom(...PATCH_KINDS),
        face,
        rect: fc
          .tuple(pair(-50, 1000), pair(-50, 450))
          .map(([u, v]) => [u[0], v[0], u[1], v[1]] as const),
        finish,
        hinge: fc.constantFrom(...HINGES),
        swing: fc.constantFrom(...SWINGS),
      },
      { requiredKeys: ['id', 'kind', 'face', 'rect', 'finish'] },
    ),
  );
  const reference = fc
    .constantFrom(...(rows.length > 0 ? rows : [{ id: 'row-1', seats: 1 }]))
    .chain((named) =>
      open(
        fc.record({
          row: fc.constant(named.id),
          seat: fc.integer({ min: 1, max: named.seats }),
        }),
      ).chain(({ seat, ...rest }): fc.Arbitrary<Reference> =>
        fc.constantFrom<Reference>({ ...rest, seat }, { ...rest, middle: true }),
      ),
    );
  return open(
    fc.record(
      {
        format: fc.constant('roomwright-room' as const),
        version: fc.constant(ROOM_VERSION),
        name: words,
        room: open(
          fc.record(
            {
              size: open(
                fc.record({ width: cm(100, 900), length: cm(100, 1200), height: cm(100, 400) }),
              ),
              solids: fc.constant(solids),
              finishes: open(
                fc.record({
                  front: finish,
                  back: finish,
                  left: finish,
                  right: finish,
                  floor: finish,
                  ceiling: finish,
                }),
              ),
              patches: unique(patch, (p) => p.id, 3),
              bay,
            },
            { requiredKeys: ['size', 'solids', 'finishes', 'patches'] },
          ),
        ),
        air: open(
          fc.record({
            temperatureC: tenths(-200, 500),
            humidityPercent: tenths(100, 1000),
            pressureKPa: tenths(500, 1200),
          }),
        ),
        finishesCustom: fc.constant(finishesCustom),
        seating: open(fc.record({ rows: fc.constant(rows), reference })),
        screen: open(
          fc.record(
            {
              widthM: cm(20, 900),
              aspect: fc.tuple(tenths(1, 300), tenths(1, 300)),
              bottomM: cm(0, 300),
              gain: tenths(1, 50),
              soundThrough: fc.boolean(),
              centreX: cm(-50, 900),
            },
            { requiredKeys: ['widthM', 'aspect', 'bottomM', 'gain', 'soundThrough'] },
          ),
        ),
        projector,
        speakers: open(
          fc.record(
            {
              layout: fc.constantFrom('0+5+0', '0+7+0', '4+5+0', '4+7+0', '', '9+9+9'),
              recommendation: fc.constantFrom('bs2051', 'bs775', '', 'odd'),
              later: fc.constantFrom('0+7+0', '4+7+0', '', 'odd'),
              placed: unique(placedSpeaker, (speaker) => speaker.channel, 6),
              subwoofers: unique(subwoofer, (sub) => sub.id, 2),
            },
            { requiredKeys: ['layout', 'placed', 'subwoofers'] },
          ),
        ),
        target: fc.oneof(
          open(fc.record({ kind: fc.constantFrom('bs1116' as const, 'home-cinema' as const) })),
          open(
            fc.record(
              {
                kind: fc.constant('custom' as const),
                seconds: byBand(cm(5, 200)),
                tolerancePercent: fc.integer({ min: 1, max: 100 }),
              },
              { requiredKeys: ['kind', 'seconds'] },
            ),
          ),
        ),
        objects: unique(roomObject, (object) => object.id, 3),
      },
      {
        requiredKeys: [
          'format',
          'version',
          'name',
          'room',
          'air',
          'finishesCustom',
          'seating',
          'screen',
          'speakers',
          'target',
          'objects',
        ],
      },
    ),
  );
}

/** Any project that a room file can hold, with every default written out. */
export const arbitraryProject: fc.Arbitrary<Project> = unique(customFinish, (f) => f.id, 3).chain(
  (finishesCustom) => {
    const finish = fc.constantFrom(
      'gyp13-stud',
      'floor-concrete',
      ...finishesCustom.map((f) => f.id),
    );
    const solid: fc.Arbitrary<Solid> = open(
      fc
        .record({ id, kind: fc.constantFrom(...SOLID_KINDS), finish, sides: box })
        .map(({ sides, ...rest }) => ({ ...rest, ...sides })),
    );
    return fc
      .record({
        finishesCustom: fc.constant(finishesCustom),
        solids: unique(solid, (s) => s.id, 4),
        rows: unique(row, (r) => r.id, 3),
      })
      .chain(projectWith);
  },
);
