/** A design as a finish that a face can have, kept in the room file together with the design. */

import { DEFAULT_AIR, type Air } from '../air/medium';
import type { CustomFinish } from '../room/project';
import { totalDepthM, type Design } from './design';
import { evaluateDesign } from './evaluate';
import { POROUS_MODEL_NAMES } from './porous';

/** Longest name and source that a room file takes. */
const LONGEST_NAME = 120;

/**
 * The finish of a design without faults; coefficients to two decimals. A design with faults has no
 * coefficients to make a finish of, and is refused by an exception.
 */
export function designAsFinish(
  design: Design,
  id: string,
  name: string,
  air: Air = DEFAULT_AIR,
): CustomFinish {
  const { octaves, extrapolated, faults } = evaluateDesign(design, air);
  const [fault] = faults;
  if (fault) throw new RangeError(`${fault.field}: ${fault.sentence}`);
  const absorption = Object.fromEntries(
    Object.entries(octaves).map(([hz, value]) => [hz, Math.round(value * 100) / 100]),
  );
  return {
    id,
    name: name.slice(0, LONGEST_NAME),
    absorption,
    source: sourceOf(design, extrapolated),
    depthM: Math.round(totalDepthM(design) * 1e4) / 1e4,
    design,
  };
}

const FACING_SOURCES: Readonly<Record<Design['kind'], string>> = {
  porous: '',
  perforated: '; holes by Zwikker and Kosten with end corrections by Ingard 1953',
  slotted: '; slots as viscous gaps with end corrections by Smits and Kosten 1951',
  membrane: '; panel as a limp mass',
};

function sourceOf(design: Design, extrapolated: readonly number[]): string {
  const porous =
    design.layers.length > 0 ? `, porous layers by ${POROUS_MODEL_NAMES[design.model]}` : '';
  const outside = extrapolated.length > 0 ? ` Extrapolated at ${extrapolated.join(', ')} Hz.` : '';
  return `Computed by Roomwright from its design, not measured: diffuse field 0 to 90 degrees, transfer matrix${porous}${FACING_SOURCES[design.kind]}.${outside}`;
}

/** An id for a new own finish that no finish in `taken` has. */
export function freshFinishId(taken: readonly string[]): string {
  let number = 1;
  while (taken.includes(`absorber-${number}`)) number += 1;
  return `absorber-${number}`;
}
