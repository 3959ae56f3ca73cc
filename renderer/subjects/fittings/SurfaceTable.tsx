/** Exposed areas by face and finish, exact: what a painter measures and what the decay is computed from. */

import type { ReactElement } from 'react';
import { measuresIn } from '../../../core/quantity/measures';
import { faceName } from '../../../core/room/faces';
import { finishLookup, finishName } from '../../../core/room/finishes';
import { useAnalysis, useProject, useSession } from '../../state/session';
import { scrollable } from '../../kit/controls/scrollable';

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
    <figure className="chart" aria-label="Exposed areas">
      <figcaption>
        Exposed areas
        <span className="readout">
          {measures.area(geometry.surfaceM2)} around {measures.volume(geometry.volumeM3)}
        </span>
      </figcaption>
      <div className="table-box" {...scrollable('Surfaces')}>
        <table>
          <tbody>
            {geometry.surfaces.map((surface) => (
              <tr key={`${surface.face}|${surface.patch ?? ''}`}>
                <th scope="row" className="surface-name">
                  {faceName(surface.face)}
                  {surface.patch === null ? '' : `, ${surface.patch}`}
                  <small>{nameOf(surface.finish)}</small>
                </th>
                <td>{measures.area(surface.areaM2)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
    </figure>
  );
}
