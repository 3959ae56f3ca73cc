/**
 * What cannot be built or lies outside the model, each with the field, a sentence and the nearest
 * value that is taken. Everything that has no fault gives finite figures.
 */

import { fineText, insideFine } from '../quantity/fine-length';
import type { LengthUnits } from '../quantity/length';
import { insideLimit, limitText } from '../quantity/limits';
import { FIGURE_UNITS, shownLimit } from '../quantity/typed-figure';
import { cavityDepthM, type Design } from './design';
import { holeOpenArea, slotOpenArea } from './facing';

export interface DesignFault {
  /** Path of the field, such as `layers.0.flowResistivity`. */
  readonly field: string;
  readonly sentence: string;
  /** In the unit of the field. */
  readonly nearest: number;
}

/**
 * Least and greatest value of each field. Flow resistivities span what building materials have and
 * the porous models were fitted to; the other bounds are what can be bought and screwed together.
 */
export const DESIGN_LIMITS = {
  thicknessM: [0.003, 1],
  flowResistivity: [1000, 100_000],
  airGapM: [0, 1],
  clearanceM: [0, 0.5],
  clothResistance: [0, 5000],
  panelThicknessM: [0.0003, 0.06],
  holeDiameterM: [0.0002, 0.05],
  holeSpacingM: [0.0005, 0.3],
  slotWidthM: [0.0003, 0.05],
  slatWidthM: [0.002, 0.5],
  surfaceMassKgM2: [0.3, 60],
} as const satisfies Record<string, readonly [number, number]>;

/** Open part of a panel that the formulas for holes and slots are for. */
export const OPEN_AREA_LIMITS = [0.001, 0.4] as const;
/** Least depth of a cavity behind a panel, m. */
const LEAST_CAVITY_M = 0.005;

type Unit = 'length' | 'fine' | 'Pa s/m2' | 'Pa s/m' | 'kg/m2';
type LimitName = keyof typeof DESIGN_LIMITS;

const UNITS: Readonly<Record<LimitName, Unit>> = {
  thicknessM: 'length',
  flowResistivity: 'Pa s/m2',
  airGapM: 'length',
  clearanceM: 'length',
  clothResistance: 'Pa s/m',
  panelThicknessM: 'fine',
  holeDiameterM: 'fine',
  holeSpacingM: 'fine',
  slotWidthM: 'fine',
  slatWidthM: 'fine',
  surfaceMassKgM2: 'kg/m2',
};

/** A limit as it is said and typed, moved inward to a figure of the tape, the drill or the scale. */
function inside(
  value: number,
  side: 'low' | 'high',
  unit: Unit,
  units: LengthUnits,
): { readonly value: number; readonly text: string } {
  if (unit === 'length') {
    const moved = insideLimit(value, side, units);
    return { value: moved, text: limitText(moved, units) };
  }
  if (unit === 'fine') {
    const moved = insideFine(value, side, units);
    return { value: moved, text: fineText(moved, units) };
  }
  if (unit === 'kg/m2') {
    const known = FIGURE_UNITS.massPerArea[units];
    const shown = shownLimit(value, side, known, 2);
    // Without the dust of the conversion, which could lie outside.
    const moved = units === 'metric' ? value : Number(known.fromShown(shown).toPrecision(8));
    return { value: moved, text: `${shown} ${known.name}` };
  }
  return { value, text: `${value} ${unit}` };
}

