/** Exposed areas by face and finish, exact: what a painter measures and what the decay is computed from. */

import type { ReactElement } from 'react';
import { measuresIn } from '../../../core/quantity/measures';
import { faceName } from '../../../core/room/faces';
import { finishLookup, finishName } from '../../../core/room/finishes';
import { useAnalysis, useProject, useSession } from '../../state/session';
import { FactTable } from '../../kit/table/FactTable';
import styles from './SurfaceTable.module.css';

export function SurfaceTable(): ReactElement {
  const project = useProject();
  const { geometry } = useAnalysis();
  const measures = useSession((session) => measuresIn(session.units));
  const lookup = finishLookup(project);
  const nameOf = (id: string): string => {
    const finish = lookup(id);
    return finish ? finishName(finish, measures.units) : id;
  };
  return (
    <FactTable
      title="Exposed areas"
      caption="Exposed areas"
      readout={`${measures.area(geometry.surfaceM2)} around ${measures.volume(geometry.volumeM3)}`}
      scrolls="Surfaces"
      rows={geometry.surfaces}
      keyOf={({ face, patch }) => `${face}|${patch ?? ''}`}
      columns={[
        {
          key: 'face',
          cell: ({ face, patch, finish }) => (
            <>
              {faceName(face)}
              {patch === null ? '' : `, ${patch}`}
              <small>{nameOf(finish)}</small>
            </>
          ),
          cellClass: () => styles.face,
        },
        { key: 'area', cell: ({ areaM2 }) => measures.area(areaM2) },
      ]}
    />
  );
}
