/** Decay: what each face is finished with, what is aimed for, and the time per octave. */

import type { ReactElement } from 'react';
import { CUSTOM_SOURCE, targetSource } from '../../core/decay/target';
import { COMMON_OCTAVES_HZ } from '../../core/quantity/bands';
import { FINISHES, finishLookup } from '../../core/room/finishes';
import { FACES, type Face, type Target } from '../../core/room/project';
import { AbsorptionShares } from '../charts/AbsorptionShares';
import { DecayChart } from '../charts/DecayChart';
import { Choice } from '../controls/Choice';
import { NumberField } from '../controls/NumberField';
import { useAnalysis, useProject, useSession } from '../state/session';

const FACE_NAMES: Readonly<Record<Face, string>> = {
  front: 'Screen wall',
  back: 'Back wall',
  left: 'Left wall',
  right: 'Right wall',
  floor: 'Floor',
  ceiling: 'Ceiling',
};

const CATEGORIES = [...new Set(FINISHES.map((finish) => finish.category))];

export function DecayInputs(): ReactElement {
  const project = useProject();
  const change = useSession((session) => session.change);
  const lookup = finishLookup(project);
  return (
    <>
      {FACES.map((face) => {
        const finish = lookup(project.room.finishes[face]);
        return (
          <label className="select" key={face} title={finish?.source}>
            <span>{FACE_NAMES[face]}</span>
            <select
              value={project.room.finishes[face]}
              onChange={(event) =>
                change({ kind: 'finish', face, finish: event.currentTarget.value })
              }
            >
              {project.finishesCustom.length > 0 ? (
                <optgroup label="Own finishes">
                  {project.finishesCustom.map((own) => (
                    <option key={own.id} value={own.id}>
                      {own.name}
                    </option>
                  ))}
                </optgroup>
              ) : null}
              {CATEGORIES.map((category) => (
                <optgroup key={category} label={category}>
                  {FINISHES.filter((known) => known.category === category).map((known) => (
                    <option key={known.id} value={known.id}>
                      {known.name}
                    </option>
                  ))}
                </optgroup>
              ))}
            </select>
          </label>
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
