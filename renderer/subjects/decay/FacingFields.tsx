/** What faces the room: a cloth, holes, slats or a closed panel. */

import type { ReactElement } from 'react';
import type {
  MembraneDesign,
  PerforatedDesign,
  PorousDesign,
  SlottedDesign,
} from '../../../core/absorbers/design';
import { DESIGN_LIMITS } from '../../../core/absorbers/design-faults';
import { CLOTHS } from '../../../core/absorbers/materials';
import { Choice } from '../../kit/controls/Choice';
import { LengthField } from '../../kit/controls/LengthField';
import { SelectField } from '../../kit/controls/SelectField';
import { useSession } from '../../state/session';
import { useBench } from './bench-store';
import { FieldFault, FigureField, FineField, SurfaceMassField } from './FigureField';

export function FacingFields(): ReactElement {
  const { design } = useBench();
  return (
    <section className="bench-part">
      <h3>Facing</h3>
      {design.kind === 'porous' ? <ClothFields design={design} /> : null}
      {design.kind === 'perforated' ? <HoleFields design={design} /> : null}
      {design.kind === 'slotted' ? <SlatFields design={design} /> : null}
      {design.kind === 'membrane' ? <MembraneFields design={design} /> : null}
      {design.kind === 'porous' ? null : <CavityFields design={design} />}
    </section>
  );
}

const NONE = 'none';
const OWN = 'own';
const CLOTH_GROUPS = [
  {
    heading: '',
    options: [
      { value: NONE, label: 'None' },
      { value: OWN, label: 'Own figure' },
    ],
  },
  {
    heading: 'Typical figures, from memory',
    options: CLOTHS.map((row) => ({ value: row.id, label: row.name })),
  },
];
const FIRST_RESISTANCE = 100;

type ClothedDesign = PorousDesign | PerforatedDesign | SlottedDesign;

function ClothFields({ design }: { readonly design: ClothedDesign }): ReactElement {
  const setDesign = useBench((bench) => bench.setDesign);
  const { clothResistance } = design;
  const cloth = CLOTHS.find((row) => row.typical === clothResistance);
  const choose = (id: string): void => {
    const typical = CLOTHS.find((row) => row.id === id)?.typical;
    const own = clothResistance === null || cloth ? FIRST_RESISTANCE : clothResistance;
    setDesign({ ...design, clothResistance: id === NONE ? null : (typical ?? own) });
  };
  return (
    <>
      <SelectField
        label={design.kind === 'porous' ? 'Cloth' : 'Fleece behind'}
        value={clothResistance === null ? NONE : (cloth?.id ?? OWN)}
        source={cloth?.source}
        groups={CLOTH_GROUPS}
        onChange={choose}
      />
      {clothResistance === null ? null : (
        <FigureField
          label="Flow resistance"
          unit="Pa s/m"
          value={clothResistance}
          field="clothResistance"
          withValue={(value) => ({ ...design, clothResistance: value })}
        />
      )}
    </>
  );
}

function HoleFields({ design }: { readonly design: PerforatedDesign }): ReactElement {
  const setDesign = useBench((bench) => bench.setDesign);
  return (
    <>
      <FineField
        label="Panel thickness"
        value={design.panelThicknessM}
        field="panelThicknessM"
        withValue={(panelThicknessM) => ({ ...design, panelThicknessM })}
      />
      <FineField
        label="Hole diameter"
        value={design.holeDiameterM}
        field="holeDiameterM"
        withValue={(holeDiameterM) => ({ ...design, holeDiameterM })}
      />
      <FineField
        label="Hole spacing"
        value={design.holeSpacingM}
        field="holeSpacingM"
        withValue={(holeSpacingM) => ({ ...design, holeSpacingM })}
      />
      <div className="bench-row">
        <Choice
          legend="Holes in"
          options={[
            { value: 'square', label: 'squares' },
            { value: 'staggered', label: 'staggered rows' },
          ]}
          value={design.grid}
          onChange={(grid) => setDesign({ ...design, grid })}
        />
      </div>
      <ClothFields design={design} />
    </>
  );
}

function SlatFields({ design }: { readonly design: SlottedDesign }): ReactElement {
  return (
    <>
      <FineField
        label="Slat thickness"
        value={design.panelThicknessM}
        field="panelThicknessM"
        withValue={(panelThicknessM) => ({ ...design, panelThicknessM })}
      />
      <FineField
        label="Slot width"
        value={design.slotWidthM}
        field="slotWidthM"
        withValue={(slotWidthM) => ({ ...design, slotWidthM })}
      />
      <FineField
        label="Slat width"
        value={design.slatWidthM}
        field="slatWidthM"
        withValue={(slatWidthM) => ({ ...design, slatWidthM })}
      />
      <ClothFields design={design} />
    </>
  );
}

function MembraneFields({ design }: { readonly design: MembraneDesign }): ReactElement {
  const metric = useSession((session) => session.units === 'metric');
  return (
    <>
      <SurfaceMassField
        label="Surface mass"
        value={design.surfaceMassKgM2}
        field="surfaceMassKgM2"
        withValue={(surfaceMassKgM2) => ({ ...design, surfaceMassKgM2 })}
      />
      <p className="hint">
        {metric
          ? 'Per millimetre plywood weighs about 0.6 kg/m², gypsum board 0.7, MDF 0.75 (common figures).'
          : '1/2 in of plywood weighs about 1.6 lb/sq ft, gypsum board 1.8, MDF 2.0 (common figures).'}
      </p>
    </>
  );
}

type PanelDesign = PerforatedDesign | SlottedDesign | MembraneDesign;

function CavityFields({ design }: { readonly design: PanelDesign }): ReactElement {
  const setDesign = useBench((bench) => bench.setDesign);
  const metric = useSession((session) => session.units === 'metric');
  const [low, high] = DESIGN_LIMITS.clearanceM;
  return (
    <>
      <LengthField
        label="Air between facing and fill"
        valueM={design.clearanceM}
        lowM={low}
        highM={high}
        onChange={(clearanceM) => setDesign({ ...design, clearanceM })}
      />
      <FieldFault field="clearanceM" withValue={(clearanceM) => ({ ...design, clearanceM })} />
      <div className="bench-row">
        <Choice
          legend="Cavity"
          options={[
            { value: 'open', label: 'open', title: 'Sound can run along behind the panel' },
            {
              value: 'divided',
              label: 'divided by battens',
              title: `Into cells of at most about ${metric ? '60 cm' : '2 ft'}`,
            },
          ]}
          value={design.divided ? 'divided' : 'open'}
          onChange={(cavity) => setDesign({ ...design, divided: cavity === 'divided' })}
        />
      </div>
    </>
  );
}