/** Every fault of `design`; none where it can be computed. Lengths are said in `units`. */
export function designFaults(
  design: Design,
  units: LengthUnits = 'metric',
): readonly DesignFault[] {
  const out: DesignFault[] = [];
  const check = (field: string, what: string, name: LimitName, value: number): void => {
    const [low, high] = DESIGN_LIMITS[name];
    if (value >= low && value <= high) return;
    const least = inside(low, 'low', UNITS[name], units);
    const most = inside(high, 'high', UNITS[name], units);
    const nearest = value > high ? most : least;
    out.push({
      field,
      sentence: `${what} can be ${least.text} to ${most.text}. The nearest is ${nearest.text}.`,
      nearest: nearest.value,
    });
  };

  design.layers.forEach((layer, i) => {
    const which = design.layers.length > 1 ? ` of layer ${i + 1}` : '';
    check(`layers.${i}.thicknessM`, `Thickness${which}`, 'thicknessM', layer.thicknessM);
    check(
      `layers.${i}.flowResistivity`,
      `Flow resistivity${which}`,
      'flowResistivity',
      layer.flowResistivity,
    );
  });
  const least = design.kind === 'porous' || design.kind === 'membrane' ? 1 : 0;
  if (design.layers.length < least || design.layers.length > 2) {
    const nearest = design.layers.length > 2 ? 2 : least;
    const sentence =
      nearest === 2
        ? 'At most two porous layers are computed. The nearest is 2.'
        : 'Without a porous layer nothing in this build absorbs. The nearest is 1.';
    out.push({ field: 'layers', sentence, nearest });
  }
  check('airGapM', 'Air gap', 'airGapM', design.airGapM);
  if (design.kind !== 'membrane' && design.clothResistance !== null) {
    check('clothResistance', 'Flow resistance', 'clothResistance', design.clothResistance);
  }
  if (design.kind !== 'porous') check('clearanceM', 'Clearance', 'clearanceM', design.clearanceM);
  if (design.kind === 'membrane') {
    check('surfaceMassKgM2', 'Surface mass', 'surfaceMassKgM2', design.surfaceMassKgM2);
  }
  if (design.kind === 'perforated' || design.kind === 'slotted') {
    const what = design.kind === 'slotted' ? 'Slat thickness' : 'Panel thickness';
    check('panelThicknessM', what, 'panelThicknessM', design.panelThicknessM);
  }
  if (design.kind === 'perforated') {
    check('holeDiameterM', 'Hole diameter', 'holeDiameterM', design.holeDiameterM);
    check('holeSpacingM', 'Hole spacing', 'holeSpacingM', design.holeSpacingM);
  }
  if (design.kind === 'slotted') {
    check('slotWidthM', 'Slot width', 'slotWidthM', design.slotWidthM);
    check('slatWidthM', 'Slat width', 'slatWidthM', design.slatWidthM);
  }
  // What two fields make together is looked at once each of them is sound.
  return out.length > 0 ? out : togetherFaults(design, units);
}

function togetherFaults(design: Design, units: LengthUnits): readonly DesignFault[] {
  const out: DesignFault[] = [];
  const [leastOpen, mostOpen] = OPEN_AREA_LIMITS;
  const percent = (part: number): string => `${Number((part * 100).toFixed(2))} %`;
  const openFault = (
    field: string,
    what: string,
    open: number,
    widthFor: (open: number) => number,
  ): void => {
    // A width on the limit may lie over it by the dust of the division.
    if (open >= leastOpen - 1e-9 && open <= mostOpen + 1e-9) return;
    // On the side that is taken.
    const nearest =
      open > mostOpen
        ? inside(widthFor(mostOpen), 'low', 'fine', units)
        : inside(widthFor(leastOpen), 'high', 'fine', units);
    out.push({
      field,
      sentence: `${what} leaves ${percent(open)} of the panel open, and the formulas are for ${percent(leastOpen)} to ${percent(mostOpen)}. The nearest is ${nearest.text}.`,
      nearest: nearest.value,
    });
  };
  if (design.kind === 'perforated') {
    const { holeDiameterM, holeSpacingM, grid } = design;
    openFault(
      'holeSpacingM',
      'Hole spacing',
      holeOpenArea(holeDiameterM, holeSpacingM, grid),
      (open) => holeDiameterM * Math.sqrt(holeOpenArea(1, 1, grid) / open),
    );
  }
  if (design.kind === 'slotted') {
    const { slotWidthM, slatWidthM } = design;
    openFault(
      'slatWidthM',
      'Slat width',
      slotOpenArea(slotWidthM, slatWidthM),
      (open) => slotWidthM * (1 / open - 1),
    );
  }
  if (design.kind !== 'porous' && cavityDepthM(design) < LEAST_CAVITY_M) {
    const others = cavityDepthM(design) - design.airGapM;
    const least = inside(LEAST_CAVITY_M, 'low', 'length', units);
    const nearest = inside(LEAST_CAVITY_M - others, 'low', 'length', units);
    out.push({
      field: 'airGapM',
      sentence: `Behind the panel must be at least ${least.text}. The nearest air gap is ${nearest.text}.`,
      nearest: nearest.value,
    });
  }
  return out;
}
