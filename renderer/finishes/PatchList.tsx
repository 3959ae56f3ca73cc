/**
 * Doors, windows and panels: rectangles of another finish on a face, by figures from its corner. What is
 * part of the building belongs to Fittings, what is hung for the sound to Decay, where all are listed.
 */

import type { ReactElement } from 'react';
import { isOpening, PATCH_KIND } from '../../core/room/patch-kinds';
import type { Patch } from '../../core/room/project';
import { removeThing } from '../state/remove-thing';
import { useProject, useSelected, useSession } from '../state/session';
import { FoldGroup } from '../kit/controls/FoldGroup';
import { PatchFields } from './PatchFields';
import { patchPresets, presetPatch } from './patch-presets';
import type { Gesture } from '../state/gesture';

const TITLES = {
  building: 'Doors, windows, passages',
  treatment: 'Doors, windows, panels',
} as const;

export function PatchList({ of }: { readonly of: keyof typeof TITLES }): ReactElement {
  const project = useProject();
  const change = useSession((session) => session.change);
  const units = useSession((session) => session.units);
  const chosenId = useSelected('patch');
  const { select, toggle } = useSession.getState();
  const { patches } = project.room;
  const listed = of === 'treatment' ? patches : patches.filter(isOpening);
  const chosen = listed.find((patch) => patch.id === chosenId);
  const set = (next: readonly Patch[], what: string, gesture: Gesture | null = null): void =>
    change({ kind: 'patches', patches: next, what }, gesture);
  return (
    <FoldGroup title={TITLES[of]} tally={listed.length === 0 ? 'none' : String(listed.length)}>
      <div className="adders">
        {patchPresets(units)
          .filter(({ belongsTo }) => belongsTo === of)
          .map((preset) => (
            <button
              key={preset.kind}
              type="button"
              title={preset.about}
              onClick={() => {
                const patch = presetPatch(project, preset);
                set([...patches, patch], `add ${patch.id}`);
                select({ kind: 'patch', id: patch.id });
              }}
            >
              Add {PATCH_KIND[preset.kind].name}
            </button>
          ))}
      </div>
      {listed.length === 0 ? (
        <p className="hint">
          {of === 'treatment'
            ? 'A panel covers part of a face with another finish; doors and windows are added in Fittings.'
            : 'A door, window or passage takes part of a wall.'}{' '}
          Add one, then drag it in the drawing or set its place by tape measure.
        </p>
      ) : (
        <fieldset className="channels">
          <legend>{of === 'treatment' ? 'On the faces' : 'In the walls'}</legend>
          {listed.map((patch) => (
            <button
              key={patch.id}
              type="button"
              aria-pressed={patch.id === chosen?.id}
              onClick={() => toggle({ kind: 'patch', id: patch.id })}
            >
              {patch.id}
            </button>
          ))}
        </fieldset>
      )}
      {chosen ? (
        <PatchFields
          key={chosen.id}
          patch={chosen}
          onChange={(next, what, gesture) =>
            set(
              patches.map((patch) => (patch.id === next.id ? next : patch)),
              what,
              gesture,
            )
          }
          onRemove={() => removeThing({ kind: 'patch', id: chosen.id })}
        />
      ) : null}
    </FoldGroup>
  );
}
