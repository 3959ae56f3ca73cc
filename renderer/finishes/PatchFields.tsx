/** One patch: its face, finish, and rectangle from the corner along the face's two axes. */

import { faceOf } from '../../core/room/built-face';
import { useMemo, type ReactElement } from 'react';
import { freePatch } from '../../core/room/free-rect';
import { roundLength } from '../../core/quantity/length';
import { faceAxes, patchSide, solidOfFace, type Axis } from '../../core/room/faces';
import { farCorner } from '../../core/room/point';
import { hingeOf } from '../../core/room/openings';
import { PATCH_KIND } from '../../core/room/patch-kinds';
import {
  FACES,
  HINGES,
  PATCH_KINDS,
  SWINGS,
  type Patch,
  type Swing,
} from '../../core/room/project';
import { LengthField } from '../kit/controls/LengthField';
import { useBroughtIntoView } from '../kit/controls/use-brought-into-view';
import { SelectField } from '../kit/controls/SelectField';
import { FinishField } from './FinishField';
import type { FinishSpot } from './finish-list';
import { useProject } from '../state/session';
import { faceLabel } from './face-label';
import type { Gesture } from '../state/gesture';

const FROM: Readonly<Record<Axis, string>> = {
  0: 'from the left wall',
  1: 'from the screen wall',
  2: 'above the floor',
};

const NEAREST: Readonly<Record<Axis, string>> = {
  0: 'the left wall',
  1: 'the screen wall',
  2: 'the floor',
};

/** Least side of a patch that a figure can be set to, m. */
const LEAST_M = 0.01;

export interface PatchFieldsProps {
  readonly patch: Patch;
  readonly onChange: (patch: Patch, what: string, gesture: Gesture | null) => void;
  readonly onRemove: () => void;
}

export function PatchFields(props: PatchFieldsProps): ReactElement {
  const { patch, onChange, onRemove } = props;
  const project = useProject();
  const { room } = project;
  const spot = useMemo<FinishSpot>(
    () => ({ kind: 'patch', id: patch.id, face: patch.face }),
    [patch.id, patch.face],
  );
  const onSolid = solidOfFace(patch.face) !== null;
  const [u, v] = faceAxes(patchSide(patch.face));
  const [u0, v0, u1, v1] = patch.rect;
  const far = farCorner(room.size);
  const size = (name: string): string => `size of ${name}`;
  const rect = (next: Patch['rect'], what: string, gesture: Gesture | null): void =>
    onChange({ ...patch, rect: next.map(roundLength) as unknown as Patch['rect'] }, what, gesture);
  const move = (to: readonly [number, number], gesture: Gesture | null): void =>
    rect([to[0], to[1], to[0] + (u1 - u0), to[1] + (v1 - v0)], `place of ${patch.id}`, gesture);
  const toFace = (face: string): void => {
    const moved = { ...patch, face };
    const there = faceOf(room, face) ? freePatch(room, moved) : null;
    onChange(there ?? moved, `face of ${patch.id}`, null);
  };
  const box = useBroughtIntoView<HTMLDivElement>(patch.id);
  return (
    <div className="patch" ref={box}>
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
        label="Kind"
        value={patch.kind}
        groups={[
          {
            heading: '',
            options: PATCH_KINDS.map((kind) => ({ value: kind, label: PATCH_KIND[kind].name })),
          },
        ]}
        onChange={(value) => {
          const kind = PATCH_KINDS.find((known) => known === value);
          if (kind) onChange({ ...patch, kind }, `kind of ${patch.id}`, null);
        }}
      />
      <FinishField
        label="Finish"
        of={patch.id}
        value={patch.finish}
        spot={spot}
        onChange={(finish) => onChange({ ...patch, finish }, `finish of ${patch.id}`, null)}
      />
      {PATCH_KIND[patch.kind].hasLeaf ? <DoorFields patch={patch} onChange={onChange} /> : null}
      {onSolid ? null : (
        <>
          <p className="hint">
            Measured to its corner nearest to {NEAREST[u]} and {NEAREST[v]}.
          </p>
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

const SWING_WORDS: Readonly<Record<Swing, string>> = {
  in: 'into the room',
  out: 'out of the room',
  slides: 'slides along the wall',
};

/** How a door opens; what of the room its leaf sweeps over follows. */
function DoorFields({
  patch,
  onChange,
}: Pick<PatchFieldsProps, 'patch' | 'onChange'>): ReactElement {
  const { room } = useProject();
  const swing = patch.swing ?? 'in';
  const what = `swing of ${patch.id}`;
  return (
    <>
      <SelectField
        label="Opens"
        value={swing}
        groups={[
          {
            heading: '',
            options: SWINGS.map((value) => ({ value, label: SWING_WORDS[value] })),
          },
        ]}
        onChange={(value) => {
          const known = SWINGS.find((one) => one === value);
          if (known) onChange({ ...patch, swing: known }, what, null);
        }}
      />
      {swing === 'slides' ? null : (
        <SelectField
          label="Hinges"
          value={hingeOf(room, patch)}
          groups={[
            {
              heading: '',
              options: HINGES.map((value) => ({
                value,
                label: `on the ${value}, seen from within`,
              })),
            },
          ]}
          onChange={(value) => {
            const known = HINGES.find((one) => one === value);
            if (known) onChange({ ...patch, hinge: known }, what, null);
          }}
        />
      )}
    </>
  );
}
