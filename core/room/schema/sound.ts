/** What the sound meets beside the faces, and how long it is to last. */

import { z } from 'zod';
import { DEFAULT_AIR } from '../../air/medium';
import { OCTAVES_HZ } from '../../quantity/bands';
import { AIR_LIMITS, MOST_ABSORPTION } from '../limits';
import { group, id, list, metres, number, says, text, whole } from './fields';
import type { Known } from './known';

const OCTAVE_KEYS = OCTAVES_HZ.map((hz) => `${hz}` as const);
const NO_OCTAVE = `is not an octave band. The bands are ${OCTAVE_KEYS.join(', ')}.`;
const bands = says('a group of octave bands');
/** Not an enumeration: each band that is none is to be told at its own place. */
const octave = z.custom<(typeof OCTAVE_KEYS)[number]>((key) =>
  OCTAVE_KEYS.some((octaveKey) => octaveKey === key),
);

/** A figure by octave; a band without one is left out. */
const byBand = (value: z.ZodNumber) =>
  z.partialRecord(octave, value, {
    error: (issue) => (issue.code === 'invalid_key' ? NO_OCTAVE : bands.error(issue)),
  });

const absorption = byBand(number('an absorption coefficient', 0, MOST_ABSORPTION));

/** Absorption coefficient by octave; a band without a figure is left out. */
export type AbsorptionByBand = Known<z.output<typeof absorption>>;

export const customFinish = group({
  id: id(),
  name: text(120),
  absorption,
  source: text(400).default('not stated'),
  /** How far its front stands off what it is fixed to, m; 0 where it is not given. */
  depthM: metres(0, 3).exactOptional(),
  /** The absorber it was computed from, where it was designed here; the program's own record. */
  design: z.unknown().exactOptional(),
});

export type CustomFinish = Known<z.output<typeof customFinish>>;

export const roomObject = group({
  id: id(),
  /** Id of a row in resources/items. */
  item: id(),
  count: whole('pieces', 0, 100),
});

/** What is in the room a number of times and absorbs by the piece: people, chairs. */
export type RoomObject = Known<z.output<typeof roomObject>>;

export const air = group({
  temperatureC: number('degrees Celsius', ...AIR_LIMITS.temperatureC).default(
    DEFAULT_AIR.temperatureC,
  ),
  humidityPercent: number('percent', ...AIR_LIMITS.humidityPercent).default(
    DEFAULT_AIR.humidityPercent,
  ),
  pressureKPa: number('kilopascals', ...AIR_LIMITS.pressureKPa).default(DEFAULT_AIR.pressureKPa),
}).prefault({});

export const target = z
  .discriminatedUnion(
    'kind',
    [
      group({ kind: z.literal('bs1116') }),
      /** A home-cinema corridor: see core/decay/target.ts. */
      group({ kind: z.literal('home-cinema') }),
      group({
        kind: z.literal('custom'),
        seconds: byBand(number('a time in seconds', 0.05, 10)),
        /** How far a decay may leave the target, percent; 25 where it is not given. */
        tolerancePercent: number('percent', 1, 100).exactOptional(),
      }),
    ],
    says(
      '{ "kind": "bs1116" }, { "kind": "home-cinema" } or { "kind": "custom", "seconds": { ... } }',
    ),
  )
  .default({ kind: 'bs1116' });

export type Target = Known<z.output<typeof target>>;

export const customFinishes = list(customFinish, 200).default([]);
export const roomObjects = list(roomObject, 20).default([]);
