/** Fittings: what fills part of the shell, by helper, by figures from the corner, and in the drawing. */

import { useMemo, type ReactElement } from 'react';
import { FITTING_MEASURED_TO, fittingFields } from '../../../core/room/fitting-fields';
import { fittingPresets, fittingFrom } from '../../../core/room/fitting-presets';
import type { Solid } from '../../../core/room/project';
import { BuiltLanes } from './BuiltLanes';
import { BuiltTable } from './BuiltTable';
import { ModeLanes } from '../../pressure/ModeLanes';
import { SurfaceTable } from './SurfaceTable';
import { Choice } from '../../kit/controls/Choice';
import { Tabs } from '../../kit/Tabs';
import { LengthField } from '../../kit/controls/LengthField';
import { MODE_LIMITS_HZ } from '../../../core/analysis/results';
import { useResult } from '../../state/use-result';
import { useBuilt, useShownModes } from '../../pressure/built-store';
import { useBroughtIntoView } from '../../kit/controls/use-brought-into-view';
import { changeFittings, withSolid } from '../../state/change-fittings';
import { removeThing } from '../../state/remove-thing';
import { useAnalysis, useProject, useSelected, useSession, useShown } from '../../state/session';
import { PatchList } from '../../finishes/PatchList';
import { FinishField } from '../../finishes/FinishField';
import type { FinishSpot } from '../../finishes/finish-list';
import type { Gesture } from '../../state/gesture';

export function FittingsInputs(): ReactElement {
  const project = useProject();
  const units = useSession((session) => session.units);
  const fitting = useSelected('solid');
  const { select, toggle } = useSession.getState();
  const { solids } = project.room;
  const chosen = solids.find((solid) => solid.id === fitting);
  return (
    <>
      <fieldset className="channels">
        <legend>Add</legend>
        {fittingPresets(units).map((preset) => (
          <button
            key={preset.title}
            type="button"
            title={preset.about}
            onClick={() => {
              const solid = fittingFrom(preset, project);
              if (changeFittings([...solids, solid], `add ${solid.id}`))
                select({ kind: 'solid', id: solid.id });
            }}
          >
            {preset.title}
          </button>
        ))}
      </fieldset>
      {solids.length === 0 ? (
        <p className="hint">
          Nothing fills the shell yet. Add what the ducts, the closet and the rows need, then drag
          it in the drawing.
        </p>
      ) : (
        <fieldset className="channels">
          <legend>In the room</legend>
          {solids.map((solid) => (
            <button
              key={solid.id}
              type="button"
              aria-pressed={solid.id === fitting}
              onClick={() => toggle({ kind: 'solid', id: solid.id })}
            >
              {solid.id}
            </button>
          ))}
        </fieldset>
      )}
      {chosen ? <FittingFields key={chosen.id} solid={chosen} /> : null}
      <PatchList of="building" />
      {solids.length > 0 ? <LimitChoice /> : null}
      <p className="caution">
        Never box in a shut-off, a cleanout, a vent or an escape window, and cut no joist for a
        beam: your local code and a licensed trade decide.
      </p>
    </>
  );
}

function LimitChoice(): ReactElement {
  const { limitHz, setLimit } = useBuilt();
  return (
    <Choice
      legend="Modes as built, up to"
      options={MODE_LIMITS_HZ.map((hz) => ({ value: `${hz}`, label: `${hz} Hz` }))}
      value={`${limitHz}`}
      onChange={(value) => {
        const known = MODE_LIMITS_HZ.find((hz) => `${hz}` === value);
        if (known) setLimit(known);
      }}
    />
  );
}

function FittingFields({ solid }: { readonly solid: Solid }): ReactElement {
  const project = useProject();
  const { solids, size } = project.room;
  const change = (next: Solid, gesture: Gesture | null): boolean =>
    changeFittings(withSolid(solids, next), `${solid.id}`, gesture);

  const spot = useMemo<FinishSpot>(() => ({ kind: 'solid', id: solid.id }), [solid.id]);
  const box = useBroughtIntoView<HTMLDivElement>(solid.id);
  return (
    <div className="place" ref={box}>
      <h3>{solid.id}</h3>
      <p className="hint">{FITTING_MEASURED_TO}</p>
      {fittingFields(solid, size).map((field) => (
        <LengthField
          key={`${field.of}-${field.axis}`}
          label={`${solid.id} ${field.label}`}
          shortLabel={field.label}
          valueM={field.valueM}
          lowM={field.lowM}
          highM={field.highM}
          onChange={(valueM, gesture) => change(field.set(valueM), gesture)}
        />
      ))}
      <FinishField
        label="Finish"
        of={solid.id}
        value={solid.finish}
        spot={spot}
        onChange={(finish) => change({ ...solid, finish }, null)}
      />
      <button
        type="button"
        className="plain"
        onClick={() => removeThing({ kind: 'solid', id: solid.id })}
      >
        Remove {solid.id}
      </button>
    </div>
  );
}

type Evidence = 'modes' | 'faces';

export function FittingsEvidence(): ReactElement {
  const [shown, show] = useShown<Evidence>('fittings', 'modes');
  return (
    <Tabs
      of="the fittings"
      tabs={[
        { value: 'modes', title: 'Modes' },
        { value: 'faces', title: 'Areas' },
      ]}
      shown={shown}
      onShow={show}
    >
      {shown === 'modes' ? <BuiltEvidence /> : <SurfaceTable />}
    </Tabs>
  );
}

/** The modes as built beside the shell's; without fittings the two are the same. */
function BuiltEvidence(): ReactElement {
  const project = useProject();
  const { modes } = useAnalysis();
  const built = useShownModes()?.built ?? null;
  const limitHz = useBuilt((store) => store.limitHz);
  const shell = useResult('shellModes', { limitHz });
  if (project.room.solids.length === 0) return <ModeLanes modes={modes} marked={null} />;
  return (
    <>
      <BuiltLanes shell={shell} built={built} limitHz={limitHz} />
      <BuiltTable built={built} />
    </>
  );
}
