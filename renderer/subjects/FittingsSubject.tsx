/** Fittings: what fills part of the shell, by helper, by figures from the corner, and in the drawing. */

import { useMemo, useState, type ReactElement } from 'react';
import { LISTED_TO_HZ } from '../../core/modes/axial-spacing';
import { shellModes } from '../../core/modes/shell-modes';
import { roundLength } from '../../core/quantity/length';
import { AXES } from '../../core/room/faces';
import { FITTING_PRESETS, fittingFrom, LEAST_EXTENT_M } from '../../core/room/fitting-presets';
import type { Axis } from '../../core/room/faces';
import { mapPoint } from '../../core/room/point';
import type { Point, Solid } from '../../core/room/project';
import { SIDES } from '../../core/room/project';
import { BuiltLanes } from '../charts/BuiltLanes';
import { BuiltTable } from '../charts/BuiltTable';
import { ModeLanes } from '../charts/ModeLanes';
import { SurfaceTable } from '../charts/SurfaceTable';
import { Choice } from '../controls/Choice';
import { EvidenceTabs } from '../controls/EvidenceTabs';
import { LengthField } from '../controls/LengthField';
import { SelectField } from '../controls/SelectField';
import { LIMITS_HZ, useBuilt } from '../field/built-store';
import { useShownModes } from '../field/use-painting';
import { changeFittings, withSolid } from '../fittings/change-fittings';
import { useAnalysis, useProject, useSession } from '../state/session';
import { DecayPatches } from './DecayPatches';
import { finishGroups } from './decay-finishes';

export function FittingsInputs(): ReactElement {
  const project = useProject();
  const fitting = useSession((session) => session.fitting);
  const chooseFitting = useSession((session) => session.chooseFitting);
  const { solids } = project.room;
  const chosen = solids.find((solid) => solid.id === fitting);
  return (
    <>
      <fieldset className="channels">
        <legend>Add</legend>
        {FITTING_PRESETS.map((preset) => (
          <button
            key={preset.title}
            type="button"
            title={preset.about}
            onClick={() => {
              const solid = fittingFrom(preset, project);
              if (changeFittings([...solids, solid], `add ${solid.id}`)) chooseFitting(solid.id);
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
              onClick={() => chooseFitting(solid.id === fitting ? null : solid.id)}
            >
              {solid.id}
            </button>
          ))}
        </fieldset>
      )}
      {chosen ? <FittingFields key={chosen.id} solid={chosen} /> : null}
      <DecayPatches />
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
      options={LIMITS_HZ.map((hz) => ({ value: `${hz}`, label: `${hz} Hz` }))}
      value={`${limitHz}`}
      onChange={(value) => {
        const known = LIMITS_HZ.find((hz) => `${hz}` === value);
        if (known) setLimit(known);
      }}
    />
  );
}

const PLACES = ['from the left wall', 'from the screen wall', 'above the floor'] as const;
const EXTENTS = ['wide', 'deep', 'high'] as const;

function FittingFields({ solid }: { readonly solid: Solid }): ReactElement {
  const project = useProject();
  const chooseFitting = useSession((session) => session.chooseFitting);
  const { solids, size } = project.room;
  const change = (next: Solid, gesture: string | null): boolean =>
    changeFittings(withSolid(solids, next), `${solid.id}`, gesture);

  const moveTo = (axis: Axis, at: number, gesture: string | null): void => {
    const extent = solid.max[axis] - solid.min[axis];
    change(
      { ...solid, min: replaced(solid.min, axis, at), max: replaced(solid.max, axis, at + extent) },
      gesture,
    );
  };
  const stretchTo = (axis: Axis, extent: number, gesture: string | null): void => {
    const max = replaced(solid.max, axis, solid.min[axis] + extent);
    change({ ...solid, max }, gesture);
  };

  return (
    <div className="place">
      <h3>{solid.id}</h3>
      {AXES.map((axis) => (
        <LengthField
          key={PLACES[axis]}
          label={`${solid.id} ${PLACES[axis]}`}
          shortLabel={PLACES[axis]}
          valueM={solid.min[axis]}
          lowM={0}
          highM={Math.max(0, size[SIDES[axis]] - (solid.max[axis] - solid.min[axis]))}
          onChange={(at, gesture) => moveTo(axis, at, gesture)}
        />
      ))}
      {AXES.map((axis) => (
        <LengthField
          key={EXTENTS[axis]}
          label={`${solid.id} ${EXTENTS[axis]}`}
          shortLabel={EXTENTS[axis]}
          valueM={solid.max[axis] - solid.min[axis]}
          lowM={LEAST_EXTENT_M}
          highM={Math.max(LEAST_EXTENT_M, size[SIDES[axis]] - solid.min[axis])}
          onChange={(extent, gesture) => stretchTo(axis, extent, gesture)}
        />
      ))}
      <SelectField
        label="Finish"
        value={solid.finish}
        groups={finishGroups(project)}
        onChange={(finish) => change({ ...solid, finish }, null)}
      />
      <button
        type="button"
        className="plain"
        onClick={() => {
          changeFittings(
            solids.filter((known) => known.id !== solid.id),
            `remove ${solid.id}`,
          );
          chooseFitting(null);
        }}
      >
        Remove {solid.id}
      </button>
    </div>
  );
}

const replaced = (point: Point, axis: Axis, at: number): Point =>
  mapPoint(point, (value, i) => (i === axis ? roundLength(at) : value));

type Evidence = 'modes' | 'faces';

export function FittingsEvidence(): ReactElement {
  const [shown, show] = useState<Evidence>('modes');
  return (
    <>
      <EvidenceTabs
        of="the fittings"
        tabs={[
          { value: 'modes', title: 'Modes' },
          { value: 'faces', title: 'Areas' },
        ]}
        shown={shown}
        onShow={show}
      />
      {shown === 'modes' ? <BuiltEvidence /> : <SurfaceTable />}
    </>
  );
}

/** The modes as built beside the shell's; without fittings the two are the same. */
function BuiltEvidence(): ReactElement {
  const project = useProject();
  const { modes, air } = useAnalysis();
  const built = useShownModes()?.built ?? null;
  const limitHz = useBuilt((store) => store.limitHz);
  const shell = useMemo(
    () =>
      limitHz === LISTED_TO_HZ
        ? modes.shell
        : shellModes(project.room.size, air.speedOfSoundMS, limitHz),
    [limitHz, modes.shell, project.room.size, air.speedOfSoundMS],
  );
  if (project.room.solids.length === 0) return <ModeLanes modes={modes} marked={null} />;
  return (
    <>
      <BuiltLanes shell={shell} built={built} limitHz={limitHz} />
      <BuiltTable built={built} />
    </>
  );
}
