/** The bench: design an absorber, see what it does, and take it into the room as a finish. */

import { useRef, type ReactElement } from 'react';
import { cavityDepthM, DESIGN_KINDS, type Design } from '../../../core/absorbers/design';
import { frequencyText } from '../../../core/absorbers/design-notes';
import { holeOpenArea, slotOpenArea } from '../../../core/absorbers/facing';
import { readDesign } from '../../../core/absorbers/read-design';
import type { LengthUnits } from '../../../core/quantity/length';
import { measuresIn } from '../../../core/quantity/measures';
import { Choice } from '../../kit/controls/Choice';
import { SelectField } from '../../kit/controls/SelectField';
import { useProject, useSession } from '../../state/session';
import { Figures } from '../../glossary/Figures';
import { BenchActions } from './BenchActions';
import { useBench } from './bench-store';
import { FacingFields } from './FacingFields';
import { FillFields } from './FillFields';
import { useEscape } from './use-escape';
import { useEvaluation } from './use-evaluation';

const KIND_LABELS = {
  porous: ['Porous', 'Fibre or foam, with or without air behind'],
  perforated: ['Holes', 'A panel with round holes over a cavity'],
  slotted: ['Slats', 'Slats with slots between them over a cavity'],
  membrane: ['Membrane', 'A closed panel that swings over a cavity'],
} as const;

const NEW = '';

export interface AbsorberBenchProps {
  readonly onClose: () => void;
}

export function AbsorberBench({ onClose }: AbsorberBenchProps): ReactElement {
  const { design, finishId, setKind } = useBench();
  const evaluation = useEvaluation(design);
  const units = useSession((session) => session.units);
  const box = useRef<HTMLDivElement>(null);
  useEscape(box, onClose);
  return (
    <div className="bench" role="group" aria-label="Absorber design" ref={box}>
      <div className="bench-head">
        <h3>Absorber design</h3>
        <button type="button" onClick={onClose}>
          Close
        </button>
      </div>
      <Opened />
      <Choice
        legend="Kind of absorber"
        hideLegend
        options={DESIGN_KINDS.map((value) => ({
          value,
          label: KIND_LABELS[value][0],
          title: KIND_LABELS[value][1],
        }))}
        value={design.kind}
        onChange={setKind}
      />
      <div className="bench-fields" key={`${finishId ?? ''} ${design.kind}`}>
        <FacingFields />
        <FillFields />
      </div>
      <Figures rows={figuresOf(design, evaluation.resonanceHz, units)} />
      <BenchActions />
      {evaluation.notes.map((note) => (
        <p key={note} className="hint">
          {note}
        </p>
      ))}
    </div>
  );
}

/** Which design is on the bench: a new one, or one that a finish of the room was made from. */
function Opened(): ReactElement | null {
  const { finishesCustom } = useProject();
  const { finishId, open } = useBench();
  const designed = finishesCustom.filter((finish) => readDesign(finish.design) !== null);
  if (designed.length === 0) return null;
  return (
    <SelectField
      label="On the bench"
      value={designed.some((finish) => finish.id === finishId) ? (finishId ?? NEW) : NEW}
      groups={[
        { heading: '', options: [{ value: NEW, label: 'A new design' }] },
        {
          heading: 'My absorbers',
          options: designed.map(({ id, name }) => ({ value: id, label: name || id })),
        },
      ]}
      onChange={(id) => open(designed.find((finish) => finish.id === id) ?? null)}
    />
  );
}

function figuresOf(
  design: Design,
  resonanceHz: number | null,
  units: LengthUnits,
): readonly (readonly [string, string, string])[] {
  const panelM = 'panelThicknessM' in design ? design.panelThicknessM : 0;
  const open =
    design.kind === 'perforated'
      ? holeOpenArea(design.holeDiameterM, design.holeSpacingM, design.grid)
      : design.kind === 'slotted'
        ? slotOpenArea(design.slotWidthM, design.slatWidthM)
        : null;
  return [
    [
      design.kind === 'membrane' ? 'Depth without the panel' : 'Depth off the wall',
      measuresIn(units).part(cavityDepthM(design) + panelM),
      'sum of all layers',
    ],
    ...(open === null
      ? []
      : [['Open area', `${(open * 100).toFixed(1)} %`, 'from width and spacing'] as const]),
    ...(resonanceHz === null
      ? []
      : [
          [
            'Resonance',
            frequencyText(resonanceHz),
            'lowest frequency without reactance at normal incidence',
          ] as const,
        ]),
  ];
}
