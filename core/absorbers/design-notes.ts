/** What the figures of a design hold for, in plain words. */

import { bandName } from '../quantity/bands';
import type { Design } from './design';
import { POROUS_MODEL_NAMES } from './porous';

export interface Validity {
  /** Range of the porous formulas and of the openings together, Hz. */
  readonly lowHz: number;
  readonly highHz: number;
  /** Where openings begin to scatter sound, Hz; infinite without openings. */
  readonly openingHz: number;
  /** Points at which the porous model gave less than nothing. */
  readonly belowZero: readonly { readonly hz: number; readonly value: number }[];
}

/** `120 Hz`, `1.2 kHz`. */
export function frequencyText(hz: number): string {
  return bandName(Number(hz.toPrecision(2)));
}

/** One sentence or two each; the weightiest first. */
export function designNotes(design: Design, validity: Validity): readonly string[] {
  return [
    ...rangeNotes(design, validity),
    ...belowZeroNotes(design, validity),
    ...kindNotes(design),
    'The surface is taken as endless and the wall behind it as rigid. A test of a small sample reads higher, because its edges absorb too.',
  ];
}

function rangeNotes(design: Design, { lowHz, highHz, openingHz }: Validity): readonly string[] {
  const model = POROUS_MODEL_NAMES[design.model];
  const scatter = Number.isFinite(openingHz) && openingHz < 10_000;
  const notes: string[] = [];
  if (lowHz > highHz) {
    notes.push(
      'No frequency lies within the range of the formulas for all parts of this build: every figure is extrapolated.',
    );
  } else if (design.layers.length > 0) {
    const upper = highHz < 10_000 ? ` to ${frequencyText(highHz)}` : ' up';
    notes.push(
      `The formulas hold from ${frequencyText(lowHz)}${upper} here (${model} is for 0.01 < f/sigma < 1). Outside, hatched, the figures are extrapolated.`,
    );
  }
  if (scatter) {
    notes.push(
      `Above ${frequencyText(openingHz)} the openings lie more than half a wavelength apart and scatter sound, which is not computed.`,
    );
  }
  return notes;
}

function belowZeroNotes(design: Design, { belowZero }: Validity): readonly string[] {
  const highest = belowZero.at(-1);
  if (!highest) return [];
  const least = Math.min(...belowZero.map((point) => point.value));
  return [
    `Up to ${frequencyText(highest.hz)} ${POROUS_MODEL_NAMES[design.model]} gives less than no absorption, down to ${least.toFixed(4)}, which is its own fault; 0 is shown.`,
  ];
}

function kindNotes(design: Design): readonly string[] {
  switch (design.kind) {
    case 'porous':
      return design.clothResistance === null
        ? []
        : ['The cloth is taken as held still. A loose one moves with low sound and resists less.'];
    case 'perforated':
    case 'slotted':
      return design.layers.length === 0
        ? ['The cavity is empty: only friction in the openings absorbs, in a narrow band.']
        : design.clearanceM === 0
          ? ['The fill touches the panel, which damps the openings strongly.']
          : [];
    case 'membrane':
      return [
        'The panel is taken as limp, damped by the fill alone. A real one is stiffer and loses some sound at its edges: build one, measure, then build the rest.',
      ];
  }
}
