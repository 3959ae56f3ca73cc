/**
 * An absorber as a person builds it: plain data that a room file keeps with the finish made from it.
 * Metres, Pa s/m2 (flow resistivity), Pa s/m (flow resistance of a cloth), kg/m2.
 *
 * From the room to the wall: facing, clearance (panels only), one or two porous layers, air gap, and
 * a wall that does not give.
 */

import { METRES_PER_INCH, roundLength, type LengthUnits } from '../quantity/length';
import type { HoleGrid } from './facing';
import type { PorousModel } from './porous';

export const DESIGN_VERSION = 1;

export const DESIGN_KINDS = ['porous', 'perforated', 'slotted', 'membrane'] as const;
export type DesignKind = (typeof DESIGN_KINDS)[number];

export interface FillLayer {
  readonly thicknessM: number;
  readonly flowResistivity: number;
}

interface Build {
  readonly version: typeof DESIGN_VERSION;
  readonly model: PorousModel;
  /** Front one first; a porous and a membrane absorber need at least one, none has more than two. */
  readonly layers: readonly FillLayer[];
  /** Air between the layers and the wall. */
  readonly airGapM: number;
}

interface PanelBuild extends Build {
  /** Air between the panel and the first layer; 0 where they touch. */
  readonly clearanceM: number;
  /** Battens divide the cavity into cells of at most about 0.6 m. */
  readonly divided: boolean;
}

export interface PorousDesign extends Build {
  readonly kind: 'porous';
  /** Cloth in front, which is held still; null for none. */
  readonly clothResistance: number | null;
}

export interface PerforatedDesign extends PanelBuild {
  readonly kind: 'perforated';
  readonly panelThicknessM: number;
  readonly holeDiameterM: number;
  /** Centre to centre. */
  readonly holeSpacingM: number;
  readonly grid: HoleGrid;
  /** Fleece glued to the back of the panel; null for none. */
  readonly clothResistance: number | null;
}

export interface SlottedDesign extends PanelBuild {
  readonly kind: 'slotted';
  readonly panelThicknessM: number;
  readonly slotWidthM: number;
  /** Width of the slat between two slots. */
  readonly slatWidthM: number;
  /** Fleece on the back of the slats; null for none. */
  readonly clothResistance: number | null;
}

export interface MembraneDesign extends PanelBuild {
  readonly kind: 'membrane';
  readonly surfaceMassKgM2: number;
}

export type Design = PorousDesign | PerforatedDesign | SlottedDesign | MembraneDesign;

const BUILD = { version: DESIGN_VERSION, model: 'miki' } as const;

type StartingDesigns = {
  readonly [K in DesignKind]: Extract<Design, { readonly kind: K }>;
};

/** A sensible build of each kind to start from, in millimetres as they are sold. */
export const STARTING_DESIGNS: StartingDesigns = {
  porous: {
    ...BUILD,
    kind: 'porous',
    layers: [{ thicknessM: 0.1, flowResistivity: 12_000 }],
    airGapM: 0.1,
    clothResistance: null,
  },
  perforated: {
    ...BUILD,
    kind: 'perforated',
    panelThicknessM: 0.012,
    holeDiameterM: 0.008,
    holeSpacingM: 0.032,
    grid: 'square',
    clothResistance: null,
    clearanceM: 0.01,
    layers: [{ thicknessM: 0.05, flowResistivity: 12_000 }],
    airGapM: 0.09,
    divided: false,
  },
  slotted: {
    ...BUILD,
    kind: 'slotted',
    panelThicknessM: 0.019,
    slotWidthM: 0.006,
    slatWidthM: 0.069,
    clothResistance: null,
    clearanceM: 0.01,
    layers: [{ thicknessM: 0.05, flowResistivity: 12_000 }],
    airGapM: 0.09,
    divided: false,
  },
  membrane: {
    ...BUILD,
    kind: 'membrane',
    surfaceMassKgM2: 4,
    clearanceM: 0.02,
    layers: [{ thicknessM: 0.05, flowResistivity: 12_000 }],
    airGapM: 0.03,
    divided: true,
  },
};

/** The same in inches: 4 in of fill, 1/2 in board, 3 1/2 in of air as deep as a stud. */
const STARTING_IN_INCHES: StartingDesigns = {
  porous: {
    ...STARTING_DESIGNS.porous,
    layers: [{ thicknessM: inches(4), flowResistivity: 12_000 }],
    airGapM: inches(4),
  },
  perforated: {
    ...STARTING_DESIGNS.perforated,
    panelThicknessM: inches(1 / 2),
    holeDiameterM: inches(5 / 16),
    holeSpacingM: inches(1 + 1 / 4),
    clearanceM: inches(1 / 2),
    layers: [{ thicknessM: inches(2), flowResistivity: 12_000 }],
    airGapM: inches(3 + 1 / 2),
  },
  slotted: {
    ...STARTING_DESIGNS.slotted,
    panelThicknessM: inches(3 / 4),
    slotWidthM: inches(1 / 4),
    slatWidthM: inches(2 + 3 / 4),
    clearanceM: inches(1 / 2),
    layers: [{ thicknessM: inches(2), flowResistivity: 12_000 }],
    airGapM: inches(3 + 1 / 2),
  },
  membrane: {
    ...STARTING_DESIGNS.membrane,
    // 0.8 lb/sq ft: a quarter inch of plywood.
    surfaceMassKgM2: 3.905942,
    clearanceM: inches(1),
    layers: [{ thicknessM: inches(2), flowResistivity: 12_000 }],
    airGapM: inches(1),
  },
};

function inches(count: number): number {
  return roundLength(count * METRES_PER_INCH);
}

/** The build to start from, in whole figures of `units`. */
export const startingDesigns = (units: LengthUnits): StartingDesigns =>
  units === 'metric' ? STARTING_DESIGNS : STARTING_IN_INCHES;

/** Depth from the back of the facing to the wall, m. */
export function cavityDepthM(design: Design): number {
  const layers = design.layers.reduce((sum, layer) => sum + layer.thicknessM, 0);
  return layers + design.airGapM + (design.kind === 'porous' ? 0 : design.clearanceM);
}

/** Depth from the front of the facing to the wall, m; cloths and membranes are taken as thin. */
export function totalDepthM(design: Design): number {
  const panel =
    design.kind === 'perforated' || design.kind === 'slotted' ? design.panelThicknessM : 0;
  return cavityDepthM(design) + panel;
}
