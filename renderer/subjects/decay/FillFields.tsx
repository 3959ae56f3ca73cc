/** The porous layers of the design and the air behind them. */

import type { ReactElement } from 'react';
import type { Design, FillLayer } from '../../../core/absorbers/design';
import { DESIGN_LIMITS } from '../../../core/absorbers/design-faults';
import { POROUS_MATERIALS } from '../../../core/absorbers/materials';
import { METRES_PER_INCH, type LengthUnits } from '../../../core/quantity/length';
import { measuresIn } from '../../../core/quantity/measures';
import { Choice } from '../../kit/controls/Choice';
import { LengthField } from '../../kit/controls/LengthField';
import { SelectField } from '../../kit/controls/SelectField';
import { useSession } from '../../state/session';
import { useBench } from './bench-store';
import { FieldFault, FigureField } from './FigureField';

const OWN = 'own';
const MATERIAL_GROUPS = [
  { heading: '', options: [{ value: OWN, label: 'Own figure' }] },
  {
    heading: 'Typical figures',
    options: POROUS_MATERIALS.map((row) => ({ value: row.id, label: row.name })),
  },
];

/** Another layer starts as heavy as this. */
const secondLayer = (units: LengthUnits): FillLayer => ({
  thicknessM: units === 'metric' ? 0.05 : 2 * METRES_PER_INCH,
  flowResistivity: 15_000,
});

const COUNTS = ['none', 'one', 'two'] as const;
type Count = (typeof COUNTS)[number];

export function FillFields(): ReactElement {
  const another = secondLayer(useSession((session) => session.units));
  const { design, setDesign } = useBench();
  const empty = design.kind === 'perforated' || design.kind === 'slotted';
  const counts: readonly Count[] = empty ? COUNTS : ['one', 'two'];
  const setCount = (count: Count): void => {
    const wanted = COUNTS.indexOf(count);
    const layers = [...design.layers, another, another].slice(0, wanted);
    setDesign({ ...design, layers });
  };
  const [gapLow, gapHigh] = DESIGN_LIMITS.airGapM;
  return (
    <section className="bench-part">
      <div className="bench-head">
        <h3>Fill</h3>
        <Choice
          legend="Layers of fill"
          hideLegend
          options={counts.map((value) => ({
            value,
            label: value === 'none' ? 'none' : value === 'one' ? '1 layer' : '2 layers',
          }))}
          value={COUNTS[Math.min(2, design.layers.length)] ?? 'one'}
          onChange={setCount}
        />
      </div>
      <FieldFault
        field="layers"
        withValue={(count) => ({
          ...design,
          layers: [...design.layers, another].slice(0, count),
        })}
      />
      {design.layers.map((layer, i) => (
        <LayerFields key={i} index={i} layer={layer} design={design} />
      ))}
      <LengthField
        label="Air gap to the wall"
        valueM={design.airGapM}
        lowM={gapLow}
        highM={gapHigh}
        onChange={(airGapM) => setDesign({ ...design, airGapM })}
      />
      <FieldFault field="airGapM" withValue={(airGapM) => ({ ...design, airGapM })} />
    </section>
  );
}

interface LayerFieldsProps {
  readonly index: number;
  readonly layer: FillLayer;
  readonly design: Design;
}

function LayerFields({ index, layer, design }: LayerFieldsProps): ReactElement {
  const { setDesign, setMaterial, materials } = useBench();
  const measures = useSession((session) => measuresIn(session.units));
  const material = POROUS_MATERIALS.find((row) => row.id === materials[index]);
  const several = design.layers.length > 1;
  const which = several ? (index === 0 ? 'front layer' : 'back layer') : null;
  const withLayer = (change: Partial<FillLayer>): Design => ({
    ...design,
    layers: design.layers.map((known, i) => (i === index ? { ...known, ...change } : known)),
  });
  const [low, high] = DESIGN_LIMITS.thicknessM;
  const outside =
    material && (layer.flowResistivity < material.low || layer.flowResistivity > material.high);
  return (
    <div className={several ? 'bench-layer several' : 'bench-layer'}>
      <SelectField
        label={several ? (index === 0 ? 'Front layer' : 'Back layer') : 'Material'}
        value={material?.id ?? OWN}
        source={material?.source}
        groups={MATERIAL_GROUPS}
        onChange={(id) => setMaterial(index, id === OWN ? null : id)}
      />
      <FigureField
        key={material?.id ?? OWN}
        label="Flow resistivity"
        {...(which === null ? {} : { which })}
        unit="Pa s/m²"
        value={layer.flowResistivity}
        field={`layers.${index}.flowResistivity`}
        withValue={(flowResistivity) => withLayer({ flowResistivity })}
      />
      {material ? (
        <p className="hint">
          {outside ? 'Unusual for it' : 'Usual for it'}: {material.low} to {material.high} (
          {measures.densities(material.densityKgM3)};{' '}
          {material.howKnown === 'memory' ? 'from memory' : 'second-hand'}). The maker&apos;s own
          figure is better. Makers give it in SI units, whatever the tape is in.
        </p>
      ) : null}
      <LengthField
        label={which === null ? 'Thickness' : `Thickness, ${which}`}
        shortLabel="Thickness"
        valueM={layer.thicknessM}
        lowM={low}
        highM={high}
        onChange={(thicknessM) => setDesign(withLayer({ thicknessM }))}
      />
      <FieldFault
        field={`layers.${index}.thicknessM`}
        withValue={(thicknessM) => withLayer({ thicknessM })}
      />
    </div>
  );
}
