/**
 * The shape of a room file. Checked with zod; every refusal is one sentence that names what was
 * expected and what the file says. Unknown fields pass and stay.
 */

import { z } from 'zod';
import { OCTAVES_HZ } from '../quantity/bands';
import { DEFAULT_AIR } from '../air/medium';
import { DEFAULT_FINISHES, DEFAULT_ROW, DEFAULT_SOLID_FINISH, DEFAULT_SPEAKERS } from './defaults';
import { describe } from './fault';
import {
  AIR_LIMITS,
  BOX_SIDE_LIMITS_M,
  FACES,
  HINGES,
  MOST_ABSORPTION,
  MOST_PATCHES,
  MOUNTS,
  PLACE_LIMITS_M,
  ROOM_FORMAT,
  ROOM_VERSION,
  ROW_LIMITS,
  SCREEN_LIMITS,
  SIDES,
  SIZE_LIMITS_M,
  SOLID_KINDS,
  SUBWOOFER_LIMITS,
  SWINGS,
} from './project';

z.config({ jitless: true });

const says = (expected: string) => ({
  error: (issue: { input?: unknown }) =>
    `must be ${expected}; the file says ${describe(issue.input)}.`,
});

const number = (expected: string, low: number, high: number) => {
  const message = says(`${expected} from ${low} to ${high}`);
  return z.number(message).min(low, message).max(high, message);
};
const whole = (expected: string, low: number, high: number) => {
  const message = says(`a whole number of ${expected} from ${low} to ${high}`);
  return z.number(message).int(message).min(low, message).max(high, message);
};
const metres = (low: number, high: number) => number('a length in metres', low, high);
const text = (most: number) => {
  const message = says(`text of at most ${most} characters`);
  return z.string(message).max(most, message);
};
const id = () => {
  const message = says('a name of 1 to 60 letters, digits, dots or dashes');
  return z.string(message).regex(/^[\w.+-]{1,60}$/, message);
};
/** Empty where a room has no row of seats. */
const rowName = () =>
  z.union([id(), z.literal('')], says('the id of a row, or empty where there are no rows'));
const choice = <T extends readonly [string, ...string[]]>(options: T) =>
  z.enum(options, says(`one of ${options.join(', ')}`));
const list = <T extends z.ZodType>(item: T, most: number) => {
  const message = says(`a list of at most ${most}`);
  return z.array(item, message).max(most, message);
};
const group = <T extends z.ZodRawShape>(shape: T) =>
  z.looseObject(shape, says('a group of fields'));

const coordinate = () => number('a place in metres', ...PLACE_LIMITS_M);
const point = () =>
  z.tuple([coordinate(), coordinate(), coordinate()], says('a place [x, y, z] in metres'));
const range = (low: number, high: number) =>
  z
    .tuple([number('a number', low, high), number('a number', low, high)], says('[least, most]'))
    .refine(([least, most]) => least <= most, says('[least, most] in rising order'));

const OCTAVE_KEYS: readonly string[] = OCTAVES_HZ.map(String);
const bandGroup = (value: z.ZodType<number>) =>
  z.record(z.string(), value, says('a group of octave bands')).superRefine((bands, context) => {
    for (const key of Object.keys(bands)) {
      if (OCTAVE_KEYS.includes(key)) continue;
      const message = `is not an octave band. The bands are ${OCTAVE_KEYS.join(', ')}.`;
      context.addIssue({ code: 'custom', path: [key], message });
    }
  });

const size = group({
  width: metres(...SIZE_LIMITS_M.width),
  length: metres(...SIZE_LIMITS_M.length),
  height: metres(...SIZE_LIMITS_M.height),
});

const bay = group({
  largest: size,
  least: size,
  stepM: metres(0.001, 0.5),
  fixed: list(choice(SIDES), 3).default([]),
  leastFloorM2: number('an area in square metres', 0, 900).default(0),
}).refine(
  ({ largest, least }) =>
    least.width <= largest.width &&
    least.length <= largest.length &&
    least.height <= largest.height,
  { error: 'must have no side of least above the same side of largest.' },
);

const solid = group({
  id: id(),
  kind: choice(SOLID_KINDS),
  min: point(),
  max: point(),
  finish: id().default(DEFAULT_SOLID_FINISH),
}).refine(({ min, max }) => min.every((low, axis) => low < (max[axis] ?? low)), {
  error: 'must have every part of min below the same part of max.',
});

const patch = group({
  id: id(),
  face: text(80),
  rect: z
    .tuple(
      [coordinate(), coordinate(), coordinate(), coordinate()],
      says('[u0, v0, u1, v1] in metres'),
    )
    .refine(
      ([u0, v0, u1, v1]) => u0 < u1 && v0 < v1,
      says('[u0, v0, u1, v1] with u0 below u1 and v0 below v1'),
    ),
  finish: id(),
  hinge: choice(HINGES).optional(),
  swing: choice(SWINGS).optional(),
});

