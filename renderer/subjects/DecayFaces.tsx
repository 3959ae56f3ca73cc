/** The finish of each shell face, and where its figures come from. */

import type { ReactElement } from 'react';
import { finishLookup } from '../../core/room/finishes';
import { FACES } from '../../core/room/project';
import { SelectField } from '../controls/SelectField';
import { useProject, useSession } from '../state/session';
import {
  coefficientLine,
  faceLabel,
  finishGroups,
  sourceLine,
  UNCERTAINTY_LINE,
} from './decay-finishes';
import { DecayGroup } from './DecayGroup';

export function DecayFaces(): ReactElement {
  const project = useProject();
  const change = useSession((session) => session.change);
  const lookup = finishLookup(project);
  const groups = finishGroups(project);
  const used = [
    ...new Set([
      ...FACES.map((face) => project.room.finishes[face]),
      ...project.room.solids.map((solid) => solid.finish),
      ...project.room.patches.map((patch) => patch.finish),
    ]),
  ].flatMap((id) => lookup(id) ?? []);
  return (
    <DecayGroup title="Faces" open>
      {FACES.map((face) => (
        <SelectField
          key={face}
          label={faceLabel(face)}
          value={project.room.finishes[face]}
          title={sourceLine(lookup(project.room.finishes[face]))}
          groups={groups}
          onChange={(id) => change({ kind: 'finish', face, finish: id })}
        />
      ))}
      <details className="sources">
        <summary>Figures and sources of what is used</summary>
        <ul>
          {used.map((finish) => (
            <li key={finish.id}>
              <b>{finish.name}</b> {coefficientLine(finish)}. <i>{sourceLine(finish)}</i>
            </li>
          ))}
        </ul>
        <p className="hint">{UNCERTAINTY_LINE}</p>
      </details>
    </DecayGroup>
  );
}
