/** Name the design and take it into the room: as a finish of its own, and onto a face. */

import type { ReactElement } from 'react';
import { designAsFinish, freshFinishId } from '../../../core/absorbers/as-finish';
import { designName } from '../../../core/absorbers/design-name';
import type { Edit } from '../../../core/room/edits';
import { faceName } from '../../../core/room/faces';
import { FINISHES } from '../../../core/room/finishes';
import { FACES, type Face } from '../../../core/room/project';
import { SelectField } from '../../kit/controls/SelectField';
import { TypedField } from '../../kit/controls/TypedField';
import { useProject, useSession } from '../../state/session';
import { faceLabel } from '../../finishes/face-label';
import { useBench } from './bench-store';
import { useEvaluation } from './use-evaluation';

const LONGEST_NAME = 120;
const FACE_GROUPS = [
  { heading: '', options: FACES.map((face) => ({ value: face, label: faceLabel(face) })) },
];

export function BenchActions(): ReactElement {
  const project = useProject();
  const units = useSession((session) => session.units);
  const change = useSession((session) => session.change);
  const { design, name, finishId, face, said, rename, chooseFace, keptAs } = useBench();
  const { faults } = useEvaluation(design);
  const known = project.finishesCustom.find((finish) => finish.id === finishId);
  const shownName = name ?? designName(design, units);
  const broken = faults.length > 0;

  const takeName = (text: string): string | null => {
    const value = text.trim();
    if (value.length > LONGEST_NAME) return `The name can have ${LONGEST_NAME} letters at most.`;
    rename(value === '' ? null : value);
    return null;
  };

  /** Add or update the finish and put it on `onFace`: one edit, so that the face finds the finish. */
  const keep = (onFace: Face | null): void => {
    const taken = [...project.finishesCustom, ...FINISHES].map((finish) => finish.id);
    const id = known?.id ?? freshFinishId(taken);
    const made = designAsFinish(design, id, shownName, project.air);
    const finish = known ? { ...known, ...made } : made;
    const edits: readonly Edit[] = [
      { kind: 'own-finish', finish },
      ...(onFace ? [{ kind: 'finish', face: onFace, finish: id } as const] : []),
    ];
    const place = onFace ? ` on the ${faceName(onFace)}` : '';
    change({ kind: 'several', edits, what: `finish ${finish.name}${place}` });
    const where = onFace ? ` and put on: ${faceName(onFace)}` : '';
    keptAs(id, `${known ? 'Updated' : 'Added'}${where}.`);
  };

  return (
    <section className="bench-part">
      <TypedField
        className="bench-name"
        inputMode="text"
        label="Name"
        shown={shownName}
        onTake={takeName}
      />
      <SelectField
        label="Face"
        value={face}
        groups={FACE_GROUPS}
        onChange={(value) => chooseFace(FACES.find((known) => known === value) ?? face)}
      />
      <div className="bench-actions">
        <button type="button" className="apply" disabled={broken} onClick={() => keep(null)}>
          {known ? 'Update my finish' : 'Add to my finishes'}
        </button>
        <button type="button" className="apply" disabled={broken} onClick={() => keep(face)}>
          {known ? 'Update and put on' : 'Add and put on'}
        </button>
      </div>
      <p className="hint" role="status">
        {broken ? 'First mend what is marked above.' : (said ?? '')}
      </p>
    </section>
  );
}
