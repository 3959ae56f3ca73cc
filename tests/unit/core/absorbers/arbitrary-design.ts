/** Arbitrary designs without faults, over the whole of what is taken. */

import fc from 'fast-check';
import type { Design } from '../../../../core/absorbers/design';
import { DESIGN_LIMITS, designFaults } from '../../../../core/absorbers/design-faults';
import { HOLE_GRIDS } from '../../../../core/absorbers/facing';
import { POROUS_MODELS } from '../../../../core/absorbers/porous';

/** From least to greatest, as many small ones as large ones. */
function field(name: keyof typeof DESIGN_LIMITS): fc.Arbitrary<number> {
  const [low, high] = DESIGN_LIMITS[name];
  const from = Math.max(low, high / 1e5);
  const spread = fc
    .double({ min: 0, max: 1, noNaN: true })
    .map((part) => Math.min(high, from * (high / from) ** part));
  return fc.oneof(
    { weight: 8, arbitrary: spread },
    { weight: 1, arbitrary: fc.constantFrom(low, high) },
  );
}

const layer = fc.record({
  thicknessM: field('thicknessM'),
  flowResistivity: field('flowResistivity'),
});
const layers = (least: number) => fc.array(layer, { minLength: least, maxLength: 2 });
const cloth = fc.option(field('clothResistance'), { nil: null });

const build = {
  version: fc.constant(1 as const),
  model: fc.constantFrom(...POROUS_MODELS),
  airGapM: field('airGapM'),
};
const panel = { ...build, clearanceM: field('clearanceM'), divided: fc.boolean() };

const anyDesign: fc.Arbitrary<Design> = fc.oneof(
  fc.record({
    kind: fc.constant('porous' as const),
    ...build,
    layers: layers(1),
    clothResistance: cloth,
  }),
  fc
    .record({
      kind: fc.constant('perforated' as const),
      ...panel,
      layers: layers(0),
      panelThicknessM: field('panelThicknessM'),
      holeDiameterM: field('holeDiameterM'),
      wider: fc.double({ min: 1.5, max: 6, noNaN: true }),
      grid: fc.constantFrom(...HOLE_GRIDS),
      clothResistance: cloth,
    })
    .map(({ wider, ...rest }) => ({ ...rest, holeSpacingM: rest.holeDiameterM * wider })),
  fc
    .record({
      kind: fc.constant('slotted' as const),
      ...panel,
      layers: layers(0),
      panelThicknessM: field('panelThicknessM'),
      slotWidthM: field('slotWidthM'),
      wider: fc.double({ min: 1.6, max: 30, noNaN: true }),
      clothResistance: cloth,
    })
    .map(({ wider, ...rest }) => ({ ...rest, slatWidthM: rest.slotWidthM * wider })),
  fc.record({
    kind: fc.constant('membrane' as const),
    ...panel,
    layers: layers(1),
    surfaceMassKgM2: field('surfaceMassKgM2'),
  }),
);

export const legalDesign = anyDesign.filter((design) => designFaults(design).length === 0);
