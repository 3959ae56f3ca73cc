/** Exposed areas by face and finish, exact: what a painter measures and what the decay is computed from. */

import type { ReactElement } from 'react';
import { faceName } from '../../core/room/faces';
import { finishLookup } from '../../core/room/finishes';
import { useAnalysis, useProject } from '../state/session';
import { scrollable } from '../controls/scrollable';

export function SurfaceTable(): ReactElement {
  const project = useProject();
  const { geometry } = useAnalysis();
  const lookup = finishLookup(project);
  return (
    <figure className="chart" aria-label="Exposed areas">
      <figcaption>
        Exposed areas
        <span className="readout">
          {geometry.surfaceM2.toFixed(2)} m² around {geometry.volumeM3.toFixed(2)} m³
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
                  <small>{lookup(surface.finish)?.name ?? surface.finish}</small>
                </th>
                <td>{surface.areaM2.toFixed(2)} m²</td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
    </figure>
  );
}
