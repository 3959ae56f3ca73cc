/** Which surface takes how much of the sound in the chosen octave. */

import type { ReactElement } from 'react';
import type { DecayBand } from '../../core/decay/decay';
import { finishLookup } from '../../core/room/finishes';
import type { Project } from '../../core/room/project';

/** Sides of a fitting as a builder calls them. */
function faceName(face: string): string {
  const [solid, side] = face.split(':');
  if (side === undefined) return face;
  const names: Readonly<Record<string, string>> = { floor: 'underside', ceiling: 'top' };
  return `${solid ?? ''}, ${names[side] ?? side}`;
}

export function AbsorptionShares({
  band,
  project,
}: {
  readonly band: DecayBand;
  readonly project: Project;
}): ReactElement {
  const lookup = finishLookup(project);
  const rows = [
    ...band.surfaces.map((surface) => ({
      key: `${surface.face}|${surface.patch ?? ''}`,
      what: surface.patch ? `${faceName(surface.face)}, ${surface.patch}` : faceName(surface.face),
      detail: lookup(surface.finish)?.name ?? surface.finish,
      areaM2: surface.coefficient === null ? null : surface.areaM2 * surface.coefficient,
    })),
    { key: 'air', what: 'air', detail: 'ISO 9613-1', areaM2: band.airAbsorptionM2 },
  ].sort((a, b) => (b.areaM2 ?? -1) - (a.areaM2 ?? -1));
  const total = rows.reduce((sum, row) => sum + (row.areaM2 ?? 0), 0);
  const most = Math.max(0.001, ...rows.map((row) => row.areaM2 ?? 0));
  return (
    <figure className="chart" aria-label={`Absorption at ${band.hz} Hz`}>
      <figcaption>
        What absorbs at {band.hz >= 1000 ? `${band.hz / 1000} kHz` : `${band.hz} Hz`}
        <span className="readout">{total.toFixed(1)} m² in all</span>
      </figcaption>
      <ol className="shares">
        {rows.map((row) => (
          <li key={row.key} title={row.detail}>
            <span className="share-what">
              {row.what}
              <small>{row.detail}</small>
            </span>
            <svg className="share-bar" height="8" preserveAspectRatio="none" viewBox="0 0 100 8">
              <rect width={((row.areaM2 ?? 0) / most) * 100} height="8" />
            </svg>
            <span className="share-figure">
              {row.areaM2 === null ? 'no figure' : `${row.areaM2.toFixed(2)} m²`}
            </span>
          </li>
        ))}
      </ol>
    </figure>
  );
}
