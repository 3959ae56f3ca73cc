/** The finish of each shell face, and where its figures come from. */

import type { ReactElement } from 'react';
import { faceName } from '../../../core/room/faces';
import { finishLookup, finishName } from '../../../core/room/finishes';
import { FACES, type Face } from '../../../core/room/project';
import { FinishField } from '../../finishes/FinishField';
import type { FinishSpot } from '../../finishes/finish-list';
import { useProject, useSession } from '../../state/session';
import { coefficientLine, sourceLine, UNCERTAINTY_LINE } from '../../finishes/finish-words';
import { faceLabel } from '../../finishes/face-label';
import { FoldGroup } from '../../kit/controls/FoldGroup';

/** One object a face: the chooser computes anew only where its spot changes. */
const SPOTS = Object.fromEntries(
  FACES.map((face) => [face, { kind: 'face', face }]),
) as unknown as Readonly<Record<Face, FinishSpot>>;

export function DecayFaces(): ReactElement {
  const project = useProject();
  const change = useSession((session) => session.change);
  const units = useSession((session) => session.units);
  const lookup = finishLookup(project);
  const used = [
    ...new Set([
      ...FACES.map((face) => project.room.finishes[face]),
      ...project.room.solids.map((solid) => solid.finish),
      ...project.room.patches.map((patch) => patch.finish),
    ]),
  ].flatMap((id) => lookup(id) ?? []);
  return (
    <FoldGroup title="Faces" open>
      {FACES.map((face) => (
        <FinishField
          key={face}
          label={faceLabel(face)}
          of={`the ${faceName(face)}`}
          value={project.room.finishes[face]}
          spot={SPOTS[face]}
          onChange={(id) => change({ kind: 'finish', face, finish: id })}
        />
      ))}
      <details className="sources">
        <summary>Figures and sources of what is used</summary>
        <ul>
          {used.map((finish) => (
            <li key={finish.id}>
              <b>{finishName(finish, units)}</b> {coefficientLine(finish)}.{' '}
              <i>{sourceLine(finish, units)}</i>
            </li>
          ))}
        </ul>
        <p className="hint">{UNCERTAINTY_LINE}</p>
      </details>
    </FoldGroup>
  );
}
