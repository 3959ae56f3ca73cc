/** The design in a room file's finish, which may hold anything, or null where it is not one. */

import { z } from 'zod';
import { DESIGN_VERSION, type Design } from './design';
import { HOLE_GRIDS } from './facing';
import { POROUS_MODELS } from './porous';

const build = {
  version: z.literal(DESIGN_VERSION),
  model: z.enum(POROUS_MODELS),
  layers: z.array(z.looseObject({ thicknessM: z.number(), flowResistivity: z.number() })).max(10),
  airGapM: z.number(),
};
const panel = { ...build, clearanceM: z.number(), divided: z.boolean() };
const cloth = z.number().nullable();

const designSchema = z.discriminatedUnion('kind', [
  z.looseObject({ kind: z.literal('porous'), ...build, clothResistance: cloth }),
  z.looseObject({
    kind: z.literal('perforated'),
    ...panel,
    panelThicknessM: z.number(),
    holeDiameterM: z.number(),
    holeSpacingM: z.number(),
    grid: z.enum(HOLE_GRIDS),
    clothResistance: cloth,
  }),
  z.looseObject({
    kind: z.literal('slotted'),
    ...panel,
    panelThicknessM: z.number(),
    slotWidthM: z.number(),
    slatWidthM: z.number(),
    clothResistance: cloth,
  }),
  z.looseObject({ kind: z.literal('membrane'), ...panel, surfaceMassKgM2: z.number() }),
]);

/** `value` as a design, its figures not yet judged: see `designFaults`. */
export function readDesign(value: unknown): Design | null {
  const read = designSchema.safeParse(value);
  return read.success ? read.data : null;
}
