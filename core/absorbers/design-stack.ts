/** A design as layers and a facing that can be computed. */

import { complex, ZERO } from './complex';
import type { Design } from './design';
import { holeOpenArea, membraneImpedance, openingImpedance, slotOpenArea } from './facing';
import type { Stack, StackLayer } from './stack';

/** The stack of a design that has no fault. */
export function stackOf(design: Design): Stack {
  const layers: StackLayer[] = design.layers.map((layer) => ({
    kind: 'porous',
    thicknessM: layer.thicknessM,
    flowResistivity: layer.flowResistivity,
    model: design.model,
  }));
  const clearance = design.kind === 'porous' ? 0 : design.clearanceM;
  return {
    facing: facingOf(design),
    layers: [
      { kind: 'air', thicknessM: clearance },
      ...layers,
      { kind: 'air', thicknessM: design.airGapM },
    ],
    divided: design.kind !== 'porous' && design.divided,
  };
}

function facingOf(design: Design): Stack['facing'] {
  switch (design.kind) {
    case 'porous': {
      const cloth = complex(design.clothResistance ?? 0);
      return design.clothResistance === null ? () => ZERO : () => cloth;
    }
    case 'perforated': {
      const { holeDiameterM, holeSpacingM, grid, panelThicknessM, clothResistance } = design;
      const opening = {
        shape: 'hole',
        widthM: holeDiameterM,
        panelThicknessM,
        openArea: holeOpenArea(holeDiameterM, holeSpacingM, grid),
        fleece: clothResistance ?? 0,
      } as const;
      return (hz, gas, behind) => openingImpedance(opening, hz, gas, behind);
    }
    case 'slotted': {
      const { slotWidthM, slatWidthM, panelThicknessM, clothResistance } = design;
      const opening = {
        shape: 'slot',
        widthM: slotWidthM,
        panelThicknessM,
        openArea: slotOpenArea(slotWidthM, slatWidthM),
        fleece: clothResistance ?? 0,
      } as const;
      return (hz, gas, behind) => openingImpedance(opening, hz, gas, behind);
    }
    case 'membrane':
      return (hz) => membraneImpedance(design.surfaceMassKgM2, hz);
  }
}
