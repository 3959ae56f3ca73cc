/** Doors, windows and panels: rectangles of another finish on a face, by figures from its corner. */

import { useState, type ReactElement } from 'react';
import type { Patch } from '../../core/room/project';
import { useProject, useSession } from '../state/session';
import { DecayGroup } from './DecayGroup';
import { DecayPatchFields } from './DecayPatchFields';
import { patchPresets, presetPatch } from './patch-presets';

export function DecayPatches(): ReactElement {
  const project = useProject();
  const change = useSession((session) => session.change);
  const units = useSession((session) => session.units);
  const [chosenId, choose] = useState<string | null>(null);
  const { patches } = project.room;
  const chosen = patches.find((patch) => patch.id === chosenId) ?? patches.at(-1);
  const set = (next: readonly Patch[], what: string, gesture: string | null = null): void =>
    change({ kind: 'patches', patches: next, what }, gesture);
  return (
    <DecayGroup
      title="Doors, windows, panels"
      tally={patches.length === 0 ? 'none' : String(patches.length)}
    >
      <div className="adders">
        {patchPresets(units).map((preset) => (
          <button
            key={preset.name}
            type="button"
            title={preset.about}
            onClick={() => {
              const patch = presetPatch(project, preset);
              set([...patches, patch], `new ${preset.name}`);
              choose(patch.id);
            }}
          >
            Add {preset.name}
          </button>
        ))}
      </div>
      {patches.length === 0 ? (
        <p className="hint">
          A door, window or panel covers part of a face with another finish. Add one, then set its
          place by tape measure.
        </p>
      ) : (
        <fieldset className="channels">
          <legend>Patch</legend>
          {patches.map((patch) => (
            <button
              key={patch.id}
              type="button"
              aria-pressed={patch.id === chosen?.id}
              onClick={() => choose(patch.id)}
            >
              {patch.id}
            </button>
          ))}
        </fieldset>
      )}
      {chosen ? (
        <DecayPatchFields
          key={chosen.id}
          patch={chosen}
          onChange={(next, what, gesture) =>
            set(
              patches.map((patch) => (patch.id === next.id ? next : patch)),
              what,
              gesture,
            )
          }
          onRemove={() =>
            set(
              patches.filter((patch) => patch.id !== chosen.id),
              `remove ${chosen.id}`,
            )
          }
        />
      ) : null}
    </DecayGroup>
  );
}
