/** A name for a design that has none yet, of what it is made of. */

import type { LengthUnits } from '../quantity/length';
import { measuresIn } from '../quantity/measures';
import type { Design } from './design';

const KIND_WORDS: Readonly<Record<Design['kind'], string>> = {
  porous: 'Porous absorber',
  perforated: 'Perforated panel',
  slotted: 'Slats',
  membrane: 'Membrane panel',
};

/** For example `Porous absorber, 10 cm fill, 10 cm air`. */
export function designName(design: Design, units: LengthUnits = 'metric'): string {
  const told = (lengthM: number): string => measuresIn(units).part(lengthM);
  const fill = design.layers.reduce((sum, layer) => sum + layer.thicknessM, 0);
  const air = design.airGapM + (design.kind === 'porous' ? 0 : design.clearanceM);
  return [
    KIND_WORDS[design.kind],
    ...(fill > 0 ? [`${told(fill)} fill`] : []),
    ...(air > 0 ? [`${told(air)} air`] : []),
  ].join(', ');
}
