/** One patch: its face, finish, and rectangle from the corner along the face's two axes. */

import type { ReactElement } from 'react';
import { faceBounds, freePatch } from '../../core/room/free-rect';
import { roundLength } from '../../core/quantity/length';
import { faceAxes, patchSide, type Axis } from '../../core/room/faces';
import { finishLookup } from '../../core/room/finishes';
import { farCorner } from '../../core/room/point';
import { FACES, type Patch } from '../../core/room/project';
import { LengthField } from '../controls/LengthField';
import { SelectField } from '../controls/SelectField';
import { useProject } from '../state/session';
import { faceLabel, finishGroups, sourceLine } from './decay-finishes';

const FROM: Readonly<Record<Axis, string>> = {
  0: 'from the left wall',
  1: 'from the screen wall',
  2: 'above the floor',
};

/** Least side of a patch that a figure can be set to, m. */
const LEAST_M = 0.01;

export interface DecayPatchFieldsProps {
  readonly patch: Patch;
  readonly onChange: (patch: Patch, what: string, gesture: string | null) => void;
  readonly onRemove: () => void;
}

export function DecayPatchFields(props: DecayPatchFieldsProps): ReactElement {
  const { patch, onChange, onRemove } = props;
  const project = useProject();
  const { room } = project;
  const onSolid = patch.face.includes(':');
  const [u, v] = faceAxes(patchSide(patch.face));
  const [u0, v0, u1, v1] = patch.rect;
  const far = farCorner(room.size);
  const size = (name: string): string => `size of ${name}`;
  const rect = (next: Patch['rect'], what: string, gesture: string | null): void =>
    onChange({ ...patch, rect: next.map(roundLength) as unknown as Patch['rect'] }, what, gesture);
  const move = (to: readonly [number, number], gesture: string | null): void =>
    rect([to[0], to[1], to[0] + (u1 - u0), to[1] + (v1 - v0)], `place of ${patch.id}`, gesture);
  const toFace = (face: string): void => {
    const moved = { ...patch, face };
    const there = faceBounds(room, face) ? freePatch(room, moved) : null;
    onChange(there ?? moved, `face of ${patch.id}`, null);
  };
  return (
    <div className="patch">
      {onSolid ? (
        <p className="hint">
          On {patch.face.replace(':', ', ')}: its rectangle is changed in the room file.
        </p>
      ) : (
        <SelectField
          label="Face"
          value={patch.face}
          groups={[
            {
              heading: '',
              options: FACES.map((face) => ({ value: face, label: faceLabel(face) })),
            },
          ]}
          onChange={toFace}
        />
      )}
      <SelectField
        label="Finish"
        value={patch.finish}
        title={sourceLine(finishLookup(project)(patch.finish))}
        groups={finishGroups(project)}
        onChange={(finish) => onChange({ ...patch, finish }, `finish of ${patch.id}`, null)}
      />
      {onSolid ? null : (
        <>
          <LengthField
            label={`${patch.id} ${FROM[u]}`}
            shortLabel={FROM[u]}
            valueM={u0}
            lowM={0}
            highM={far[u]}
            onChange={(at, gesture) => move([at, v0], gesture)}
          />
          <LengthField
            label={`${patch.id} ${FROM[v]}`}
            shortLabel={FROM[v]}
            valueM={v0}
            lowM={0}
            highM={far[v]}
            onChange={(at, gesture) => move([u0, at], gesture)}
          />
          <LengthField
            label={`${patch.id} width`}
            shortLabel="width"
            valueM={roundLength(u1 - u0)}
            lowM={LEAST_M}
            highM={far[u]}
            onChange={(width, gesture) => rect([u0, v0, u0 + width, v1], size(patch.id), gesture)}
          />
          <LengthField
            label={`${patch.id} ${v === 2 ? 'height' : 'length'}`}
            shortLabel={v === 2 ? 'height' : 'length'}
            valueM={roundLength(v1 - v0)}
            lowM={LEAST_M}
            highM={far[v]}
            onChange={(height, gesture) => rect([u0, v0, u1, v0 + height], size(patch.id), gesture)}
          />
        </>
      )}
      <button type="button" className="plain" onClick={onRemove}>
        Remove {patch.id}
      </button>
    </div>
  );
}
