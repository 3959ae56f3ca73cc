/** Building materials with their flow resistivity, and cloths with their flow resistance, as data. */

import library from '../../resources/absorbers/flow-resistivities.json';

export interface FlowRange {
  readonly low: number;
  readonly high: number;
  readonly typical: number;
}

interface Row extends FlowRange {
  readonly id: string;
  readonly name: string;
  readonly source: string;
  /** `second-hand`: read in a copy or quotation; `memory`: known from the literature, not re-read. */
  readonly howKnown: 'second-hand' | 'memory';
}

/** A fill: flow resistivity in Pa s/m2. */
export interface PorousMaterial extends Row {
  /** Usual bulk density, kg/m3. */
  readonly densityKgM3: { readonly low: number; readonly high: number };
}

/** A cloth or fleece: flow resistance in Pa s/m. */
export type Cloth = Row;

export const POROUS_MATERIALS = library.materials as readonly PorousMaterial[];
export const CLOTHS = library.cloths as readonly Cloth[];