const row = group({
  id: id(),
  seats: whole('seats', 1, 20).default(DEFAULT_ROW.seats),
  y: coordinate(),
  x: coordinate().optional(),
  pitchM: metres(...ROW_LIMITS.pitchM).default(DEFAULT_ROW.pitchM),
  riserM: metres(...ROW_LIMITS.riserM).default(DEFAULT_ROW.riserM),
  earHeightM: metres(...ROW_LIMITS.earHeightM).default(DEFAULT_ROW.earHeightM),
  eyeHeightM: metres(...ROW_LIMITS.eyeHeightM).default(DEFAULT_ROW.eyeHeightM),
});

const subwoofer = group({
  id: id(),
  position: point(),
  delayMs: number('a delay in milliseconds', ...SUBWOOFER_LIMITS.delayMs).optional(),
  levelDb: number('a level in decibels', ...SUBWOOFER_LIMITS.levelDb).optional(),
  inverted: z.boolean(says('true or false')).optional(),
});

const boxSide = () => metres(...BOX_SIDE_LIMITS_M);
const placedSpeaker = group({
  channel: id(),
  position: point(),
  mount: choice(MOUNTS).optional(),
  pinned: z.boolean(says('true or false')).optional(),
  boxM: z
    .tuple([boxSide(), boxSide(), boxSide()], says('[width, height, depth] in metres'))
    .optional(),
  aim: z
    .union(
      [
        group({
          azimuthDeg: number('degrees', -180, 180),
          elevationDeg: number('degrees', -90, 90),
        }),
        group({ seat: group({ row: id(), seat: whole('seats from the left', 1, 20) }) }),
      ],
      says('{ "azimuthDeg": ..., "elevationDeg": ... } or { "seat": { "row": ..., "seat": ... } }'),
    )
    .optional(),
});

const faceFinishes = group(
  Object.fromEntries(FACES.map((face) => [face, id().default(DEFAULT_FINISHES[face])])) as Record<
    (typeof FACES)[number],
    z.ZodDefault<z.ZodString>
  >,
);

export const projectSchema = group({
  format: z.literal(ROOM_FORMAT, says(`"${ROOM_FORMAT}"`)),
  version: z.literal(ROOM_VERSION, says(String(ROOM_VERSION))),
  name: text(120).default('Untitled room'),
  room: group({
    size,
    solids: list(solid, 60).default([]),
    finishes: faceFinishes.prefault({}),
    patches: list(patch, MOST_PATCHES).default([]),
    bay: bay.optional(),
  }),
  air: group({
    temperatureC: number('degrees Celsius', ...AIR_LIMITS.temperatureC).default(
      DEFAULT_AIR.temperatureC,
    ),
    humidityPercent: number('percent', ...AIR_LIMITS.humidityPercent).default(
      DEFAULT_AIR.humidityPercent,
    ),
    pressureKPa: number('kilopascals', ...AIR_LIMITS.pressureKPa).default(DEFAULT_AIR.pressureKPa),
  }).prefault({}),
  finishesCustom: list(
    group({
      id: id(),
      name: text(120),
      absorption: bandGroup(number('an absorption coefficient', 0, MOST_ABSORPTION)),
      source: text(400).default('not stated'),
      depthM: metres(0, 3).optional(),
    }),
    200,
  ).default([]),
  seating: group({
    rows: list(row, 12).optional(),
    reference: group({
      row: rowName(),
      seat: whole('seats from the left', 1, 20).optional(),
      middle: z.literal(true, says('true, or left out where a seat is named')).optional(),
    })
      .refine(({ seat, middle }) => (seat === undefined) !== (middle === undefined), {
        error: 'must have either "seat", the number of a seat, or "middle": true.',
      })
      .optional(),
  }).prefault({}),
  screen: group({
    widthM: metres(...SCREEN_LIMITS.widthM).optional(),
    aspect: z
      .tuple([number('a number', 0.1, 100), number('a number', 0.1, 100)], says('[across, up]'))
      .default([16, 9]),
    bottomM: metres(...SCREEN_LIMITS.bottomM).optional(),
    gain: number('a screen gain', ...SCREEN_LIMITS.gain).default(1),
    soundThrough: z.boolean(says('true or false')).default(false),
    centreX: coordinate().optional(),
  }).prefault({}),
  projector: group({
    position: point(),
    throwRatio: range(0.1, 20),
    verticalOffsetPercent: range(-300, 300),
    horizontalOffsetPercent: range(-300, 300),
    lumens: number('lumens', 1, 100_000),
  }).optional(),
  speakers: group({
    layout: text(20).default(DEFAULT_SPEAKERS.layout),
    recommendation: text(20).optional(),
    later: text(20).optional(),
    placed: list(placedSpeaker, 40).default([]),
    subwoofers: list(subwoofer, SUBWOOFER_LIMITS.count).default([]),
  }).prefault({}),
  target: z
    .discriminatedUnion(
      'kind',
      [
        group({ kind: z.literal('bs1116') }),
        group({ kind: z.literal('home-cinema') }),
        group({
          kind: z.literal('custom'),
          seconds: bandGroup(number('a time in seconds', 0.05, 10)),
          tolerancePercent: number('percent', 1, 100).optional(),
        }),
      ],
      says(
        '{ "kind": "bs1116" }, { "kind": "home-cinema" } or { "kind": "custom", "seconds": { ... } }',
      ),
    )
    .default({ kind: 'bs1116' }),
  objects: list(group({ id: id(), item: id(), count: whole('pieces', 0, 100) }), 20).default([]),
});
