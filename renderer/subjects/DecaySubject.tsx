/** Decay: what each face is finished with, what is aimed for, and the time per octave. */

import type { ReactElement } from 'react';
import { CUSTOM_SOURCE, targetSource } from '../../core/decay/target';
import { COMMON_OCTAVES_HZ } from '../../core/quantity/bands';
import { FINISHES, finishLookup, type Finish } from '../../core/room/finishes';
import { FACES, type Face, type Target } from '../../core/room/project';
import { AbsorptionShares } from '../charts/AbsorptionShares';
import { DecayChart } from '../charts/DecayChart';
import { Choice } from '../controls/Choice';
import { NumberField } from '../controls/NumberField';
import { SelectField, type SelectGroup } from '../controls/SelectField';
import { useAnalysis, useProject, useSession } from '../state/session';

const FACE_NAMES: Readonly<Record<Face, string>> = {
  front: 'Screen wall',
  back: 'Back wall',
  left: 'Left wall',
  right: 'Right wall',
  floor: 'Floor',
  ceiling: 'Ceiling',
};

/** The library by category, made once: it does not change while the program runs. */
const LIBRARY: readonly SelectGroup[] = [...new Set(FINISHES.map((known) => known.category))].map(
  (category) => ({ heading: category, options: options(FINISHES, category) }),
);

function options(finishes: readonly Finish[], category: string): SelectGroup['options'] {
  return finishes
    .filter((known) => known.category === category)
    .map((known) => ({ value: known.id, label: known.name }));
}

export function DecayInputs(): ReactElement {
  const project = useProject();
  const change = useSession((session) => session.change);
  const lookup = finishLookup(project);
  const own = project.finishesCustom.map((known) => ({ value: known.id, label: known.name }));
  const groups = own.length > 0 ? [{ heading: 'Own finishes', options: own }, ...LIBRARY] : LIBRARY;
  return (
    <>
      {FACES.map((face) => {
        const finish = lookup(project.room.finishes[face]);
        return (
          <SelectField
            key={face}
            label={FACE_NAMES[face]}
            value={project.room.finishes[face]}
            title={finish?.source}
            groups={groups}
            onChange={(id) => change({ kind: 'finish', face, finish: id })}
          />
        );
      })}
      <TargetFields />
    </>
  );
}

function TargetFields(): ReactElement {
  const { target } = useProject();
  const { decay } = useAnalysis();
  const change = useSession((session) => session.change);
  const own = (): Target => ({
    kind: 'custom',
    seconds: Object.fromEntries(
      decay.bands
        .filter((band) => band.targetS !== null)
        .map((band) => [String(band.hz), Number((band.targetS ?? 0.3).toFixed(2))]),
    ),
  });
  return (
    <div className="place">
      <Choice
        legend="Target"
        options={[
          { value: 'bs1116', label: 'Listening room', title: targetSource({ kind: 'bs1116' }) },
          { value: 'custom', label: 'My own', title: CUSTOM_SOURCE },
        ]}
        value={target.kind}
        onChange={(kind) =>
          change({ kind: 'target', target: kind === 'custom' ? own() : { kind: 'bs1116' } })
        }
      />
      {target.kind === 'custom' ? (
        <div className="bands">
          {COMMON_OCTAVES_HZ.map((hz) => (
            <NumberField
              key={hz}
              label={hz >= 1000 ? `${hz / 1000}k` : String(hz)}
              unit="s"
              value={target.seconds[`${hz}`] ?? 0.3}
              low={0.05}
              high={10}
              digits={2}
              onChange={(seconds) =>
                change({
                  kind: 'target',
                  target: { ...target, seconds: { ...target.seconds, [hz]: seconds } },
                })
              }
            />
          ))}
        </div>
      ) : null}
      <p className="hint">{targetSource(target)}.</p>
      <p className="caution">
        Linings burn and mineral fibre irritates: use tested materials, cover fibre with cloth,
        never hang untested foam. Your local fire code decides.
      </p>
    </div>
  );
}

export function DecayEvidence(): ReactElement | null {
  const project = useProject();
  const { decay, modes } = useAnalysis();
  const bandHz = useSession((session) => session.bandHz);
  const chooseBand = useSession((session) => session.chooseBand);
  const band = decay.bands.find((candidate) => candidate.hz === bandHz);
  return (
    <>
      <DecayChart
        decay={decay}
        schroederHz={modes.schroederHz}
        chosenHz={bandHz}
        onChoose={chooseBand}
      />
      {band ? <AbsorptionShares band={band} project={project} /> : null}
    </>
  );
}
